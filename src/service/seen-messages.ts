import { sha256 } from './canonical-json.ts';

/** The messages that pages showed last, by their print: the frame in which a page shows a message gets the one that the page was made with. */
export interface SeenMessages {
  /** Keeps a message and returns its print. */
  keep(html: string): string;
  /** The message of that print; null where it is no longer kept. */
  read(print: string): string | null;
}

/**
 * Makes it, empty.
 * @param mostCharacters how much is kept at most, the oldest goes first [characters]
 */
export function createSeenMessages(mostCharacters: number): SeenMessages {
  const kept = new Map<string, string>();
  let characters = 0;
  const forget = (print: string): void => {
    characters -= kept.get(print)?.length ?? 0;
    kept.delete(print);
  };
  return {
    keep: (html) => {
      const print = sha256(html);
      forget(print);
      kept.set(print, html);
      characters += html.length;
      for (const oldest of kept.keys()) {
        if (characters <= mostCharacters || oldest === print) break;
        forget(oldest);
      }
      return print;
    },
    read: (print) => kept.get(print) ?? null,
  };
}
