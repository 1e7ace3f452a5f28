import { describe, expect, it } from 'vitest';
import type { Register } from '../../src/register/database.ts';
import { keptAnswers } from '../../src/service/kept-answers.ts';

// only who they are counts: nothing is read of them
const [here, there] = [{} as Register, {} as Register];

describe('answers that take long', () => {
  it('are made once for the same key, for all who ask meanwhile', async () => {
    const kept = keptAnswers<number>(3);
    let made = 0;
    const make = async (): Promise<number> => {
      made += 1;
      return made;
    };
    expect(await Promise.all([kept(here, 'a', make), kept(here, 'a', make)])).toEqual([1, 1]);
    expect(await kept(here, 'a', make)).toBe(1);
    expect(await kept(here, 'b', make)).toBe(2);
    expect(await kept(there, 'a', make)).toBe(3);
  });

  it('are forgotten, the oldest first, and made anew after a failure', async () => {
    const kept = keptAnswers<string>(2);
    await kept(here, 'a', async () => 'first');
    await kept(here, 'b', async () => 'second');
    await kept(here, 'c', async () => 'third');
    expect(await kept(here, 'b', async () => 'anew')).toBe('second');
    expect(await kept(here, 'a', async () => 'anew')).toBe('anew');
    await expect(kept(here, 'd', () => Promise.reject(new Error('no')))).rejects.toThrow('no');
    expect(await kept(here, 'd', async () => 'then it went')).toBe('then it went');
  });
});
