import { verdictSentence } from '../drawing/code-verdict-text.ts';
import { breakingSentence, endsSentence, standingSentence, turnoverSentence } from '../drawing/fence-sentences.ts';
import { latestFindings, remarksBesideFindings } from '../drawing/finding-remarks.ts';
import { seasonTable } from '../drawing/season-table.ts';
import { terminalChart } from '../drawing/terminal-chart.ts';
import { unknownSentence } from '../drawing/unknown-sentence.ts';
import type { FenceForecast, FenceStanding } from '../forecast/fence-forecast.ts';
import { forecastFence } from '../forecast/forecast-fence.ts';
import { CAUTION_LIST, CAUTIONS } from './cautions.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import type { FenceInRegister } from './fence-in-register.ts';
import { fenceInRegister } from './fence-in-register.ts';
import { forecastEvidenceLines } from './forecast-evidence.ts';
import { keptStandings } from './kept-standings.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';
import { chartColumns } from './terminal-columns.ts';

/** Options of `forecast`. */
export interface ForecastOptions extends GlobalOptions {
  /** How many seasons ahead to show, 1 to 30. */
  readonly seasons: number;
  readonly json?: boolean;
}

/** Forecasts one fence from what the register knows now, whether it was swept or not, and shows it. */
export async function runForecast(context: CliContext, ref: string, options: ForecastOptions): Promise<void> {
  const fence = await withExistingRegister(configOf(context, options), (register) =>
    fenceInRegister(register, ref, context.clock),
  );
  const forecast = forecastFence(fence.facts, fence.seasonOneYear, fence.settings);
  const { terminal } = context;
  if (options.json) {
    const seasons = forecast.seasons.filter((season) => (season.season ?? 0) <= options.seasons);
    const { standing: keptStanding, endsStanding: keptEndsStanding } = keptStandings(fence, forecast);
    const { inputHash } = fence;
    terminal.out(jsonText({ ...forecast, seasons, keptStanding, keptEndsStanding, inputHash, cautions: CAUTION_LIST }));
    return;
  }
  terminal.out(forecastText(fence, forecast, options.seasons, terminal.columns));
}

/** Where the kept standing differs from the bare comparison, or from that of a sweep whose inputs have changed since. */
function comparison(
  { lastSweep, inputHash }: FenceInRegister,
  forecast: FenceForecast,
  kept: FenceStanding,
): readonly string[] {
  return [
    ...(kept === forecast.standing ? [] : [`Compared with the design gust alone it would stand ${forecast.standing}.`]),
    ...(lastSweep && lastSweep.inputHash !== inputHash && lastSweep.standing !== kept
      ? [`The last sweep left it ${lastSweep.standing}; what it rests on has changed since.`]
      : []),
  ];
}

function forecastText(fence: FenceInRegister, forecast: FenceForecast, seasonCount: number, columns: number): string {
  const { units } = fence;
  const kept = keptStandings(fence, forecast);
  const ends = endsSentence(forecast, units, kept.endsStanding);
  const head = [
    `Fence ${fence.ref}, ${fence.siteName}`,
    '',
    breakingSentence(forecast, units),
    standingSentence(forecast, units, kept.standing),
    ...comparison(fence, forecast, kept.standing),
    turnoverSentence(forecast, units),
    ...(ends === null ? [] : [ends]),
    ...latestFindings(fence.facts, forecast),
    ...forecastEvidenceLines(fence, forecast),
    ...forecast.unknowns.map((unknown) => `Not known: ${unknownSentence(unknown, units)}`),
    ...remarksBesideFindings(fence.facts, forecast),
  ];
  const table = seasonTable(forecast, units, {
    keep: ({ season }) => season === null || (season >= 1 && season <= seasonCount),
  });
  const headings = table.columns.map(({ heading, unit }) => (unit === '' ? heading : `${heading}\n${unit}`));
  const rows = table.rows.map((row) => [row.label, ...row.cells]);
  const chart = terminalChart(forecast, {
    units,
    columns: chartColumns(columns),
    rows: 18,
  });
  return [
    ...head,
    '',
    'Middle values, in brackets the range that holds in 8 cases of 10.',
    plainTable(headings, rows, table.columns.map((_, index) => index).slice(1)),
    ...chart,
    '',
    'As a checker would compute it, for information only:',
    ...forecast.codeVerdicts.map((verdict) => verdictSentence(verdict, forecast, units)),
    '',
    `Model ${fence.modelVersion}, inputs ${fence.inputHash}`,
    CAUTIONS,
  ].join('\n');
}
