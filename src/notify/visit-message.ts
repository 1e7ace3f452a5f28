import { postNumbersText } from '../drawing/what-if-words.ts';
import { sumRanges } from '../season/money/budget-range.ts';
import type { VisitWorks } from '../season/visit/visit.ts';
import { fenceNews } from './fence-news.ts';
import type { VisitMatter } from './matter-rules.ts';
import type { BodyBlock } from './message-body.ts';
import type { OfficeFacts, OwnerMessage, RecipientFacts } from './message-facts.ts';
import { rangeInWords } from './money-words.ts';
import { ownerMessage } from './owner-message.ts';
import { oneLine } from './plain-words.ts';
import type { ToldItem, VisitToTell } from './visit-facts.ts';
import type { VisitWords } from './visit-words.ts';
import { visitWordsOf } from './visit-words-of.ts';
import { wordsOf } from './words-of.ts';

/** One kind of works with its posts. */
function worksText({ kind, posts, postCount }: VisitWorks, words: VisitWords): string {
  if (kind === 'drainage' || kind === 'rebuild') return words.works[kind];
  if (kind === 'added-posts') return `${words.works[kind]}, ${words.morePosts(postCount)}`;
  return posts.length === 0
    ? words.works[kind]
    : `${words.works[kind]}, ${words.posts(postNumbersText(posts), posts.length)}`;
}

/** What is done at one fence, in the owner's words. */
export const itemText = ({ works }: Pick<ToldItem, 'works'>, words: VisitWords): string =>
  works.map((each) => worksText(each, words)).join(' + ');

/** True for a matter by which no crew comes. */
export const isOffMatter = (matter: VisitMatter): boolean => matter === 'visit missed' || matter === 'visit cancelled';

/** When a visit is, in words; one that is off when it was to be. */
export function toldWhen(visit: VisitToTell, words: VisitWords): string {
  return words.when(isOffMatter(visit.matter) && visit.before !== null ? visit.before : visit);
}

/** What is done at each fence and may cost, a line a fence; a fence that is no longer on the visit has nothing to be done. */
export const itemLines = (
  { items, matter, currency }: VisitToTell,
  language: RecipientFacts['language'],
): readonly string[] => {
  const words = visitWordsOf(language);
  const cost = (item: ToldItem): string =>
    isOffMatter(matter) ? '' : ` – ${rangeInWords(item.cost, currency, language)}`;
  return items.map((item) =>
    item.works.length === 0 ? item.fenceRef : `${item.fenceRef}: ${itemText(item, words)}${cost(item)}`,
  );
};

/** The message about one visit to the fences of one owner; the first lines are the answer. */
export function visitMessage(input: {
  readonly visit: VisitToTell;
  readonly recipient: RecipientFacts;
  readonly office: OfficeFacts;
}): OwnerMessage {
  const { visit, recipient, office } = input;
  const { language, letter } = recipient;
  const words = visitWordsOf(language);
  const fenceWords = wordsOf(language);
  const { matter, currency } = visit;
  const isOff = isOffMatter(matter);
  const refs = visit.items.map(({ fenceRef }) => fenceRef);
  const on = toldWhen(visit, words);
  const news = visit.fences.map((fence) => fenceNews(fence, language));
  const dangers = news.flatMap((each) => {
    const danger = fenceWords.danger(each);
    return danger === null ? [] : [`${each.ref}: ${danger}`];
  });
  const heading = (text: string): BodyBlock => ({ kind: 'heading', text });
  const paragraph = (text: string): BodyBlock => ({ kind: 'paragraph', text });
  const reminders = isOff ? [] : visit.reminders.map((kind) => words.reminder[kind]);
  return ownerMessage({
    recipient,
    office,
    fenceRef: refs.length === 1 ? (refs[0] ?? null) : null,
    subject: words.subject[matter](visit, words.fences(refs), on),
    files: [],
    blocks: [
      {
        kind: 'answer',
        title: `${words.fences(refs)}, ${visit.siteName}, ${visit.place}`,
        lines: [...dangers, ...words.answer[matter](visit, on)],
      },
      paragraph(fenceWords.greeting(oneLine(recipient.name))),
      paragraph(recipient.covering ?? words.covering[matter]),
      heading(words.headings.works),
      { kind: 'list', items: itemLines(visit, language) },
      ...(isOff
        ? []
        : [
            paragraph(
              `${visit.items.length > 1 ? `${words.totalCost(rangeInWords(sumRanges(visit.items.map((item) => item.cost)), currency, language))} ` : ''}${words.budget}`,
            ),
          ]),
      heading(words.headings.next),
      paragraph(words.next[matter](visit.answerBy)),
      ...(visit.dayChoice === null ? [] : [paragraph(words.dayChoice[visit.dayChoice])]),
      ...(letter === null ? [paragraph(isOff ? words.calendar.cancel : words.calendar.request)] : []),
      ...(isOff
        ? []
        : [heading(words.headings.onTheDay), { kind: 'list', items: [...words.onTheDay, ...reminders] } as const]),
      ...(news.length === 0 || isOff
        ? []
        : [
            heading(words.headings.why),
            {
              kind: 'list',
              items: news.map(
                (each) =>
                  `${each.ref}: ${[...fenceWords.answer(each), ...fenceWords.sureness(each).slice(0, 1)].join(' ')}`,
              ),
            } as const,
            paragraph(fenceWords.basis),
          ]),
    ],
  });
}
