import type { WorksKind } from '../../forecast/works.ts';
import type { PostChoice } from '../../season/post-choice.ts';
import type { RecipePart } from '../../season/works-options.ts';

/** The kinds of works in the order in which the form offers them. */
export const WORKS_KINDS: readonly WorksKind[] = [
  'groundline-treatment',
  'trimmer-guard',
  'drainage',
  'liner',
  'steel-sleeve',
  'footing-reset',
  'post-swap',
  'added-posts',
  'rebuild',
];

/** At which posts each kind may be done; the first unless another is chosen. */
export const CHOICES: Readonly<Record<WorksKind, readonly PostChoice[]>> = {
  'groundline-treatment': ['all', 'weak', 'others', 'line', 'ends'],
  'trimmer-guard': ['all'],
  drainage: ['all'],
  liner: ['all'],
  'steel-sleeve': ['weak', 'all', 'found', 'line', 'ends'],
  'footing-reset': ['all', 'weak', 'found', 'line', 'ends'],
  'post-swap': ['weak', 'all', 'found', 'line', 'ends'],
  'added-posts': ['all'],
  rebuild: ['all'],
};

/** Reads the works that an address chooses; what is no works, or at no such posts, is passed over. */
export const readWorksChoice = (search: URLSearchParams): readonly RecipePart[] => {
  const wanted = new Set(search.getAll('do'));
  return WORKS_KINDS.filter((kind) => wanted.has(kind)).map((kind) => {
    const asked = search.get(`at-${kind}`);
    return { kind, at: CHOICES[kind].find((at) => at === asked) ?? CHOICES[kind][0]! };
  });
};
