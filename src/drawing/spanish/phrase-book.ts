/**
 * What another room says in English, with `{}` for each part that differs, and the same in Spanish. There `{}` stands for the
 * parts in their order; `{2}` for the second of them where the order is another.
 */
export type Phrase = readonly [english: string, spanish: string];

/** Says a text in Spanish; null for one that is in no phrase. */
export type PhraseBook = (english: string) => string | null;

interface Pattern {
  readonly english: RegExp;
  readonly spanish: string;
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

function patternOf([english, spanish]: Phrase): Pattern {
  const parts = english.split('{}').map(escaped);
  return { english: new RegExp(`^${parts.join('(.+?)')}$`), spanish };
}

function filled(spanish: string, parts: readonly string[]): string {
  let next = 0;
  return spanish.replace(/\{(\d?)\}/g, (_, number: string) => {
    const index = number === '' ? next : Number(number) - 1;
    next += 1;
    return parts[index] ?? '';
  });
}

/**
 * A book of phrases, for texts that the pure rooms below write in English only. The parts that differ are looked up as well, so
 * that a name inside a sentence is said in Spanish too; a part in no phrase, such as a number, stays as it is.
 */
export function phraseBook(phrases: readonly Phrase[], ...others: readonly PhraseBook[]): PhraseBook {
  const whole = new Map(phrases.filter(([english]) => !english.includes('{}')));
  const patterns = phrases.filter(([english]) => english.includes('{}')).map(patternOf);
  const say: PhraseBook = (text) => {
    const known = whole.get(text);
    if (known !== undefined) return known;
    for (const { english, spanish } of patterns) {
      const found = english.exec(text);
      if (found)
        return filled(
          spanish,
          found.slice(1).map((part) => say(part) ?? part),
        );
    }
    for (const other of others) {
      const said = other(text);
      if (said !== null) return said;
    }
    return null;
  };
  return say;
}
