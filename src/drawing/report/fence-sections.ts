import type { GroupSpeeds } from '../../forecast/fence-forecast.ts';
import { seasonOne } from '../../forecast/fence-forecast.ts';
import { cautionsIn } from '../cautions.ts';
import type { ChartLanguage } from '../chart-words.ts';
import { drawFenceYears } from '../fence-years.ts';
import { heldText } from '../held-text.ts';
import { bandText, depthFigure, depthUnit, onceInYearsCell, percentText } from '../quantity-text.ts';
import { displaySpeed, speedText, speedUnit } from '../speed-text.ts';
import { postNumbersText, worksNameIn } from '../what-if-words.ts';
import { fenceReportWords } from './fence-words-in.ts';
import { methodName } from './record-names.ts';
import type { ReportBlock, ReportDrawing, ReportTable } from './report.ts';
import { writtenDay } from './report-words.ts';
import type { ReportedFence } from './reported-fence.ts';
import { foundAtPost, stormDid } from './seen-texts.ts';

/** Seasons that the table shows: the ten ahead, then every fifth. */
const isShown = (season: number | null): boolean =>
  season !== null && season >= 1 && (season <= 10 || season % 5 === 0);

/** The picture of a fence's years. */
export function yearsDrawing({ forecast, units, ref }: ReportedFence, language: ChartLanguage): ReportDrawing {
  const words = fenceReportWords(language);
  return {
    kind: 'drawing',
    alt: words.chartAlt(ref),
    svg: (widthPx, idPrefix) =>
      drawFenceYears(forecast, {
        units,
        language,
        widthPx,
        heightPx: widthPx < 500 ? 360 : Math.min(430, 150 + widthPx * 0.33),
        idPrefix,
      }),
    caption: words.chartCaption,
  };
}

/** Snap and lean speed in season 1 with their ranges, and what the site asks. */
export function holdsTable({ forecast, units }: ReportedFence, language: ChartLanguage): ReportTable {
  const words = fenceReportWords(language);
  const one = seasonOne(forecast);
  const figure = (mps: number): string => String(Math.round(displaySpeed(mps, units)));
  const once = (years: number | null): string => (years === null ? '–' : `${onceInYearsCell(years, language)}`);
  const row = (name: string, band: GroupSpeeds['snapMps'], years: number | null): readonly string[] => [
    name,
    heldText(band.p50, units, language),
    `${figure(band.p10)}–${figure(band.p90)}`,
    once(years),
  ];
  const { holdsRows } = words;
  const judged = one.line ?? one.ends;
  const apart = one.line ? one.ends : null;
  const { gustMps, returnPeriodYears } = forecast.designGust;
  return {
    kind: 'table',
    caption: words.holdsCaption(one.label, writtenDay(one.day, language)),
    columns: words.holdsColumns.map((heading, index) => ({
      heading,
      ...(index === 0 ? {} : { figures: true, unit: index === 3 ? words.years : speedUnit(units) }),
      weight: index === 0 ? 2.4 : 1,
    })),
    rows: [
      ...(judged
        ? [row(holdsRows.snap, judged.snapMps, judged.onceInYears), row(holdsRows.lean, judged.leanMps, null)]
        : []),
      ...(apart
        ? [row(holdsRows.endsSnap, apart.snapMps, apart.onceInYears), row(holdsRows.endsLean, apart.leanMps, null)]
        : []),
      [holdsRows.design, speedText(gustMps, units), '', once(returnPeriodYears)],
    ],
  };
}

/** How likely it is to be short and to snap in season 1. */
export function risksSentence({ forecast }: ReportedFence, language: ChartLanguage): string {
  const { label, pSnap, pShort } = seasonOne(forecast);
  const share = (chance: number | null): string | null => (chance === null ? null : percentText(chance, language));
  return fenceReportWords(language).risks(label, share(pSnap), share(pShort));
}

/** The years ahead as a table. */
export function seasonsTable({ forecast, units }: ReportedFence, language: ChartLanguage): ReportTable {
  const words = fenceReportWords(language);
  const speed = (mps: number): string => String(Math.round(displaySpeed(mps, units)));
  const share = (chance: number | null): string => (chance === null ? '–' : percentText(chance, language));
  const unitOf = [
    '',
    words.years,
    depthUnit(units),
    speedUnit(units),
    speedUnit(units),
    words.years,
    '',
    words.perSeason,
  ];
  return {
    kind: 'table',
    caption: words.seasonsCaption,
    columns: words.seasonColumns.map((heading, index) => ({
      heading,
      unit: unitOf[index] ?? '',
      figures: index > 0,
      weight: [0.8, 0.7, 1.5, 1.2, 1.2, 0.8, 1, 1][index] ?? 1,
    })),
    rows: forecast.seasons
      .filter(({ season }) => isShown(season))
      .map((season) => {
        const judged = season.line ?? season.ends;
        return [
          season.label,
          season.ageYears.toFixed(1),
          bandText(season.depthMm, (mm) => depthFigure(mm, units)),
          judged ? bandText(judged.snapMps, speed) : '–',
          judged ? bandText(judged.leanMps, speed) : '–',
          onceInYearsCell(judged?.onceInYears ?? null, language),
          share(season.pShort),
          share(season.pSnap),
        ];
      }),
  };
}

