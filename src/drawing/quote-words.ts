import type { CatalogueKind } from '../season/catalogue-entry.ts';
import type { ChartLanguage } from './chart-words.ts';
import { postNumbersText, worksNameIn } from './what-if-words.ts';

/** What has to be kept when works are done. */
interface QuotedRules {
  readonly permit: boolean;
  readonly locateNoticeDays: number;
  readonly licensedApplicator: boolean;
  readonly notOnFrozenGround: boolean;
  readonly cureDays: number;
}

/** What is done at which posts, as a line of a quote names it: `post swap, posts 2–4`. */
export function quotedWorks(
  kind: CatalogueKind,
  where: { readonly posts: readonly number[]; readonly isEveryPost: boolean },
  language: ChartLanguage,
): string {
  const name = worksNameIn(kind, language);
  if (kind === 'added-posts') return name;
  const { posts, isEveryPost } = where;
  const one = posts.length === 1;
  if (language === 'es')
    return `${name}, ${isEveryPost ? 'todos los postes' : `${one ? 'poste' : 'postes'} ${postNumbersText(posts)}`}`;
  return `${name}, ${isEveryPost ? 'every post' : `${one ? 'post' : 'posts'} ${postNumbersText(posts)}`}`;
}

/** What is counted once for all works of a quote. */
export const quotedSetUp = (language: ChartLanguage): string =>
  language === 'es' ? 'traslado y preparación' : 'getting there and setting up';

/** What has to be kept when the works are done, as sentences. */
export function quotedConditions(rules: QuotedRules, language: ChartLanguage): readonly string[] {
  const { permit, locateNoticeDays, licensedApplicator, notOnFrozenGround, cureDays } = rules;
  const isEs = language === 'es';
  return [
    ...(permit
      ? [
          isEs
            ? 'Puede hacer falta un permiso: se pide antes de empezar los trabajos.'
            : 'A permit may be needed: it is asked for before the works begin.',
        ]
      : []),
    ...(locateNoticeDays > 0
      ? [
          isEs
            ? `Antes se marcan las líneas enterradas: ${locateNoticeDays} días de aviso antes de excavar.`
            : `Buried utilities are marked first: ${locateNoticeDays} days' notice before digging.`,
        ]
      : []),
    ...(licensedApplicator
      ? [
          isEs
            ? 'El preservante lo aplica un aplicador con licencia donde la ley lo pida.'
            : 'Preservative is applied by a licensed applicator where the law says so.',
        ]
      : []),
    ...(notOnFrozenGround ? [isEs ? 'No se hace con el suelo helado.' : 'Not done while the ground is frozen.'] : []),
    ...(cureDays > 0
      ? [
          isEs
            ? `Los cimientos nuevos necesitan ${cureDays} días antes de tener que aguantar una tormenta.`
            : `New footings need ${cureDays} days before they have to hold a storm.`,
        ]
      : []),
  ];
}
