import type { CatalogueKind } from '../season/catalogue-entry.ts';
import type { LifeGust } from '../season/fence-life.ts';
import type { WhatIf } from '../season/what-if.ts';
import type { WorksOption } from '../season/works-options.ts';
import type { ChartLanguage } from './chart-words.ts';
import { worksReasonInSpanish } from './spanish/works-reasons.ts';
import type { DisplayUnits } from './speed-text.ts';
import { speedText } from './speed-text.ts';

const NAMES: Readonly<Record<CatalogueKind, string>> = {
  inspect: 'inspection',
  'groundline-treatment': 'groundline treatment',
  liner: 'liner',
  drainage: 'drainage',
  'trimmer-guard': 'trimmer guards',
  'footing-reset': 'footing reset',
  'post-swap': 'post swap',
  'steel-sleeve': 'steel sleeves',
  'added-posts': 'added posts',
  rebuild: 'rebuild',
};

const NAMES_ES: Readonly<Record<CatalogueKind, string>> = {
  inspect: 'inspección',
  'groundline-treatment': 'tratamiento a ras de suelo',
  liner: 'forro',
  drainage: 'drenaje',
  'trimmer-guard': 'protectores contra la desbrozadora',
  'footing-reset': 'nuevo cimiento',
  'post-swap': 'cambio de postes',
  'steel-sleeve': 'fundas de acero',
  'added-posts': 'postes añadidos',
  rebuild: 'reconstrucción',
};

/** What each kind of works is called, by language. */
export const WORKS_NAMES: Readonly<Record<ChartLanguage, Readonly<Record<CatalogueKind, string>>>> = {
  en: NAMES,
  es: NAMES_ES,
};

/** What a kind of works is called in English. */
export const worksName = (kind: CatalogueKind): string => NAMES[kind];

/** What a kind of works is called. */
export const worksNameIn = (kind: CatalogueKind, language: ChartLanguage): string => WORKS_NAMES[language][kind];

/** Numbers of posts, ascending, as text: `2–4, 7, 9–10`. */
export function postNumbersText(numbers: readonly number[]): string {
  const stretches: [number, number][] = [];
  for (const number of numbers) {
    const last = stretches.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else stretches.push([number, number]);
  }
  return stretches.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`)).join(', ');
}

/** What is done, a line a part: `post swap, posts 2–4`, `+ groundline treatment, posts 1, 5–16`. */
export const optionLines = (
  { parts, works }: Pick<WorksOption, 'parts' | 'works'>,
  language: ChartLanguage = 'en',
): readonly string[] =>
  parts.map(({ kind, posts, postCount }, index) => {
    const [post, more] = language === 'es' ? ['poste', 'más'] : ['post', 'more'];
    const where =
      works[index]!.posts !== 'all'
        ? `, ${post}${posts.length === 1 ? '' : 's'} ${postNumbersText(posts)}`
        : kind === 'added-posts'
          ? `, ${postCount} ${more}`
          : '';
    return `${index === 0 ? '' : '+ '}${worksNameIn(kind, language)}${where}`;
  });

/** What counts as the end of a fence's life, as a sentence. */
export function lifeSentence(
  { gustMps, means }: LifeGust,
  units: DisplayUnits,
  language: ChartLanguage = 'en',
): string {
  const speed = speedText(gustMps, units);
  if (language === 'es') {
    return means === 'short'
      ? `Vida: años hasta que se rompe por debajo de su ráfaga de diseño de ${speed}.`
      : `Vida: como nunca aguantó su ráfaga de diseño, años hasta que le quedan dos tercios de la fuerza con que se construyó (se rompe por debajo de ${speed}).`;
  }
  return means === 'short'
    ? `Life: years until it breaks below its design gust of ${speed}.`
    : `Life: as it never held its design gust, years until two thirds of its built strength are left (it breaks below ${speed}).`;
}

/** What the numbers of some kinds of works leave out, said where they are among those compared. */
const LEFT_UNSAID: readonly {
  readonly kinds: readonly CatalogueKind[];
  readonly note: Readonly<Record<ChartLanguage, string>>;
}[] = [
  {
    kinds: ['steel-sleeve'],
    note: {
      en: 'A steel sleeve counts as lasting: corrosion is not reckoned with.',
      es: 'Una funda de acero cuenta como duradera: no se cuenta con la corrosión.',
    },
  },
  {
    kinds: ['rebuild', 'post-swap'],
    note: {
      en: 'A rebuild sets new rails and boards too, a post swap keeps the old ones: that difference is in the price alone.',
      es: 'Una reconstrucción también pone travesaños y tablas nuevos, un cambio de postes deja los viejos: esa diferencia está solo en el precio.',
    },
  },
];

/** Why parts of a combination belong together, each with its rows: `No. 11: …`; then what the numbers leave out. */
export function whatIfNotes({ rows }: Pick<WhatIf, 'rows'>, language: ChartLanguage = 'en'): readonly string[] {
  const whys = new Map<string, number[]>();
  for (const [index, { option }] of rows.entries()) {
    if (option.why !== null) whys.set(option.why, [...(whys.get(option.why) ?? []), index + 1]);
  }
  const kinds = new Set<CatalogueKind>(rows.flatMap(({ option }) => option.parts.map(({ kind }) => kind)));
  return [
    ...[...whys].map(([why, numbers]) =>
      language === 'es'
        ? `N.º ${numbers.join(', ')}: ${worksReasonInSpanish(why)}.`
        : `No. ${numbers.join(', ')}: ${why}.`,
    ),
    ...LEFT_UNSAID.filter((each) => each.kinds.every((kind) => kinds.has(kind))).map(({ note }) => note[language]),
  ];
}
