import type { Acceptance, OwnerQuote } from '../../service/owner-quotes.ts';
import type { PageLanguage } from '../frame/page-language.ts';

export interface QuotesWords {
  readonly title: string;
  readonly none: string;
  readonly lead: string;
  readonly quote: (number: string) => string;
  readonly number: string;
  readonly fence: string;
  readonly total: string;
  readonly validUntil: string;
  readonly standing: string;
  readonly standings: Readonly<Record<OwnerQuote['standing'], string>>;
  readonly offer: (fence: string, total: string, until: string) => string;
  readonly works: string;
  readonly what: string;
  readonly quantity: string;
  readonly amount: string;
  readonly subtotal: string;
  readonly tax: (percent: number) => string;
  /** Where the quote is told in another language than it was written in; null where not. */
  readonly asWritten: { readonly summary: string; readonly note: string } | null;
  readonly conditions: string;
  readonly accept: {
    readonly heading: string;
    readonly text: (number: string, total: string) => string;
    readonly name: string;
    readonly nameHint: string;
    readonly nameMissing: string;
    readonly button: string;
  };
  readonly acceptedBy: (name: string, day: string, hash: string) => string;
  readonly over: string;
  readonly withdrawn: string;
  readonly noted: string;
  readonly already: string;
  readonly notAccepted: Readonly<
    Record<
      Exclude<Acceptance, 'accepted' | 'already'>,
      { readonly title: string; readonly what: string; readonly wayOut: string }
    >
  >;
  readonly back: string;
}

/** The words of the pages on which an owner accepts a quote, by language. */
export const QUOTES_WORDS: Readonly<Record<PageLanguage, QuotesWords>> = {
  en: {
    title: 'Quotes',
    none: 'No quote was offered for your fences. Ask for a call if you want one.',
    lead: 'What the office offers for your fences. A quote can be accepted until its last day.',
    quote: (number) => `Quote ${number}`,
    number: 'Quote',
    fence: 'Fence',
    total: 'Total',
    validUntil: 'Valid until',
    standing: 'Stands',
    standings: { open: 'open', accepted: 'accepted', over: 'over', withdrawn: 'taken back' },
    offer: (fence, total, until) => `Works at fence ${fence} for ${total}, valid until ${until}.`,
    works: 'What is done',
    what: 'What',
    quantity: 'Quantity and price',
    amount: 'Amount',
    subtotal: 'Subtotal',
    tax: (percent) => `Tax ${percent} %`,
    asWritten: null,
    conditions: 'Conditions',
    accept: {
      heading: 'Accept this quote',
      text: (number, total) =>
        `By pressing the button you order the works of quote ${number} for ${total}. The office gets your name, the moment and this very quote.`,
      name: 'Your name',
      nameHint: 'As you would sign.',
      nameMissing: 'Write your name, at most 200 characters. Nothing was accepted.',
      button: 'Accept the quote',
    },
    acceptedBy: (name, day, hash) => `Accepted by ${name} on ${day}. Mark of the accepted quote (SHA-256): ${hash}`,
    over: 'Its last day is past: it cannot be accepted any more. Ask for a call for a new one.',
    withdrawn: 'The office took it back. Ask for a call for a new one.',
    noted: 'Thank you. The quote is accepted.',
    already: 'This quote was accepted already.',
    notAccepted: {
      over: {
        title: 'This quote is over',
        what: 'Its last day is past. Nothing was accepted.',
        wayOut: 'Ask for a call for a new one.',
      },
      withdrawn: {
        title: 'This quote was taken back',
        what: 'The office took it back. Nothing was accepted.',
        wayOut: 'Ask for a call for a new one.',
      },
      'another quote': {
        title: 'That was another quote',
        what: 'What the page showed is not what is on record under that number. Nothing was accepted.',
        wayOut: 'Open the quote again and read it before you accept it.',
      },
      'no such quote': {
        title: 'No such quote',
        what: 'This link opens no quote of that number.',
        wayOut: 'Open the list of your quotes.',
      },
    },
    back: 'All quotes',
  },
  es: {
    title: 'Presupuestos',
    none: 'No se ha ofrecido ningún presupuesto para sus cercas. Pida una llamada si quiere uno.',
    lead: 'Lo que la oficina ofrece para sus cercas. Un presupuesto se puede aceptar hasta su último día.',
    quote: (number) => `Presupuesto ${number}`,
    number: 'Presupuesto',
    fence: 'Cerca',
    total: 'Total',
    validUntil: 'Válido hasta',
    standing: 'Estado',
    standings: { open: 'abierto', accepted: 'aceptado', over: 'vencido', withdrawn: 'retirado' },
    offer: (fence, total, until) => `Obras en la cerca ${fence} por ${total}, válido hasta el ${until}.`,
    works: 'Qué se hace',
    what: 'Qué',
    quantity: 'Cantidad y precio',
    amount: 'Importe',
    subtotal: 'Suma',
    tax: (percent) => `Impuesto ${percent} %`,
    asWritten: {
      summary: 'Ver el presupuesto con las palabras en inglés con que se escribió',
      note: 'La oficina lo escribió en inglés; si algo difiere, vale lo escrito.',
    },
    conditions: 'Condiciones',
    accept: {
      heading: 'Aceptar este presupuesto',
      text: (number, total) =>
        `Al pulsar el botón encarga las obras del presupuesto ${number} por ${total}. La oficina recibe su nombre, el momento y exactamente este presupuesto.`,
      name: 'Su nombre',
      nameHint: 'Como firmaría.',
      nameMissing: 'Escriba su nombre, 200 caracteres como mucho. No se aceptó nada.',
      button: 'Aceptar el presupuesto',
    },
    acceptedBy: (name, day, hash) =>
      `Aceptado por ${name} el ${day}. Marca del presupuesto aceptado (SHA-256): ${hash}`,
    over: 'Su último día ya pasó: no se puede aceptar. Pida una llamada para tener otro.',
    withdrawn: 'La oficina lo retiró. Pida una llamada para tener otro.',
    noted: 'Gracias. El presupuesto queda aceptado.',
    already: 'Este presupuesto ya estaba aceptado.',
    notAccepted: {
      over: {
        title: 'Este presupuesto venció',
        what: 'Su último día ya pasó. No se aceptó nada.',
        wayOut: 'Pida una llamada para tener otro.',
      },
      withdrawn: {
        title: 'Este presupuesto se retiró',
        what: 'La oficina lo retiró. No se aceptó nada.',
        wayOut: 'Pida una llamada para tener otro.',
      },
      'another quote': {
        title: 'Ese era otro presupuesto',
        what: 'Lo que mostraba la página no es lo que consta con ese número. No se aceptó nada.',
        wayOut: 'Abra otra vez el presupuesto y léalo antes de aceptarlo.',
      },
      'no such quote': {
        title: 'No existe ese presupuesto',
        what: 'Este enlace no abre ningún presupuesto con ese número.',
        wayOut: 'Abra la lista de sus presupuestos.',
      },
    },
    back: 'Todos los presupuestos',
  },
};