/** The verdict by allowable stress, as built and in the season at hand. */
export function checkerBlocks({ forecast, units }: ReportedFence, language: ChartLanguage): readonly ReportBlock[] {
  const words = fenceReportWords(language);
  const [yes, no] = words.meets;
  return [
    { kind: 'heading', level: 2, text: words.checker },
    { kind: 'paragraph', text: words.checkerNote },
    {
      kind: 'table',
      caption: words.checkerCaption,
      columns: words.checkerColumns.map((heading, index) => ({
        heading,
        figures: index >= 1 && index <= 3,
        weight: index === 0 ? 1.2 : 1,
      })),
      rows: forecast.codeVerdicts.map((verdict) => [
        words.checkerWhen(verdict.when === 'new' ? null : seasonOne(forecast).label),
        speedText(verdict.enteredGustMps, units),
        speedText(verdict.snapMps, units),
        speedText(verdict.leanMps, units),
        verdict.postMeets ? yes : no,
        verdict.footingMeets ? yes : no,
      ]),
    },
  ];
}

/** What is not recorded, and how far it moves the answer. */
export function unknownBlocks({ forecast, units }: ReportedFence, language: ChartLanguage): readonly ReportBlock[] {
  const words = fenceReportWords(language);
  const { unknowns } = forecast;
  return [
    { kind: 'heading', level: 2, text: words.unknown },
    unknowns.length === 0
      ? { kind: 'paragraph', text: words.unknownNone }
      : {
          kind: 'list',
          items: unknowns.map(({ input, swingMps, moves }) =>
            words.unknownMoves(words.unknownInputs[input], speedText(swingMps, units), moves),
          ),
        },
  ];
}

const newestFirst = <R extends { readonly day: string }>(records: readonly R[]): readonly R[] =>
  records.toSorted((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : 0));

/** Who looked, how, and what was found, newest first. */
export function inspectionBlocks(
  { inspections, units }: ReportedFence,
  language: ChartLanguage,
): readonly ReportBlock[] {
  const words = fenceReportWords(language);
  const heading: ReportBlock = { kind: 'heading', level: 2, text: words.inspections };
  if (inspections.length === 0) return [heading, { kind: 'paragraph', text: words.noInspections }];
  return [
    heading,
    {
      kind: 'table',
      caption: words.inspectionsCaption,
      columns: words.inspectionColumns.map((name, index) => ({
        heading: name,
        weight: [0.8, 1.3, 1.4, 2.6][index] ?? 1,
      })),
      rows: newestFirst(inspections).map(
        ({ day, enteredOn, inspector, qualification, method, instrument, readings }) => [
          { kind: 'text', text: day, under: enteredOn === null ? '' : words.entered(enteredOn) },
          { kind: 'text', text: inspector, under: qualification },
          { kind: 'text', text: methodName(method, language), under: instrument },
          readings.length === 0
            ? words.nothingFound
            : readings.map((reading) => foundAtPost(reading, units, language)).join('\n'),
        ],
      ),
    },
  ];
}

/** What storms did, newest first. */
export function stormBlocks({ storms, units }: ReportedFence, language: ChartLanguage): readonly ReportBlock[] {
  const words = fenceReportWords(language);
  const heading: ReportBlock = { kind: 'heading', level: 2, text: words.storms };
  if (storms.length === 0) return [heading, { kind: 'paragraph', text: words.noStorms }];
  return [
    heading,
    {
      kind: 'table',
      caption: words.stormsCaption,
      columns: words.stormColumns.map((name, index) => ({ heading: name, weight: [0.8, 2, 2.4][index] ?? 1 })),
      rows: newestFirst(storms).map((storm) => [
        { kind: 'text', text: storm.day, under: storm.enteredOn === null ? '' : words.entered(storm.enteredOn) },
        {
          kind: 'text',
          text: `${storm.storm}, ${words.gustOf(speedText(storm.gustMps, units), Math.round(storm.gustSpread * 100))}`,
          under: storm.gustSource,
        },
        {
          kind: 'text',
          text: stormDid(
            storm,
            storms.some((each) => each.storm === storm.storm && each.posts !== 'all'),
            language,
          ),
          under: words.reportedBy(storm.reportedBy),
        },
      ]),
    },
  ];
}

/** What was done to it, newest first. */
export function worksBlocks({ works }: ReportedFence, language: ChartLanguage): readonly ReportBlock[] {
  const words = fenceReportWords(language);
  const heading: ReportBlock = { kind: 'heading', level: 2, text: words.works };
  if (works.length === 0) return [heading, { kind: 'paragraph', text: words.noWorks }];
  return [
    heading,
    {
      kind: 'table',
      caption: words.worksCaption,
      columns: words.worksColumns.map((name, index) => ({ heading: name, weight: [1, 5][index] ?? 1 })),
      rows: newestFirst(works).map(({ day, kind, posts, enteredOn }) => [
        { kind: 'text', text: day, under: enteredOn === null ? '' : words.entered(enteredOn) },
        `${worksNameIn(kind, language)}, ${posts === 'all' ? words.allPosts : words.postsNamed(postNumbersText([...posts].sort((a, b) => a - b)))}`,
      ]),
    },
  ];
}

/** The cautions that go with every report. */
export const cautionsBlock = (language: ChartLanguage): ReportBlock => ({
  kind: 'cautions',
  heading: fenceReportWords(language).pleaseNote,
  items: cautionsIn(language).all,
});
