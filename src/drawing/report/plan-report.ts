import { type Money, minusMoney, sumMoney } from '../../season/money/money.ts';
import type { Contribution } from '../../season/money/reserve-ledger.ts';
import type { ReservePlan, SetAside } from '../../season/money/reserve-plan.ts';
import { paidInAll } from '../../season/money/set-aside.ts';
import type { ChartLanguage } from '../chart-words.ts';
import { MEAN_BESIDE_RANGE } from '../mean-beside-range.ts';
import { percentText } from '../quantity-text.ts';
import { reserveChartSvg } from '../reserve-chart.ts';
import { type ShownFence, wholeText } from '../reserve-fences.ts';
import { refusalInSpanish } from '../spanish/refusals.ts';
import type { DisplayUnits } from '../speed-text.ts';
import type { ReportMaking } from './fence-report.ts';
import { cautionsBlock } from './fence-sections.ts';
import { type PlanWords, planWords } from './plan-words.ts';
import { paperFor, type Report, type ReportBlock, type ReportDrawing, type ReportTable } from './report.ts';
import { footParts } from './report-words.ts';

/** A plan of one payer, with the terms on which it was made. */
export interface ReportedPlan {
  /** Who pays: an owner by name, or the site where nobody in particular does. */
  readonly payer: string;
  /** Lines under the title: the sites. */
  readonly where: readonly string[];
  readonly units: DisplayUnits;
  readonly currency: string;
  readonly plan: ReservePlan;
  /** In the order of the plan's fences. */
  readonly fences: readonly ShownFence[];
  readonly unseen: readonly { readonly ref: string; readonly message: string }[];
  /** Refs of fences due now that a visit of the season plan mends and does not rebuild. */
  readonly mendedMeanwhile: readonly string[];
  /** Fences at the site that others keep. */
  readonly others: number;
  readonly inflationPercent: number;
  readonly interestPercent: number;
  readonly longestServiceYears: number;
  readonly inspectEveryYears: number;
  readonly sharedPercent: number;
  readonly modelVersion: string;
}

/** Some money with its currency, without cents: `9,185 USD`. */
const amountIn = (money: number, currency: string): string => `${wholeText(money)} ${currency}`;

/** What to set aside, in a sentence: for what is expected, or for nine courses in ten. */
function setAsideSentence({ flat }: SetAside, currency: string, say: PlanWords['setAside']): string {
  return say(flat.atOnce === 0 ? null : amountIn(flat.atOnce, currency), amountIn(flat.firstYear, currency));
}

/** What both ways of paying in come to over the years of the plan. */
function bothWaysSentence({ setAside, years }: ReservePlan, currency: string, words: PlanWords): string {
  const [expected, nine] = [setAside.expected.flat, setAside.nineInTen.flat];
  const inAll = (way: Contribution): string => amountIn(paidInAll(way, years.length), currency);
  return words.bothWays(
    inAll(expected),
    inAll(nine),
    nine.atOnce < expected.atOnce && nine.firstYear > expected.firstYear,
  );
}

const isDueNow = ({ isOutworn, ahead }: ShownFence): boolean => isOutworn || ahead?.advice.kind === 'replace now';

/** What a plan comes to, in sentences: what to set aside, what is due now, and what the season plan mends of that meanwhile. */
export function planSentences(
  { plan, fences, currency, mendedMeanwhile }: Pick<ReportedPlan, 'plan' | 'fences' | 'currency' | 'mendedMeanwhile'>,
  language: ChartLanguage,
): readonly string[] {
  const words = planWords(language);
  const due = fences.filter(isDueNow).map(({ ref }) => ref);
  return [
    setAsideSentence(plan.setAside.expected, currency, words.setAside),
    setAsideSentence(plan.setAside.nineInTen, currency, words.nineInTen),
    bothWaysSentence(plan, currency, words),
    due.length === 0 ? words.noneSoon : words.soon(due),
    ...(mendedMeanwhile.length === 0 ? [] : [words.meanwhile(mendedMeanwhile)]),
  ];
}

/** The chart of a plan: spending each year and the fund. */
export const planDrawing = (
  { plan, currency, payer }: Pick<ReportedPlan, 'plan' | 'currency' | 'payer'>,
  language: ChartLanguage,
): ReportDrawing => ({
  kind: 'drawing',
  alt: planWords(language).chartAlt(payer),
  svg: (widthPx, idPrefix) => reserveChartSvg(plan, { currency, payerName: payer, language, widthPx, idPrefix }),
});

/** The years of a plan, with their sums. */
export function planYearsTable(
  { plan, currency }: Pick<ReportedPlan, 'plan' | 'currency'>,
  language: ChartLanguage,
): ReportTable {
  const words = planWords(language);
  const sum = (of: (year: ReservePlan['years'][number]) => Money): string => wholeText(sumMoney(plan.years.map(of)));
  return {
    kind: 'table',
    caption: words.yearsCaption(currency),
    columns: words.yearColumns.map((heading, index) => ({
      heading,
      figures: index > 0,
      weight: [0.9, 1.1, 1, 1.9, 1, 1][index] ?? 1,
    })),
    rows: plan.years.map(({ year, repairs, spending, spendingBand, contribution, closing }) => [
      String(year),
      wholeText(repairs),
      wholeText(minusMoney(spending, repairs)),
      `${wholeText(spending)} (${wholeText(spendingBand.p10)}–${wholeText(spendingBand.p90)})`,
      wholeText(contribution),
      wholeText(closing),
    ]),
    sums: [
      [
        words.sum,
        sum(({ repairs }) => repairs),
        sum(({ spending, repairs }) => minusMoney(spending, repairs)),
        sum(({ spending }) => spending),
        sum(({ contribution }) => contribution),
        '',
      ],
    ],
  };
}

