import type { CheckedPost } from '../../season/visit/check-list.ts';
import type { DaySheet, SheetFence, SheetStop } from '../../season/visit/day-sheet.ts';
import { ownerText } from '../calendar-words.ts';
import type { ChartLanguage } from '../chart-words.ts';
import { DAY_SHEET_LABELS } from '../day-sheet-labels.ts';
import {
  alongText,
  amountText,
  believedHeading,
  believedText,
  conditionText,
  countedFromText,
  fenceText,
  lastReadText,
  longDay,
  stateText,
  todoTexts,
  whenText,
} from '../day-sheet-words.ts';
import { postStrip, postStripKey } from '../post-strip.ts';
import { depthUnit } from '../quantity-text.ts';
import { remarkInSpanish } from '../spanish/forecast-remarks.ts';
import { loadedMaterialIn } from '../spanish/material-names.ts';
import type { DisplayUnits } from '../speed-text.ts';
import { reminderSentence, visitItemText } from '../visit-words.ts';
import { widthBar } from '../width-bar.ts';
import type { ReportMaking } from './fence-report.ts';
import { cautionsBlock } from './fence-sections.ts';
import { paperFor, type Report, type ReportBlock, type ReportCell, type ReportTable } from './report.ts';
import { footParts } from './report-words.ts';

const hours = (personHours: number): string => String(Number(personHours.toFixed(1)));

const BLANK: ReportCell = { kind: 'blank' };
const TICK: ReportCell = { kind: 'tick' };

interface Told {
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}

function postRow(post: CheckedPost, { units, language }: Told): readonly ReportCell[] {
  return [
    { kind: 'text', text: String(post.number), under: alongText(post.positionM, units) },
    TICK,
    {
      kind: 'text',
      text: todoTexts(post, language).join('\n'),
      under: conditionText(post, language),
      strong: post.todo.length > 0,
    },
    lastReadText(post, units, language),
    { kind: 'drawn', text: believedText(post, units), svg: widthBar(post) },
    BLANK,
    BLANK,
  ];
}

const newPostRow = ({ number }: CheckedPost, language: ChartLanguage): readonly ReportCell[] => [
  DAY_SHEET_LABELS[language].after(number),
  TICK,
  { kind: 'text', text: DAY_SHEET_LABELS[language].newPostAfter(number), strong: true },
  '',
  '',
  '',
  '',
];

function postsTable(fence: SheetFence, told: Told): ReportTable {
  const { units, language } = told;
  const words = DAY_SHEET_LABELS[language];
  return {
    kind: 'table',
    caption: words.posts(fence.ref),
    columns: [
      { heading: words.post, weight: 0.6 },
      { heading: words.done, weight: 0.5 },
      { heading: words.todo, weight: 1.8 },
      { heading: words.lastRead, weight: 1.7 },
      { heading: believedHeading(units, language), weight: 1.1 },
      { heading: words.soundWidthFound(depthUnit(units)), weight: 0.8 },
      { heading: words.lean, weight: 0.8 },
    ],
    rows: fence.posts.flatMap((post) => [
      postRow(post, told),
      ...(post.newPostAfter ? [newPostRow(post, language)] : []),
    ]),
  };
}

function fenceBlocks(fence: SheetFence, told: Told): readonly ReportBlock[] {
  const { units, language } = told;
  const words = DAY_SHEET_LABELS[language];
  const paragraph = (name: string, text: string): readonly ReportBlock[] =>
    text === '' ? [] : [{ kind: 'paragraph', text: `${name} ${text}` }];
  return [
    { kind: 'heading', level: 3, text: words.fence(fence.ref) },
    { kind: 'paragraph', text: visitItemText(fence, language), look: 'lead' },
    { kind: 'paragraph', text: fenceText(fence, units, language), look: 'small' },
    ...paragraph(words.gettingThere, fence.accessNote),
    ...paragraph(words.aboutIt, fence.note),
    ...fence.findings.map(
      (text): ReportBlock => ({
        kind: 'paragraph',
        text: language === 'es' ? remarkInSpanish(text) : text,
        look: 'strong',
      }),
    ),
    {
      kind: 'drawing',
      alt: words.fromTheSide(fence.ref),
      svg: () => postStrip(fence.posts, words.drawn(fence.ref, fence.posts.length)),
      caption: `${countedFromText(fence, units, language)} ${postStripKey(fence.posts, language)}`.trim(),
    },
    postsTable(fence, told),
    { kind: 'list', items: [words.allDone], ticks: true },
    { kind: 'lines', labels: [words.hoursUsed(hours(fence.personHours)), words.leftUndone] },
  ];
}

function stopBlocks(stop: SheetStop, index: number, language: ChartLanguage): readonly ReportBlock[] {
  const { site, owners, reminders } = stop;
  const words = DAY_SHEET_LABELS[language];
  return [
    { kind: 'heading', level: 2, text: `${index + 1}. ${site.name}` },
    { kind: 'paragraph', text: `${site.place} · ${whenText(stop, language)} · ${stateText(stop, language)}` },
    ...(stop.note === '' ? [] : [{ kind: 'paragraph', text: stop.note, look: 'strong' } as const]),
    ...(reminders.length === 0
      ? []
      : [{ kind: 'list', items: reminders.map((each) => reminderSentence(each, language)), ticks: true } as const]),
    {
      kind: 'facts',
      facts: owners.map((owner) => ({ name: words.ownerOf(owner.fenceRefs.join(', ')), value: ownerText(owner) })),
    },
    {
      kind: 'paragraph',
      text: words.hoursPlanned(hours(stop.personHours), hours(stop.travelPersonHours), stop.uid),
      look: 'small',
    },
    ...stop.fences.flatMap((fence) => fenceBlocks(fence, { units: site.units, language })),
  ];
}

function loadBlocks({ load, stops }: DaySheet, language: ChartLanguage): readonly ReportBlock[] {
  const words = DAY_SHEET_LABELS[language];
  const heading: ReportBlock = { kind: 'heading', level: 2, text: words.load };
  if (load.length > 0) {
    return [
      heading,
      {
        kind: 'list',
        items: load.map(
          ({ name, unit, toTake }) => `${amountText(toTake, unit, language)} ${loadedMaterialIn(name, unit, language)}`,
        ),
        ticks: true,
      },
    ];
  }
  const goesOn = stops.some(({ dayOfVisit }) => dayOfVisit > 1);
  return [
    heading,
    {
      kind: 'paragraph',
      text: goesOn ? words.loadedBefore : words.nothingToLoad,
    },
  ];
}

/** A crew's day as a report, with everything its page has: what to load, every site, every post, fields for a pen. */
export function sheetReport(sheet: DaySheet, making: ReportMaking): Report {
  const { language } = making;
  const words = DAY_SHEET_LABELS[language];
  return {
    language,
    paper: paperFor(sheet.stops[0]?.site.units ?? 'us'),
    title: `${sheet.crew.name}, ${longDay(sheet.day, language)}`,
    under: [sheet.people.length === 0 ? words.nobody : words.goingOut(sheet.people.join(', '))],
    subject: words.subject(sheet.crew.name, sheet.day),
    author: making.author,
    madeAt: making.madeAt,
    foot: footParts({ madeOn: making.madeOn, modelVersion: null, asOf: making.madeOn }, language),
    blocks: [
      ...loadBlocks(sheet, language),
      ...sheet.stops.flatMap((stop, index) => stopBlocks(stop, index, language)),
      cautionsBlock(language),
    ],
  };
}
