import type { PageContext } from '../access/visitor.ts';

/** Languages of the pages that everybody meets. */
export type PageLanguage = 'en' | 'es';

/** What each language is called in itself. */
export const LANGUAGE_NAMES: Readonly<Record<PageLanguage, string>> = { en: 'English', es: 'Español' };

/** The language that a visitor asked for by `?lang=`, else the first of the two that the browser names, else English. */
export function languageAsked(context: PageContext): PageLanguage {
  const asked = context.req.query('lang');
  if (asked === 'en' || asked === 'es') return asked;
  const named = (context.req.header('accept-language') ?? '')
    .split(',')
    .map((each) => each.trim().slice(0, 2).toLowerCase())
    .find((each) => each === 'en' || each === 'es');
  return named === 'es' ? 'es' : 'en';
}