function setAsideRows({ plan: { setAside } }: Pick<ReportedPlan, 'plan'>, words: PlanWords): ReportTable {
  const row = (name: string, { flat, rising }: SetAside): readonly string[] => [
    name,
    ...[flat.atOnce, flat.firstYear, rising.atOnce, rising.firstYear].map(wholeText),
  ];
  return {
    kind: 'table',
    caption: words.setAsideCaption,
    columns: words.setAsideColumns.map((heading, index) => ({
      heading,
      figures: index > 0,
      weight: index === 0 ? 1.3 : 1,
    })),
    rows: [row(words.setAsideRows[0], setAside.expected), row(words.setAsideRows[1], setAside.nineInTen)],
  };
}

/** What is best for one fence, in a few words. */
function adviceIn({ isOutworn, ahead, cheapestYear, shortSeason }: ShownFence, words: PlanWords): string {
  if (isOutworn) return words.outworn;
  if (!ahead || cheapestYear === null) return words.beforeShort(shortSeason);
  switch (ahead.advice.kind) {
    case 'replace now':
      return words.now;
    case 'in N years':
      return words.inYear(cheapestYear);
    case 'run to failure':
      return words.keep(cheapestYear);
  }
}

function builtText({ built: { earliest, latest } }: ShownFence): string {
  const [from, to] = [earliest.slice(0, 4), latest.slice(0, 4)];
  return from === to ? from : `${from}–${to}`;
}

/** The fences of a plan, one a row; who pays is a column only where owners share. */
export function planFencesTable(
  { plan, fences }: Pick<ReportedPlan, 'plan' | 'fences'>,
  language: ChartLanguage,
): ReportTable {
  const words = planWords(language);
  const isShared = fences.some(({ sharedWith }) => sharedWith !== null);
  const [fence, built, advice, due, rebuild, snap, share] = words.fenceColumns;
  return {
    kind: 'table',
    caption: words.fencesCaption,
    columns: [
      { heading: fence, weight: 0.8 },
      { heading: built, weight: 0.8 },
      { heading: advice, weight: 1.7 },
      { heading: due, weight: 1.2 },
      { heading: rebuild, weight: 0.9, figures: true },
      { heading: snap, weight: 1.1, figures: true },
      ...(isShared ? [{ heading: share, weight: 1.4 }] : []),
    ],
    rows: fences.map((each, index) => [
      each.ref,
      builtText(each),
      adviceIn(each, words),
      String(plan.fences[index]?.likelyYear ?? words.notBefore),
      wholeText(each.price),
      each.snapRisk === null ? '–' : percentText(each.snapRisk, language),
      ...(isShared
        ? [each.sharedWith === null ? '100 %' : words.paysPart(Math.round(each.share * 100), each.sharedWith)]
        : []),
    ]),
  };
}

/** What a plan rests on, in sentences. */
export function planGround(reported: ReportedPlan, language: ChartLanguage): readonly string[] {
  const words = planWords(language);
  const {
    inflationPercent,
    interestPercent,
    longestServiceYears,
    inspectEveryYears,
    currency,
    fences,
    sharedPercent,
    others,
    unseen,
  } = reported;
  return [
    ...words.rests({
      inflation: String(inflationPercent),
      interest: String(interestPercent),
      life: longestServiceYears,
      inspectEvery: inspectEveryYears,
      currency,
    }),
    ...(fences.some(({ sharedWith }) => sharedWith !== null) ? [words.shared(sharedPercent)] : []),
    ...(others > 0 ? [words.others(others)] : []),
    ...unseen.map(({ ref, message }) => words.unseen(ref, language === 'es' ? refusalInSpanish(message) : message)),
    words.label,
  ];
}

/** The replacement plan of one payer: what to set aside, money per year, fence by fence. */
export function planReport(reported: ReportedPlan, making: ReportMaking): Report {
  const { language } = making;
  const words = planWords(language);
  const { plan, payer, fences, where } = reported;
  const [first = '', ...more] = planSentences(reported, language);
  const [from, to] = [plan.years[0]?.year ?? 0, plan.years.at(-1)?.year ?? 0];
  return {
    language,
    paper: paperFor(reported.units),
    title: words.title(payer, from, to),
    under: [[words.fences(fences.length), ...where].join(' · ')],
    subject: words.subject(payer),
    author: making.author,
    madeAt: making.madeAt,
    foot: footParts({ madeOn: making.madeOn, modelVersion: reported.modelVersion, asOf: making.madeOn }, language),
    blocks: [
      { kind: 'paragraph', text: first, look: 'lead' },
      ...more.map((text) => ({ kind: 'paragraph', text }) as const),
      planDrawing(reported, language),
      { kind: 'heading', level: 2, text: words.setAsideHeading },
      setAsideRows(reported, words),
      { kind: 'paragraph', text: words.whyAtOnce, look: 'small' },
      { kind: 'heading', level: 2, text: words.yearsHeading },
      planYearsTable(reported, language),
      { kind: 'paragraph', text: MEAN_BESIDE_RANGE[language], look: 'small' },
      { kind: 'heading', level: 2, text: words.fencesHeading },
      planFencesTable(reported, language),
      { kind: 'heading', level: 2, text: words.restsOn },
      { kind: 'list', items: planGround(reported, language) },
      cautionsBlock(language),
    ] satisfies readonly ReportBlock[],
  };
}
