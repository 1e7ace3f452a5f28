import { postNumbersText, worksName } from '../../drawing/what-if-words.ts';
import type { CatalogueKind } from '../../season/catalogue-entry.ts';
import type { PageLanguage } from '../frame/page-language.ts';

const SPANISH: Readonly<Record<CatalogueKind, string>> = {
  inspect: 'revisión',
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

/** What a kind of works is called. */
const worksNameIn = (kind: CatalogueKind, language: PageLanguage): string =>
  language === 'es' ? SPANISH[kind] : worksName(kind);

/** Works with the posts at which they are done: `post swap, posts 2, 5`. */
export function worksTextIn(
  { kind, posts }: { readonly kind: CatalogueKind; readonly posts: readonly number[] },
  language: PageLanguage,
): string {
  const name = worksNameIn(kind, language);
  if (posts.length === 0 || kind === 'rebuild' || kind === 'drainage' || kind === 'added-posts') return name;
  const word = language === 'es' ? 'poste' : 'post';
  return `${name}, ${word}${posts.length === 1 ? '' : 's'} ${postNumbersText(posts)}`;
}
