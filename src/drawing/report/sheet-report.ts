import type { CheckedPost } from '../../season/visit/check-list.ts';
import type { DaySheet, SheetFence, SheetStop } from '../../season/visit/day-sheet.ts';
import { ownerText } from '../calendar-words.ts';
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

function postRow(post: CheckedPost, units: DisplayUnits): readonly ReportCell[] {
  return [
    { kind: 'text', text: String(post.number), under: alongText(post.positionM, units) },
    TICK,
    { kind: 'text', text: todoTexts(post).join('\n'), under: conditionText(post), strong: post.todo.length > 0 },
    lastReadText(post, units),
    { kind: 'drawn', text: believedText(post, units), svg: widthBar(post) },
    BLANK,
    BLANK,
  ];
}

const newPostRow = (post: CheckedPost): readonly ReportCell[] => [
  `after ${post.number}`,
  TICK,
  { kind: 'text', text: 'new post, midway between this and the next', strong: true },
  '',
  '',
  '',
  '',
];

const postsTable = (fence: SheetFence, units: DisplayUnits): ReportTable => ({
  kind: 'table',
  caption: `Posts of fence ${fence.ref}`,
  columns: [
    { heading: 'Post', weight: 0.6 },
    { heading: 'Done', weight: 0.5 },
    { heading: 'To do', weight: 1.8 },
    { heading: 'Last read', weight: 1.7 },
    { heading: believedHeading(units), weight: 1.1 },
    { heading: `Sound width found, ${depthUnit(units)}`, weight: 0.8 },
    { heading: 'Lean, °', weight: 0.8 },
  ],
  rows: fence.posts.flatMap((post) => [postRow(post, units), ...(post.newPostAfter ? [newPostRow(post)] : [])]),
});

function fenceBlocks(fence: SheetFence, units: DisplayUnits): readonly ReportBlock[] {
  return [
    { kind: 'heading', level: 3, text: `Fence ${fence.ref}` },
    { kind: 'paragraph', text: visitItemText(fence), look: 'lead' },
    { kind: 'paragraph', text: fenceText(fence, units), look: 'small' },
    ...(fence.accessNote === '' ? [] : [{ kind: 'paragraph', text: `Getting there: ${fence.accessNote}` } as const]),
    ...(fence.note === '' ? [] : [{ kind: 'paragraph', text: `About it: ${fence.note}` } as const]),
    ...fence.findings.map((text): ReportBlock => ({ kind: 'paragraph', text, look: 'strong' })),
    {
      kind: 'drawing',
      alt: `Fence ${fence.ref} with ${fence.posts.length} posts, from the side`,
      svg: () => postStrip(fence.posts, `Fence ${fence.ref} with ${fence.posts.length} posts`),
      caption: `${countedFromText(fence, units)} ${postStripKey(fence.posts)}`.trim(),
    },
    postsTable(fence, units),
    { kind: 'list', items: ['all done'], ticks: true },
    {
      kind: 'lines',
      labels: [`People’s hours used (planned ${hours(fence.personHours)})`, 'Left undone, and why'],
    },
  ];
}

function stopBlocks(stop: SheetStop, index: number): readonly ReportBlock[] {
  const { site, owners, reminders } = stop;
  return [
    { kind: 'heading', level: 2, text: `${index + 1}. ${site.name}` },
    { kind: 'paragraph', text: `${site.place} · ${whenText(stop)} · ${stateText(stop)}` },
    ...(stop.note === '' ? [] : [{ kind: 'paragraph', text: stop.note, look: 'strong' } as const]),
    ...(reminders.length === 0 ? [] : [{ kind: 'list', items: reminders.map(reminderSentence), ticks: true } as const]),
    {
      kind: 'facts',
      facts: owners.map((owner) => ({ name: `Owner of ${owner.fenceRefs.join(', ')}`, value: ownerText(owner) })),
    },
    {
      kind: 'paragraph',
      text: `People’s hours planned: ${hours(stop.personHours)} at the site, ${hours(stop.travelPersonHours)} on the way. Visit ${stop.uid}.`,
      look: 'small',
    },
    ...stop.fences.flatMap((fence) => fenceBlocks(fence, site.units)),
  ];
}

function loadBlocks({ load, stops }: DaySheet): readonly ReportBlock[] {
  const heading: ReportBlock = { kind: 'heading', level: 2, text: 'Load' };
  if (load.length > 0) {
    return [
      heading,
      { kind: 'list', items: load.map(({ name, unit, toTake }) => `${amountText(toTake, unit)} ${name}`), ticks: true },
    ];
  }
  const goesOn = stops.some(({ dayOfVisit }) => dayOfVisit > 1);
  return [
    heading,
    {
      kind: 'paragraph',
      text: goesOn ? 'Nothing to load: what goes on was loaded on its first day.' : 'Nothing to load.',
    },
  ];
}

/** A crew's day as a report, with everything its page has: what to load, every site, every post, fields for a pen. In English. */
export function sheetReport(sheet: DaySheet, making: Omit<ReportMaking, 'language'>): Report {
  return {
    language: 'en',
    paper: paperFor(sheet.stops[0]?.site.units ?? 'us'),
    title: `${sheet.crew.name}, ${longDay(sheet.day)}`,
    under: [
      sheet.people.length === 0
        ? 'Nobody of the crew is down to go out this day.'
        : `Going out: ${sheet.people.join(', ')}`,
    ],
    subject: `Day sheet of ${sheet.crew.name} for ${sheet.day}`,
    author: making.author,
    madeAt: making.madeAt,
    foot: footParts({ madeOn: making.madeOn, modelVersion: null, asOf: making.madeOn }, 'en'),
    blocks: [...loadBlocks(sheet), ...sheet.stops.flatMap(stopBlocks), cautionsBlock('en')],
  };
}
