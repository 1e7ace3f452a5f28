import { bandText } from '../drawing/quantity-text.ts';
import { displaySpeed, speedUnit } from '../drawing/speed-text.ts';
import type { Band } from '../forecast/band.ts';
import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import { judgedGroup, seasonOne } from '../forecast/fence-forecast.ts';
import { forecastFence } from '../forecast/forecast-fence.ts';
import { writeCsv } from '../register/csv/csv-text.ts';
import { importCsv } from '../register/csv/import-csv.ts';
import type { ImportRemark, ImportReport } from '../register/csv/import-report.ts';
import type { Register } from '../register/database.ts';
import { inspectionFacts } from '../register/inspection-record.ts';
import type { ReadingRecord } from '../register/reading-record.ts';
import { readSettings } from '../register/settings-store.ts';
import { stormOutcomeFacts } from '../register/storm-outcome-record.ts';
import { dayInZone, isoUtc } from '../service/clock.ts';
import { CAUTION_LIST, CAUTIONS } from './cautions.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import type { FenceInRegister } from './fence-in-register.ts';
import { fenceInRegister } from './fence-in-register.ts';
import { keptStandings } from './kept-standings.ts';
import { jsonText } from './terminal.ts';

/** Options of every command that enters evidence. */
export interface EvidenceOptions extends GlobalOptions {
  readonly dryRun?: boolean;
  readonly json?: boolean;
  /** Takes what is to be confirmed as it is. */
  readonly sure?: boolean;
}

/** The rows of one kind, by column: what an import would read from a file. */
interface EvidenceRows {
  readonly name: string;
  readonly rows: readonly Readonly<Record<string, string>>[];
}

/** Evidence as the command line gave it. */
export interface EvidenceEntry {
  /** Throws `CliError` where the arguments do not fit the fence. */
  readonly files: (fence: FenceInRegister) => readonly EvidenceRows[];
  /** The argument that a refused cell came from, with its value. */
  readonly argumentOf: (remark: ImportRemark, rowIndex: number) => string;
  /** Throws `CliError` where the register holds what this would replace. */
  readonly refuseKnown: (register: Register) => Promise<void>;
  /** What is stored, line by line. */
  readonly told: (report: ImportReport, fence: FenceInRegister) => readonly string[];
  /** What JSON output carries beyond the records. */
  readonly details?: (report: ImportReport, fence: FenceInRegister) => Readonly<Record<string, unknown>>;
  /** What to do where something is refused until it is confirmed. */
  readonly howToConfirm: string;
}

/** A snap speed and what the register would make of it. */
interface Judged {
  readonly snapMps: Band;
  readonly standing: FenceStanding;
}

/** Line of a CSV text on which its first row begins. */
const FIRST_ROW_LINE = 2;

const csvOf = ({ name, rows }: EvidenceRows): { readonly name: string; readonly text: string } => {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return { name, text: writeCsv([columns, ...rows.map((row) => columns.map((column) => row[column] ?? ''))]) };
};

function judged(fence: FenceInRegister, forecast: FenceForecast): Judged {
  return {
    snapMps: judgedGroup(seasonOne(forecast)).snapMps,
    standing: keptStandings(fence, forecast).standing,
  };
}

/** The fence's facts with what was just entered, stored or not: what the next sweep would load. */
function withEvidence({ facts }: FenceInRegister, { records }: ImportReport): FenceInRegister['facts'] {
  const entered = new Map(records.inspections.map((record) => [record.ref, record]));
  const readingsOf = (ref: string): readonly ReadingRecord[] =>
    records.readings.filter(({ inspectionRef }) => inspectionRef === ref);
  const known = facts.inspections.map((inspection) => {
    const { readings } = inspectionFacts(inspection, readingsOf(inspection.ref));
    const all = [...inspection.readings, ...readings];
    return { ...inspection, readings: all.sort((a, b) => a.post - b.post) };
  });
  const added = [...entered.values()]
    .filter(({ ref }) => !known.some((inspection) => inspection.ref === ref))
    .map((record) => inspectionFacts(record, readingsOf(record.ref)));
  return {
    ...facts,
    inspections: [...known, ...added],
    outcomes: [...facts.outcomes, ...records.outcomes.map(stormOutcomeFacts)],
  };
}

