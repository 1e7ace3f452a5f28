import { sumRanges } from '../season/money/budget-range.ts';
import { fenceNews } from './fence-news.ts';
import { VISIT_MATTERS } from './matter-rules.ts';
import type { BodyBlock } from './message-body.ts';
import type { MessageFile, OfficeFacts, OwnerMessage, RecipientFacts } from './message-facts.ts';
import { rangeInWords } from './money-words.ts';
import { officeName } from './office-name.ts';
import { ownerMessage } from './owner-message.ts';
import { oneLine } from './plain-words.ts';
import type { VisitToTell } from './visit-facts.ts';
import { isOffMatter, itemLines, toldWhen } from './visit-message.ts';
import { visitWordsOf } from './visit-words-of.ts';
import { wordsOf } from './words-of.ts';

/** How many fences the message says the reason of, the weakest first. */
const REASONS_SHOWN = 5;

/** The day of a visit that tells where it stands in time; of one that is off the day it was to be. */
const dayOf = (visit: VisitToTell): string =>
  isOffMatter(visit.matter) && visit.before !== null ? visit.before.firstDay : visit.firstDay;

/**
 * The message about several visits to the fences of one owner that are told at the same time: what is new in one line a matter,
 * then each visit by itself, by day, and what holds for all of them once.
 * @param input.visits two or more
 * @param input.calendar all of them as one calendar file; null where none is attached
 */
export function visitsMessage(input: {
  readonly visits: readonly VisitToTell[];
  readonly recipient: RecipientFacts;
  readonly office: OfficeFacts;
  readonly calendar: MessageFile | null;
}): OwnerMessage {
  const { recipient, office, calendar } = input;
  const { language, links } = recipient;
  const words = visitWordsOf(language);
  const fenceWords = wordsOf(language);
  const visits = [...input.visits].sort((a, b) => (dayOf(a) < dayOf(b) ? -1 : dayOf(a) > dayOf(b) ? 1 : 0));
  const [first, last] = [visits[0], visits.at(-1)];
  if (!first || !last) throw new Error('a message about visits has none');
  const standing = visits.filter(({ matter }) => !isOffMatter(matter));
  const matters = VISIT_MATTERS.filter((matter) => visits.some((visit) => visit.matter === matter));
  const [only = null, ...others] = matters;
  // a fence is on one visit at a time; where it goes from one to another it is explained once
  const news = [
    ...new Map(
      visits.flatMap(({ fences }) => fences.map((fence) => [fence.forecast.fenceRef, fence] as const)),
    ).values(),
  ]
    .map((fence) => fenceNews(fence, language))
    .sort((a, b) => a.share - b.share);
  const dangers = news.flatMap((each) => {
    const danger = fenceWords.danger(each);
    return danger === null ? [] : [`${each.ref}: ${danger}`];
  });
  const heading = (text: string): BodyBlock => ({ kind: 'heading', text });
  const paragraph = (text: string): BodyBlock => ({ kind: 'paragraph', text });
  const partOf = (visit: VisitToTell): readonly BodyBlock[] => {
    const refs = visit.items.map(({ fenceRef }) => fenceRef);
    return [
      heading(`${words.fences(refs)}, ${visit.siteName}, ${visit.place}`),
      paragraph(words.answer[visit.matter](visit, toldWhen(visit, words)).join(' ')),
      { kind: 'list', items: itemLines(visit, language) },
      ...(visit.dayChoice === null ? [] : [paragraph(words.dayChoice[visit.dayChoice])]),
    ];
  };
  const costs = standing.flatMap(({ items }) => items.map(({ cost }) => cost));
  const currency = first.currency;
  const reminders = [...new Set(standing.flatMap((visit) => visit.reminders))].map((kind) => words.reminder[kind]);
  const explained = standing.length === 0 ? [] : news.slice(0, REASONS_SHOWN);
  const earliest = (of: readonly VisitToTell[]): string => of.map(({ answerBy }) => answerBy).sort()[0] ?? '';
  return ownerMessage({
    recipient,
    office,
    fenceRef: null,
    subject: words.several.subject(others.length === 0 ? only : null, visits.length, dayOf(first), dayOf(last)),
    files: calendar === null ? [] : [calendar],
    blocks: [
      {
        kind: 'answer',
        title: officeName(office, language),
        lines: [
          ...dangers.slice(0, REASONS_SHOWN),
          ...matters.map((matter) =>
            words.several.counted(matter, visits.filter((visit) => visit.matter === matter).length),
          ),
        ],
      },
      paragraph(fenceWords.greeting(oneLine(recipient.name))),
      paragraph(recipient.covering ?? words.several.covering),
      ...visits.flatMap(partOf),
      ...(costs.length === 0
        ? []
        : [paragraph(`${words.totalCost(rangeInWords(sumRanges(costs), currency, language))} ${words.budget}`)]),
      heading(words.headings.next),
      ...matters.map((matter) =>
        paragraph(words.next[matter](earliest(visits.filter((visit) => visit.matter === matter)))),
      ),
      ...(calendar === null ? [] : [paragraph(words.several.calendar)]),
      ...(links
        ? [
            heading(words.several.heading),
            {
              kind: 'links',
              links: visits.map((visit) => ({
                text: words.several.open(visit, toldWhen(visit, words)),
                url: `${links.pages}/visits#visit-${encodeURIComponent(visit.uid)}`,
              })),
              note: words.several.openNote,
            } as const,
          ]
        : []),
      ...(standing.length === 0
        ? []
        : [heading(words.headings.onTheDay), { kind: 'list', items: [...words.onTheDay, ...reminders] } as const]),
      ...(explained.length === 0
        ? []
        : [
            heading(words.headings.why),
            {
              kind: 'list',
              items: explained.map(
                (each) =>
                  `${each.ref}: ${[...fenceWords.answer(each), ...fenceWords.sureness(each).slice(0, 1)].join(' ')}`,
              ),
            } as const,
            paragraph(fenceWords.basis),
          ]),
    ],
  });
}
