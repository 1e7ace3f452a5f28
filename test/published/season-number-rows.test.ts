import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { judgedNamesIn, SOURCE_ROOT } from './judged-names.ts';
import { SEASON_NUMBER_ROWS, SEASON_WITHOUT_ROW } from './season-number-rows.ts';

const sourceOf = (file: string): string => readFileSync(join(SOURCE_ROOT, file), 'utf8');

/** Limits of what is taken into the catalogue: they refuse, and move nothing. */
const isLimit = (name: string): boolean => name.includes('#CATALOGUE_RANGES.');

const judged = readdirSync(join(SOURCE_ROOT, 'season'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .sort()
  .flatMap((name) => judgedNamesIn(sourceOf(`season/${name}`)).map((each) => `season/${name}#${each}`))
  .filter((name) => !isLimit(name));

describe('numbers of the season plan and the money from memory or judgement', () => {
  it('stand in the source exactly as their rows say, once each', () => {
    const wrong = SEASON_NUMBER_ROWS.flatMap(({ what, file, text }) => {
      const times = sourceOf(file).split(text.replace(/[«»]/g, '')).length - 1;
      return times === 1 ? [] : [`${what}: ${times} times in src/${file}`];
    });
    expect(wrong).toEqual([]);
  });

  it('have a row each, or a reason why not: a new one needs a row in test/published/season-number-rows.ts', () => {
    const answered = new Set([
      ...SEASON_NUMBER_ROWS.flatMap(({ speaksFor }) => speaksFor),
      ...Object.keys(SEASON_WITHOUT_ROW),
    ]);
    expect(judged.length).toBeGreaterThan(20);
    expect(judged.filter((name) => !answered.has(name))).toEqual([]);
  });

  it('are all still there: no row and no reason answers for a name that is gone', () => {
    const names = new Set(judged);
    const inSeason = SEASON_NUMBER_ROWS.flatMap(({ speaksFor }) => speaksFor).filter((name) =>
      name.startsWith('season/'),
    );
    expect([...inSeason, ...Object.keys(SEASON_WITHOUT_ROW)].filter((name) => !names.has(name))).toEqual([]);
  });

  it('are told once each', () => {
    const whats = SEASON_NUMBER_ROWS.map(({ what }) => what);
    expect(whats.filter((what, index) => whats.indexOf(what) !== index)).toEqual([]);
  });
});