/**
 * Enters evidence of one fence by the same records and checks as an import, and tells what it means for the snap speed.
 * Throws `CliError` where the fence is not there (not found) or the evidence is refused.
 */
export async function enterEvidence(
  context: CliContext,
  fenceRef: string,
  options: EvidenceOptions,
  entry: EvidenceEntry,
): Promise<void> {
  const { terminal, clock } = context;
  const dryRun = options.dryRun === true;
  const { fence, report } = await withExistingRegister(configOf(context, options), async (register) => {
    const found = await fenceInRegister(register, fenceRef, clock);
    await entry.refuseKnown(register);
    const { timeZone } = await readSettings(register.db);
    const today = dayInZone(clock(), timeZone);
    const imported = await importCsv(register, entry.files(found).map(csvOf), {
      acceptValid: false,
      dryRun,
      today,
      now: isoUtc(clock()),
      questions: options.sure === true ? 'warn' : 'refuse',
    });
    return { fence: found, report: imported };
  });
  const line = (remark: ImportRemark): string =>
    `${entry.argumentOf(remark, remark.line - FIRST_ROW_LINE)}: ${remark.reason}`;
  const faults = [...new Set(report.faults.map(line))];
  const warnings = [...new Set(report.warnings.map(line))];
  if (faults.length > 0) {
    const asked = report.faults.some(({ question }) => question === true);
    const wayOut = `Nothing was stored; ${asked ? entry.howToConfirm : 'correct that and try again'}.`;
    if (!options.json) throw new CliError(EXIT.refused, faults.join('\n'), wayOut);
    terminal.out(jsonText({ applied: false, dryRun, faults, warnings }));
    context.end(EXIT.refused);
    return;
  }
  const forecastOf = (facts: FenceInRegister['facts']): FenceForecast =>
    forecastFence(facts, fence.seasonOneYear, fence.settings);
  const forecast = forecastOf(fence.facts);
  const before = judged(fence, forecast);
  const after = judged(fence, forecastOf(withEvidence(fence, report)));
  const season = seasonOne(forecast).label;
  if (options.json) {
    const { inspections, readings, outcomes } = report.records;
    const { applied } = report;
    terminal.out(
      jsonText({
        applied,
        dryRun,
        inspections,
        readings,
        outcomes,
        ...entry.details?.(report, fence),
        warnings,
        season,
        before,
        after,
        cautions: CAUTION_LIST,
      }),
    );
    return;
  }
  for (const warning of warnings) terminal.err(`Doubtful: ${warning}\n`);
  const next = dryRun
    ? 'Nothing was changed: this was a dry run.'
    : 'The next sweep takes it in; to have it now: stormpale sweep';
  const told = entry.told(report, fence);
  terminal.out([...told, '', ...meaning(fence, forecast, before, after), next, '', CAUTIONS].join('\n'));
}

function meaning(fence: FenceInRegister, forecast: FenceForecast, before: Judged, after: Judged): readonly string[] {
  const { units } = fence;
  const one = seasonOne(forecast);
  const posts = one.line ? 'line posts' : 'posts';
  const speed = ({ snapMps }: Judged): string =>
    bandText(snapMps, (mps) => String(Math.round(displaySpeed(mps, units))));
  return [
    `Snap speed of the ${posts} in season ${one.label}, ${speedUnit(units)}: ${speed(before)} without this, ${speed(after)} with it.`,
    before.standing === after.standing
      ? `It stands ${after.standing}, with this as without.`
      : `It would stand ${before.standing} without this and stands ${after.standing} with it.`,
  ];
}
