import type { Money } from '../../season/money/money.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import type { ChartLanguage } from '../chart-words.ts';
import { wholeText } from '../reserve-fences.ts';
import { speedText } from '../speed-text.ts';
import { type EvidenceWords, evidenceWords } from './evidence-words.ts';
import { fenceFactList } from './fence-fact-list.ts';
import { foundBlocks, ownersLine, type ReportMaking } from './fence-report.ts';
import {
  cautionsBlock,
  checkerBlocks,
  holdsTable,
  inspectionBlocks,
  risksSentence,
  stormBlocks,
  unknownBlocks,
  worksBlocks,
  yearsDrawing,
} from './fence-sections.ts';
import { fenceSentences } from './fence-sentences-in.ts';
import { fenceReportWords } from './fence-words-in.ts';
import { postsBlocks } from './posts-sections.ts';
import { consequenceName, soilName } from './record-names.ts';
import { paperFor, type Report, type ReportBlock } from './report.ts';
import { footParts, writtenDay } from './report-words.ts';
import type { ReportedFence } from './reported-fence.ts';

/** A notice about the fence, as an evidence file tells it. */
export interface ReportedNotice {
  readonly decidedOn: CalendarDay;
  readonly matter: string;
  readonly owner: string;
  /** When and how it was told; else why it was not, by the day of the file. */
  readonly told:
    | { readonly channel: 'mail' | 'letter'; readonly day: CalendarDay }
    | 'under way'
    | 'to print'
    | 'parked'
    | 'cancelled'
    | 'unwritten';
}

/** What an evidence file says beside what is believed of the fence. */
export interface EvidenceParts {
  readonly fence: ReportedFence;
  /** The day until which records count, and whether that is today. */
  readonly on: CalendarDay;
  readonly isPast: boolean;
  /** Records observed by then that came into the register later. */
  readonly enteredLater: number;
  /** Inspections and storm reports of that time that were withdrawn since. */
  readonly withdrawnSince: number;
  readonly notices: readonly ReportedNotice[];
  /** What owners answered by the links of their messages, oldest first. */
  readonly answers: readonly { readonly on: CalendarDay; readonly kind: string; readonly owner: string }[];
  /** What rebuilding it costs; null where it cannot be rebuilt as it stands. */
  readonly rebuild: {
    readonly price: Money;
    readonly currency: string;
    readonly posts: number;
    readonly isShipped: boolean;
  } | null;
}

function dayBlocks(parts: EvidenceParts, words: EvidenceWords, language: ChartLanguage): readonly ReportBlock[] {
  const { on, isPast, enteredLater, withdrawnSince, fence } = parts;
  const day = writtenDay(on, language);
  const lines = isPast ? words.past(day, fence.forecast.modelVersion) : [words.today(day)];
  return [
    ...lines,
    ...(isPast && enteredLater > 0 ? [words.late(enteredLater)] : []),
    ...(withdrawnSince > 0 ? [words.withdrawn(withdrawnSince)] : []),
  ].map((text): ReportBlock => ({ kind: 'paragraph', text }));
}

function basisBlocks({ fence }: EvidenceParts, words: EvidenceWords, language: ChartLanguage): readonly ReportBlock[] {
  const { facts, forecast, units, site } = fence;
  const report = fenceReportWords(language);
  const { gustMps, returnPeriodYears, explanation } = forecast.designGust;
  const often = returnPeriodYears === null ? report.gustLocal : report.gustOnce(Math.round(returnPeriodYears));
  return [
    { kind: 'heading', level: 2, text: words.basis },
    {
      kind: 'paragraph',
      text: `${words.wind(`${speedText(gustMps, units)} (${often})`, site.windSource)} ${words.exposure(facts.site.exposure, soilName(facts.site.soilClass, language))} ${report.gustsMeant}`,
    },
    // how the design gust follows from what was entered is explained in English alone
    ...(language === 'en'
      ? [{ kind: 'paragraph', text: `The design gust: ${explanation.replace(/\.$/, '')}.` } as const]
      : []),
  ];
}

