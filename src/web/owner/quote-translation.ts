import { cautionsIn } from '../../drawing/cautions.ts';
import type { OwnerQuote } from '../../service/owner-quotes.ts';
import { worksTextIn } from './works-words.ts';

/** Conditions as quotes have them, with what they say in Spanish. */
const CONDITIONS: readonly (readonly [english: RegExp, spanish: string])[] = [
  [
    /^A permit may be needed: it is asked for before the works begin\.$/,
    'Puede hacer falta un permiso: se pide antes de empezar las obras.',
  ],
  [
    /^Buried utilities are marked first: (\d+) days' notice before digging\.$/,
    'Primero se marcan las líneas enterradas: aviso de $1 días antes de excavar.',
  ],
  [
    /^Preservative is applied by a licensed applicator where the law says so\.$/,
    'El preservante lo aplica una persona con licencia donde la ley lo pida.',
  ],
  [/^Not done while the ground is frozen\.$/, 'No se hace mientras el suelo esté helado.'],
  [
    /^New footings need (\d+) days before they have to hold a storm\.$/,
    'Los cimientos nuevos necesitan $1 días antes de aguantar una tormenta.',
  ],
];

/** A condition or caution of a quote in Spanish; null for words of the office's own, which are nobody's to translate. */
export function conditionInSpanish(text: string): string | null {
  const caution = cautionsIn('en').all.indexOf(text);
  if (caution !== -1) return cautionsIn('es').all[caution] ?? null;
  const known = CONDITIONS.find(([english]) => english.test(text));
  return known ? text.replace(known[0], known[1]) : null;
}

/** What a line of a quote says in Spanish; null for one that is not of its works. */
export function lineInSpanish({ quote, parts }: Pick<OwnerQuote, 'quote' | 'parts'>, index: number): string | null {
  const part = parts[index];
  if (part) return worksTextIn(part, 'es');
  return quote.lines[index]?.unit === 'visit' ? 'desplazamiento y preparación' : null;
}

const UNITS: Readonly<Record<string, readonly [one: string, many: string]>> = {
  post: ['poste', 'postes'],
  visit: ['visita', 'visitas'],
};

/** A quantity with its unit in Spanish. */
export function quantityInSpanish(quantity: number, unit: string): string {
  const [one, many] = UNITS[unit] ?? [unit, unit];
  return `${quantity} ${quantity === 1 ? one : many}`;
}
