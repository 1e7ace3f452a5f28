import { writeFileSync } from 'node:fs';
import { reportHtml } from '../drawing/report/report-html.ts';
import { evidenceReportOf } from '../service/report/evidence-report-of.ts';
import { fenceReportOf } from '../service/report/fence-report-of.ts';
import { letterReportOf } from '../service/report/letter-report-of.ts';
import { reportPdf } from '../service/report/pdf-report.ts';
import { planReportOf } from '../service/report/plan-report-of.ts';
import { quoteReportOf } from '../service/report/quote-report-of.ts';
import { reportFonts } from '../service/report/report-fonts.ts';
import type { ReportParts, ReportResult } from '../service/report/report-result.ts';
import { sheetReportOf } from '../service/report/sheet-report-of.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { wantedWorks } from './works-argument.ts';

/** Options that every report takes. */
export interface ReportOptions extends GlobalOptions {
  readonly pdf?: string;
  readonly html?: string;
  readonly language?: 'en' | 'es';
}

/** Options of `report evidence`. */
export interface EvidenceReportOptions extends ReportOptions {
  readonly on?: CalendarDay;
  /** The register's where left out. */
  readonly currency?: string;
}

/** Options of `report plan`. */
export interface PlanReportOptions extends ReportOptions {
  readonly site?: boolean;
  readonly years: number;
  /** The register's where left out. */
  readonly currency?: string;
}

/** Options of `report quote`. */
export interface QuoteReportOptions extends ReportOptions {
  readonly posts?: readonly number[];
  readonly tax: number;
  readonly validDays: number;
  /** The register's where left out. */
  readonly currency?: string;
}

/** Options of `report sheet`. */
export interface SheetReportOptions extends ReportOptions {
  readonly day: CalendarDay;
}

const WAYS: Readonly<Record<string, string>> = {
  fence: '"stormpale export fences" lists them',
  owner: '"stormpale export owners" lists them; --site plans for a site',
  site: '"stormpale export sites" lists them',
  crew: '"stormpale export crews" lists them',
  message: 'see "stormpale mail queue" or the page /outbox for the numbers',
};

function writeFile(option: string, path: string, content: string | Uint8Array): void {
  try {
    writeFileSync(path, content);
  } catch (error) {
    throw new CliError(
      EXIT.refused,
      `${option} ${path}: it cannot be written (${(error as NodeJS.ErrnoException).code ?? String(error)})`,
      'name a file in a folder that is there and may be written to',
    );
  }
}

/** Makes a report and writes it as PDF, as a page, or both. */
async function write(
  context: CliContext,
  options: ReportOptions,
  make: (parts: ReportParts) => Promise<ReportResult>,
): Promise<void> {
  const { pdf, html } = options;
  if (pdf === undefined && html === undefined) {
    throw new CliError(
      EXIT.usage,
      'a report is written into a file, and none is named',
      'give --pdf FILE, --html FILE, or both',
    );
  }
  const config = configOf(context, options);
  const result = await withExistingRegister(config, (register) =>
    make({ register, now: context.clock, officeName: config.officeName }),
  );
  if (result.kind === 'not found') {
    const { what, nearest } = result;
    throw new CliError(
      EXIT.notFound,
      `no ${what} in the register${nearest === null ? '' : `; did you mean ${nearest}?`}`,
      `${WAYS[what.split(' ')[0] ?? ''] ?? 'see what is in the register'}, --data names another register`,
    );
  }
  if (result.kind === 'refused') {
    throw new CliError(EXIT.refused, `no report: ${result.reason}`, 'nothing was written');
  }
  const { report } = result;
  if (html !== undefined) writeFile('--html', html, reportHtml(report));
  if (pdf !== undefined) writeFile('--pdf', pdf, await reportPdf(report, await reportFonts()));
  for (const path of [html, pdf]) if (path !== undefined) context.terminal.err(`Written: ${path}\n`);
}

/** Writes the report of one fence. */
export const runReportFence = (context: CliContext, ref: string, options: ReportOptions): Promise<void> =>
  write(context, options, (parts) => fenceReportOf(parts, ref, options.language ?? null));

/** Writes the evidence file of one fence, as believed today or on a day that is past. */
export const runReportEvidence = (context: CliContext, ref: string, options: EvidenceReportOptions): Promise<void> =>
  write(context, options, (parts) =>
    evidenceReportOf(parts, {
      ref,
      on: options.on ?? null,
      language: options.language ?? null,
      currency: options.currency ?? null,
    }),
  );

/** Writes the replacement plan of an owner, or of what is kept in common at a site. */
export const runReportPlan = (context: CliContext, ref: string, options: PlanReportOptions): Promise<void> =>
  write(context, options, (parts) =>
    planReportOf(parts, {
      of: { kind: options.site ? 'site' : 'owner', ref },
      years: options.years,
      language: options.language ?? null,
      currency: options.currency ?? null,
    }),
  );

/** Writes a quote for works at one fence. */
export async function runReportQuote(
  context: CliContext,
  ref: string,
  names: readonly string[],
  options: QuoteReportOptions,
): Promise<void> {
  const works = wantedWorks(names, options.posts);
  await write(context, options, (parts) =>
    quoteReportOf(parts, {
      fenceRef: ref,
      works,
      taxPercent: options.tax,
      validDays: options.validDays,
      currency: options.currency ?? null,
      language: options.language ?? null,
    }),
  );
}

/** Writes a letter of the outbox, as it was written. */
export async function runReportLetter(context: CliContext, id: string, options: ReportOptions): Promise<void> {
  if (!/^\d{1,15}$/.test(id)) {
    throw new CliError(
      EXIT.usage,
      `${JSON.stringify(id)} is no message number`,
      'write a number as "stormpale mail queue" shows them',
    );
  }
  await write(context, options, (parts) => letterReportOf(parts, Number(id)));
}

/** Writes the day sheet of a crew. */
export const runReportSheet = (context: CliContext, crew: string, options: SheetReportOptions): Promise<void> =>
  write(context, options, (parts) =>
    sheetReportOf(parts, crew, { day: options.day, language: options.language ?? null }),
  );
