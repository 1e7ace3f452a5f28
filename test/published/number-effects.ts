import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import ts from 'typescript';
import type { FenceFacts } from '../../src/forecast/fence-facts.ts';
import { mphFromMps } from '../../src/units/speed.ts';
import { NUMBER_ROOMS, SOURCE_ROOT } from './judged-names.ts';
import { markedValue, type NumberRow } from './number-row.ts';
import { loadCopy, type ProgramCopy, type ShortSeason, shortSeason, yearOfDay } from './program-copy.ts';

/** The day on which the demo is looked at. */
export const EFFECTS_DAY = '2026-11-25';
/** Demo fences that stand for the rest: climates, woods, treatments, soils, exposures and wind entries of every kind. */
export const REPRESENTATIVE_FENCES = [
  'AS-04',
  'CT-09',
  'CT-10',
  'CT-12',
  'FH-01',
  'FH-03',
  'HL-05',
  'MN-03',
  'PF-03',
  'PF-05',
  'QH-03',
  'WC-03',
] as const;
/** Of these, the ones on which an "as if" is tried: of three exposures, and nothing was found at them. */
const AS_IF_FENCES = ['CT-09', 'HL-05', 'MN-03', 'QH-03'];
/** How many of the fences tried are forecast in full, where neither short season nor lean speed move. */
const FULL_FORECASTS = 2;

/** What a number does when moved one way, over the fences tried. */
export interface Move {
  /** Shift of the short season [a]: median over the fences and the largest, with sign; null where none goes short. */
  readonly shiftMedian: number | null;
  readonly shiftLargest: number | null;
  /** True where a fence never goes short any more: the largest shift is then at least so large. */
  readonly beyond: boolean;
  /** Largest change of the lean speed in season 1 [mph]. */
  readonly leanMph: number;
  /** Largest changes of what else a forecast says, where neither of the above moves; null where one does. */
  readonly besides: {
    /** Snap and lean speed of the code verdict today, together [mph]. */
    readonly codeMph: number;
    /** Chance to snap in season 1 [-]. */
    readonly snapChance: number;
    /** Posts expected short in season 1 [-]. */
    readonly postsShort: number;
    /** Season in which rails and infill should be looked at [a]. */
    readonly lookYears: number;
  } | null;
}

/** The effect of one number, moved down and up. */
export interface NumberEffect {
  readonly id: string;
  readonly low: Move;
  readonly high: Move;
}

/** Holds no number of the model, but tables that take seconds to build: every copy shares the first one's. */
const SHARED_FILE = 'forecast/band';

const compiled = (source: string): string =>
  ts.transpileModule(source, {
    compilerOptions: {
      target: ts.ScriptTarget.ES2023,
      module: ts.ModuleKind.ES2022,
      verbatimModuleSyntax: true,
      rewriteRelativeImportExtensions: true,
    },
  }).outputText;

/** Compiles the pure rooms into a folder: the program as it is, of which every other copy differs in one file. */
function writeBase(folder: string): void {
  for (const room of ['units', ...NUMBER_ROOMS]) {
    for (const name of readdirSync(join(SOURCE_ROOT, room), { recursive: true, encoding: 'utf8' })) {
      if (!name.endsWith('.ts')) continue;
      const path = join(folder, room, name.replace(/\.ts$/, '.js'));
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, compiled(readFileSync(join(SOURCE_ROOT, room, name), 'utf8')));
    }
  }
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
}

/** Copies the program with one text of its source replaced. Throws where the text does not stand in its file exactly once. */
function writeVariant(base: string, folder: string, row: NumberRow, value: string): void {
  cpSync(base, folder, { recursive: true });
  writeFileSync(join(folder, `${SHARED_FILE}.js`), `export * from '../../base/${SHARED_FILE}.js';\n`);
  const text = row.text.replace(/[«»]/g, '');
  const parts = readFileSync(join(SOURCE_ROOT, row.file), 'utf8').split(text);
  if (parts.length !== 2) {
    throw new Error(
      `${row.id}: ${JSON.stringify(text)} stands ${parts.length - 1} times in src/${row.file}, not once: mend the row`,
    );
  }
  const changed = parts.join(row.text.replace(/«.*»/s, value));
  writeFileSync(join(folder, row.file.replace(/\.ts$/, '.js')), compiled(changed));
}

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits)) + 0;
const largest = (values: readonly number[]): number =>
  values.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0);
