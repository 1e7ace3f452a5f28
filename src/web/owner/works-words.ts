import { postNumbersText, worksNameIn } from '../../drawing/what-if-words.ts';
import type { CatalogueKind } from '../../season/catalogue-entry.ts';
import type { PageLanguage } from '../frame/page-language.ts';

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
