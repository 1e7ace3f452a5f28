import type { PageLanguage } from '../frame/page-language.ts';

interface PreferenceWords {
  readonly title: string;
  readonly lead: (owner: string) => string;
  readonly language: string;
  readonly languageHint: string;
  readonly matters: string;
  readonly mattersHint: string;
  readonly pause: string;
  readonly pauseHint: string;
  readonly pauseFault: string;
  readonly save: string;
  readonly noted: string;
  readonly already: string;
  readonly dangerOn: string;
  readonly dangerOff: string;
  readonly turnOffDanger: string;
  readonly turnOnDanger: string;
  readonly danger: {
    readonly title: string;
    readonly what: readonly string[];
    readonly ask: string;
    readonly button: string;
    readonly keep: string;
    readonly tick: string;
    readonly tickFault: string;
    readonly isOff: string;
    readonly on: string;
  };
  readonly stop: {
    readonly title: string;
    readonly lead: string;
    readonly button: string;
    readonly done: string;
    readonly still: string;
    readonly stillNone: string;
    readonly dangerWay: string;
    readonly back: string;
  };
  readonly noForm: { readonly title: string; readonly what: string; readonly wayOut: string };
}

/** The words of the pages on which an owner says what to be written about, by language. */
export const PREFERENCE_WORDS: Readonly<Record<PageLanguage, PreferenceWords>> = {
  en: {
    title: 'What we write to you about',
    lead: (owner) => `We write to ${owner} when something changes, and not otherwise. You choose what about.`,
    language: 'Language',
    languageHint: 'Of mails, letters and these pages.',
    matters: 'Write to me about',
    mattersHint: 'What is not ticked is not told; the office sees it all the same.',
    pause: 'Nothing but danger until the end of',
    pauseHint: 'A day within a year, or empty for no pause. What is still so after it is told then.',
    pauseFault: 'Write a day from today on and within a year, as 2027-03-31, or leave it empty. Nothing was changed.',
    save: 'Save',
    noted: 'Saved.',
    already: 'It was so already. Nothing was changed.',
    dangerOn: 'News of danger (posts found broken, leaning or closed off) is sent whatever is ticked above.',
    dangerOff: 'News of danger is turned off: you would not be told of posts found broken, leaning or closed off.',
    turnOffDanger: 'Turn off news of danger…',
    turnOnDanger: 'Turn news of danger on again',
    danger: {
      title: 'Turn off news of danger?',
      what: [
        'We send it at once when posts of your fence were found broken, leaning or closed off, so that nobody stands near it in wind.',
        'If you turn it off, nobody tells you of that by mail or letter. The fence stays as dangerous as it is, and keeping people away from it stays with you.',
      ],
      ask: 'Turn it off only if somebody else is told in your place.',
      button: 'Turn off news of danger',
      keep: 'Keep it on',
      tick: 'I understand that I am not told when my fence is dangerous',
      tickFault: 'Tick the box, or keep it on. Nothing was changed.',
      isOff: 'News of danger is off.',
      on: 'News of danger is on again.',
    },
    stop: {
      title: 'Stop these mails',
      lead: 'By pressing the button you get no more mails about how your fences change, reminders, works, visits and plans.',
      button: 'Stop these mails',
      done: 'These mails are stopped.',
      still: 'Still sent: news of danger, when posts of your fence were found broken, leaning or closed off.',
      stillNone: 'Nothing is sent to you any more, news of danger included.',
      dangerWay: 'How to turn that off too',
      back: 'Choose what you want instead',
    },
    noForm: {
      title: 'That stops nothing',
      what: 'The request did not say List-Unsubscribe=One-Click and nothing else. Nothing was changed.',
      wayOut: 'Open the address in a browser and press its button.',
    },
  },
  es: {
    title: 'De qué le escribimos',
    lead: (owner) => `Escribimos a ${owner} cuando algo cambia, y si no, no. Usted elige de qué.`,
    language: 'Idioma',
    languageHint: 'De los correos, las cartas y estas páginas.',
    matters: 'Escríbanme sobre',
    mattersHint: 'De lo que no esté marcado no se le avisa; la oficina lo ve de todos modos.',
    pause: 'Nada más que peligro hasta el final del',
    pauseHint:
      'Un día dentro de un año, o vacío si no quiere pausa. Lo que siga siendo así después se le dirá entonces.',
    pauseFault: 'Escriba un día desde hoy y dentro de un año, como 2027-03-31, o déjelo vacío. No se cambió nada.',
    save: 'Guardar',
    noted: 'Guardado.',
    already: 'Ya estaba así. No se cambió nada.',
    dangerOn: 'Los avisos de peligro (postes rotos, inclinados o cerrados al paso) se envían marque lo que marque.',
    dangerOff:
      'Los avisos de peligro están apagados: no se le diría si hay postes rotos, inclinados o cerrados al paso.',
    turnOffDanger: 'Apagar los avisos de peligro…',
    turnOnDanger: 'Encender otra vez los avisos de peligro',
    danger: {
      title: '¿Apagar los avisos de peligro?',
      what: [
        'Los enviamos enseguida cuando se encuentran postes de su cerca rotos, inclinados o cerrados al paso, para que nadie esté cerca cuando haya viento.',
        'Si los apaga, nadie se lo dirá por correo ni por carta. La cerca sigue siendo igual de peligrosa, y mantener alejada a la gente sigue siendo cosa suya.',
      ],
      ask: 'Apáguelos solo si a otra persona se le avisa en su lugar.',
      button: 'Apagar los avisos de peligro',
      keep: 'Dejarlos encendidos',
      tick: 'Entiendo que no se me avisará cuando mi cerca sea peligrosa',
      tickFault: 'Marque la casilla, o déjelos encendidos. No se cambió nada.',
      isOff: 'Los avisos de peligro están apagados.',
      on: 'Los avisos de peligro están encendidos otra vez.',
    },
    stop: {
      title: 'Dejar de recibir estos correos',
      lead: 'Al pulsar el botón ya no recibirá correos sobre cómo cambian sus cercas, recordatorios, obras, visitas ni planes.',
      button: 'Dejar de recibirlos',
      done: 'Estos correos ya no se envían.',
      still:
        'Se sigue enviando: avisos de peligro, cuando se encuentran postes de su cerca rotos, inclinados o cerrados al paso.',
      stillNone: 'Ya no se le envía nada, tampoco avisos de peligro.',
      dangerWay: 'Cómo apagarlos también',
      back: 'Elegir mejor lo que quiere',
    },
    noForm: {
      title: 'Con eso no se detiene nada',
      what: 'La petición no decía List-Unsubscribe=One-Click y nada más. No se cambió nada.',
      wayOut: 'Abra la dirección en un navegador y pulse su botón.',
    },
  },
};