function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** What a full forecast says besides the short season and the lean speed. */
function besidesOf(program: ProgramCopy, facts: FenceFacts) {
  const first = program.seasonOneYear(facts.site.seasonWindow, EFFECTS_DAY);
  const forecast = program.forecastFence(facts, first, program.DEFAULT_SETTINGS);
  const now = forecast.seasons.find(({ season }) => season === 1)!;
  const verdict = forecast.codeVerdicts[1]!;
  return {
    codeMph: mphFromMps(verdict.snapMps + verdict.leanMps),
    snapChance: now.pSnap ?? 0,
    postsShort: now.expectedPostsShort ?? 0,
    lookYears: Number(program.aboveGroundFlag(facts, EFFECTS_DAY).lookFrom?.slice(0, 4) ?? 0),
  };
}

type Besides = ReturnType<typeof besidesOf>;

function moveBetween(
  before: readonly ShortSeason[],
  after: readonly ShortSeason[],
  installed: readonly number[],
): Omit<Move, 'besides'> {
  const shifts = before.flatMap((base, i) => {
    const moved = after[i]!;
    // A fence that is short when new, or never within the seasons forecast, has no short season to move.
    if (base.shortAt === null || base.beyond) return [];
    return [{ years: (moved.shortAt ?? installed[i]!) - base.shortAt, beyond: moved.beyond }];
  });
  const years = shifts.map((shift) => shift.years);
  return {
    shiftMedian: years.length > 0 ? rounded(median(years), 2) : null,
    shiftLargest: years.length > 0 ? rounded(largest(years), 2) : null,
    beyond: shifts.some((shift) => shift.beyond),
    leanMph: rounded(largest(before.map((base, i) => after[i]!.leanMph - base.leanMph)), 2),
  };
}

function besidesBetween(before: readonly Besides[], after: readonly Besides[]): Besides {
  const change = (of: (besides: Besides) => number, digits: number): number =>
    rounded(largest(before.map((base, i) => of(after[i]!) - of(base))), digits);
  return {
    codeMph: change((each) => each.codeMph, 2),
    snapChance: change((each) => each.snapChance, 4),
    postsShort: change((each) => each.postsShort, 3),
    lookYears: change((each) => each.lookYears, 0),
  };
}

/**
 * What each number does to the demo fences when it is moved down and up: the program is copied, the one text replaced, and
 * the copy run. Throws where a text is not found exactly once.
 * @param demo the demo, by fence
 * @param onProgress called after each number
 */
export async function numberEffects(
  demo: ReadonlyMap<string, FenceFacts>,
  rows: readonly NumberRow[],
  onProgress: (done: number) => void,
): Promise<readonly NumberEffect[]> {
  const folder = mkdtempSync(join(tmpdir(), 'numbers-'));
  const base = join(folder, 'base');
  try {
    writeBase(base);
    const asItIs = await loadCopy(base);
    const effects: NumberEffect[] = [];
    for (const [index, row] of rows.entries()) {
      const fences = (row.asIf ? AS_IF_FENCES : REPRESENTATIVE_FENCES).map((ref) => {
        const facts = demo.get(ref);
        if (!facts) throw new Error(`the demo has no fence ${ref}`);
        return facts;
      });
      const factsAt = (value: string): readonly FenceFacts[] =>
        fences.map((facts) => (row.asIf ? row.asIf.facts(facts, value) : facts));
      const run = (program: ProgramCopy, value: string): readonly ShortSeason[] =>
        factsAt(value).map((facts) => shortSeason(program, facts, EFFECTS_DAY));
      const installed = fences.map((facts) => yearOfDay(facts.installed.earliest));
      const asIs = markedValue(row.text);
      const before = run(asItIs, asIs);
      const fullOf = (program: ProgramCopy, value: string): readonly Besides[] =>
        factsAt(value)
          .slice(0, FULL_FORECASTS)
          .map((facts) => besidesOf(program, facts));
      const moved = async (name: string, value: string): Promise<Move> => {
        const copy = join(folder, `${index}-${name}`);
        writeVariant(base, copy, row, value);
        const program = await loadCopy(copy);
        const move = moveBetween(before, run(program, value), installed);
        const idle = (move.shiftLargest ?? 0) === 0 && move.leanMph === 0;
        const besides = idle ? besidesBetween(fullOf(asItIs, asIs), fullOf(program, value)) : null;
        rmSync(copy, { recursive: true });
        return { ...move, besides };
      };
      effects.push({ id: row.id, low: await moved('low', row.low), high: await moved('high', row.high) });
      onProgress(index + 1);
    }
    return effects;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