function valueBlocks(
  { rebuild, fence }: EvidenceParts,
  words: EvidenceWords,
  language: ChartLanguage,
): readonly ReportBlock[] {
  if (rebuild === null) return [];
  return [
    { kind: 'heading', level: 2, text: words.replacement },
    {
      kind: 'facts',
      facts: [
        {
          name: words.rebuild,
          value: `${wholeText(rebuild.price)} ${rebuild.currency}`,
          small: `${words.rebuildFrom(rebuild.posts)}; ${rebuild.isShipped ? words.shippedPrice : words.ownPrice}`,
        },
        { name: words.consequence, value: consequenceName(fence.consequence, language) },
      ],
    },
  ];
}

function noticeBlocks({ notices, answers }: EvidenceParts, words: EvidenceWords): readonly ReportBlock[] {
  const heading: ReportBlock = { kind: 'heading', level: 2, text: words.notices };
  if (notices.length === 0) return [heading, { kind: 'paragraph', text: words.noNotices }];
  return [
    heading,
    {
      kind: 'table',
      caption: words.noticesCaption,
      columns: words.noticeColumns.map((name, index) => ({ heading: name, weight: [0.8, 1.5, 1.5, 1.6][index] ?? 1 })),
      rows: notices
        .toReversed()
        .map(({ decidedOn, matter, owner, told }) => [
          decidedOn,
          words.matters[matter] ?? matter,
          owner,
          typeof told === 'string' ? words.notTold(told) : words.told(told.channel, told.day),
        ]),
    },
    ...(answers.length === 0
      ? []
      : ([
          { kind: 'heading', level: 3, text: words.answers },
          {
            kind: 'list',
            items: answers.map(({ on, kind, owner }) => `${on}: ${owner}, ${words.answerKinds[kind] ?? kind}`),
          },
        ] as const)),
    { kind: 'paragraph', text: words.noAnswers, look: 'small' },
  ];
}

/**
 * The evidence file of a fence for whoever insures it: which gust it holds and on which basis, as believed on a day, and the care
 * it had until then, each record with who made it.
 */
export function evidenceReport(parts: EvidenceParts, making: ReportMaking): Report {
  const { fence, on, isPast } = parts;
  const { language } = making;
  const words = evidenceWords(language);
  const report = fenceReportWords(language);
  const { breaking, rest } = fenceSentences(fence, language);
  return {
    language,
    paper: paperFor(fence.units),
    title: report.evidenceTitle(fence.ref),
    under: [`${fence.site.name}, ${fence.site.place}`, ...ownersLine(fence.owners, language)],
    subject: report.evidenceSubject(fence.ref, fence.site.name),
    author: making.author,
    madeAt: making.madeAt,
    foot: footParts({ madeOn: making.madeOn, modelVersion: fence.forecast.modelVersion, asOf: on }, language),
    blocks: [
      ...foundBlocks(fence, language),
      { kind: 'paragraph', text: breaking, look: 'lead' },
      ...rest.map((text): ReportBlock => ({ kind: 'paragraph', text })),
      ...dayBlocks(parts, words, language),
      yearsDrawing(fence, language),
      ...postsBlocks(fence, language),
      { kind: 'heading', level: 2, text: report.holds },
      holdsTable(fence, language),
      { kind: 'paragraph', text: risksSentence(fence, language) },
      ...basisBlocks(parts, words, language),
      ...inspectionBlocks(fence, language),
      ...stormBlocks(fence, language),
      ...worksBlocks(fence, language),
      ...noticeBlocks(parts, words),
      ...valueBlocks(parts, words, language),
      { kind: 'heading', level: 2, text: report.known },
      { kind: 'facts', facts: fenceFactList(fence, language) },
      ...unknownBlocks(fence, language),
      ...checkerBlocks(fence, language),
      { kind: 'heading', level: 2, text: words.checked },
      {
        kind: 'paragraph',
        text: `${report.computedBy(fence.forecast.modelVersion, fence.inputHash)} ${words.checkedBy(`stormpale report evidence ${fence.ref}${isPast ? ` --on ${on}` : ''} --pdf FILE`)} ${words.madeThere(making.madeThere, making.timeZone)}`,
        look: 'small',
      },
      cautionsBlock(language),
    ],
  };
}
