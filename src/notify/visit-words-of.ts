import type { MessageLanguage } from './message-facts.ts';
import type { VisitWords } from './visit-words.ts';
import { VISIT_WORDS_EN } from './visit-words-en.ts';
import { VISIT_WORDS_ES } from './visit-words-es.ts';

const WORDS: Readonly<Record<MessageLanguage, VisitWords>> = { en: VISIT_WORDS_EN, es: VISIT_WORDS_ES };

/** The words about visits of a language. */
export const visitWordsOf = (language: MessageLanguage): VisitWords => WORDS[language];
