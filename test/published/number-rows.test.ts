import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { judgedNames, judgedNamesIn, SOURCE_ROOT } from './judged-names.ts';
import { NUMBER_ROWS, WITHOUT_ROW } from './number-rows.ts';
import { effectsDigest, storedEffects } from './numbers-file.ts';

describe('numbers from memory or judgement', () => {
  it('stand in the source exactly as their rows say, once each', () => {
    const wrong = NUMBER_ROWS.flatMap(({ id, file, text }) => {
      const times = readFileSync(join(SOURCE_ROOT, file), 'utf8').split(text.replace(/[«»]/g, '')).length - 1;
      return times === 1 ? [] : [`${id}: ${times} times in src/${file}`];
    });
    expect(wrong).toEqual([]);
  });

  it('have a row each, or a reason why not: a new one needs a row in test/published', () => {
    const answered = new Set([...NUMBER_ROWS.flatMap((row) => row.speaksFor), ...Object.keys(WITHOUT_ROW)]);
    expect(judgedNames().filter((name) => !answered.has(name))).toEqual([]);
  });

  it('are all still there: no row answers for a name that is gone', () => {
    const names = new Set(judgedNames());
    const gone = Object.keys(WITHOUT_ROW).filter((name) => !names.has(name));
    const idle = NUMBER_ROWS.filter(
      (row) => row.speaksFor.length > 0 && !row.speaksFor.some((name) => names.has(name)),
    );
    expect([...gone, ...idle.map((row) => row.id)]).toEqual([]);
  });

  it('have an id each, and no two the same', () => {
    const ids = NUMBER_ROWS.map((row) => row.id);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
  });

  it('are found by the scanner where a docstring or a table says so', () => {
    const text = [
      '/** Share; judgement. */\nexport const SHARE = 0.5;',
      '/** Read in a book. */\nexport const READ = 0.5;',
      "const TABLE = { a: entry('x', 1), b: entry('y', 2, { tag: 'memory' }) };",
      '/** Source: a manual (memory). */\nexport function law(x: number): number { return x; }',
      '/** Judgement of a fence. */\nexport interface Verdict { readonly x: number }',
    ].join('\n');
    expect(judgedNamesIn(text)).toEqual(['SHARE', 'TABLE.a', 'TABLE.b', 'law']);
  });

  it('have been moved in the program as it is today', () => {
    const stored = storedEffects();
    expect(stored?.digest, 'docs/validation-numbers.json is out of date: run npm run validation').toBe(effectsDigest());
    expect(stored?.effects.map((effect) => effect.id)).toEqual(NUMBER_ROWS.map((row) => row.id));
  });

  it('are not all idle: moving them moves the short season of most fences', () => {
    const effects = storedEffects()?.effects ?? [];
    const moving = effects.filter(({ low, high }) => (low.shiftLargest ?? 0) !== 0 || (high.shiftLargest ?? 0) !== 0);
    expect(moving.length).toBeGreaterThan(NUMBER_ROWS.length / 3);
  });
});
