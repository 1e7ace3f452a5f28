import type { CatalogueKind } from '../season/catalogue-entry.ts';
import type { LifeGust } from '../season/fence-life.ts';
import type { WhatIf } from '../season/what-if.ts';
import type { WorksOption } from '../season/works-options.ts';
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

/** What a kind of works is called in English. */
export const worksName = (kind: CatalogueKind): string => NAMES[kind];

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
export const optionLines = ({ parts, works }: Pick<WorksOption, 'parts' | 'works'>): readonly string[] =>
  parts.map(({ kind, posts, postCount }, index) => {
    const where =
      works[index]!.posts !== 'all'
        ? `, post${posts.length === 1 ? '' : 's'} ${postNumbersText(posts)}`
        : kind === 'added-posts'
          ? `, ${postCount} more`
          : '';
    return `${index === 0 ? '' : '+ '}${worksName(kind)}${where}`;
  });

/** What counts as the end of a fence's life, as a sentence. */
export function lifeSentence({ gustMps, means }: LifeGust, units: DisplayUnits): string {
  const speed = speedText(gustMps, units);
  return means === 'short'
    ? `Life: years until it breaks below its design gust of ${speed}.`
    : `Life: as it never held its design gust, years until two thirds of its built strength are left (it breaks below ${speed}).`;
}

/** What the numbers of some kinds of works leave out, said where they are among those compared. */
const LEFT_UNSAID: readonly { readonly kinds: readonly CatalogueKind[]; readonly note: string }[] = [
  { kinds: ['steel-sleeve'], note: 'A steel sleeve counts as lasting: corrosion is not reckoned with.' },
  {
    kinds: ['rebuild', 'post-swap'],
    note: 'A rebuild sets new rails and boards too, a post swap keeps the old ones: that difference is in the price alone.',
  },
];

/** Why parts of a combination belong together, each with its rows: `No. 11: …`; then what the numbers leave out. */
export function whatIfNotes({ rows }: Pick<WhatIf, 'rows'>): readonly string[] {
  const whys = new Map<string, number[]>();
  for (const [index, { option }] of rows.entries()) {
    if (option.why !== null) whys.set(option.why, [...(whys.get(option.why) ?? []), index + 1]);
  }
  const kinds = new Set<CatalogueKind>(rows.flatMap(({ option }) => option.parts.map(({ kind }) => kind)));
  return [
    ...[...whys].map(([why, numbers]) => `No. ${numbers.join(', ')}: ${why}.`),
    ...LEFT_UNSAID.filter((each) => each.kinds.every((kind) => kinds.has(kind))).map(({ note }) => note),
  ];
}
