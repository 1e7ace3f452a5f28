import type { Register } from '../register/database.ts';

/** Gives what was made for a key before, or makes it: once for all who ask meanwhile. */
export type KeptAnswers<T> = (register: Register, key: string, make: () => Promise<T>) => Promise<T>;

/**
 * Keeps answers that take long to work out, those of each register by themselves, the oldest going first. What failed is worked
 * out anew the next time.
 * @param most how many are kept at a time
 */
export function keptAnswers<T>(most: number): KeptAnswers<T> {
  const registers = new WeakMap<Register, Map<string, Promise<T>>>();
  return (register, key, make) => {
    const answers = registers.get(register) ?? new Map<string, Promise<T>>();
    registers.set(register, answers);
    const known = answers.get(key);
    if (known) return known;
    const made = make();
    answers.set(key, made);
    made.catch(() => answers.delete(key));
    for (const oldest of [...answers.keys()].slice(0, -most)) answers.delete(oldest);
    return made;
  };
}
