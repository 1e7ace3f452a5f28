import type { MessageLanguage } from './message-facts.ts';
import type { MessageWords } from './message-words.ts';
import { WORDS_EN } from './words-en.ts';
import { WORDS_ES } from './words-es.ts';

const WORDS: Readonly<Record<MessageLanguage, MessageWords>> = { en: WORDS_EN, es: WORDS_ES };

/** The words of a language. */
export const wordsOf = (language: MessageLanguage): MessageWords => WORDS[language];
