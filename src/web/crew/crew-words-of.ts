import type { PageLanguage } from '../frame/page-language.ts';
import type { CrewWords } from './crew-words.ts';
import { CREW_WORDS_EN } from './crew-words-en.ts';
import { CREW_WORDS_ES } from './crew-words-es.ts';

/** The words of the crew's pages, by language. */
export const CREW_WORDS: Readonly<Record<PageLanguage, CrewWords>> = { en: CREW_WORDS_EN, es: CREW_WORDS_ES };
