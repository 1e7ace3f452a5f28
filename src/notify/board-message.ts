import { type BudgetRange, sumRanges } from '../season/money/budget-range.ts';
import { csvText } from './csv-cell.ts';
import { fenceNews } from './fence-news.ts';
import type { BodyBlock } from './message-body.ts';
import type { NoticedFence, OfficeFacts, OwnerMessage, RecipientFacts } from './message-facts.ts';
import { rangeInWords } from './money-words.ts';
import { officeName } from './office-name.ts';
import { ownerMessage } from './owner-message.ts';
import { oneLine } from './plain-words.ts';
import type { ToldVisitFacts } from './visit-facts.ts';
import { itemText } from './visit-message.ts';
import type { VisitWords } from './visit-words.ts';
import { visitWordsOf } from './visit-words-of.ts';
import { wordsOf } from './words-of.ts';

/** Most rows that a message writes out; the attached table has all. */
const ROWS_SHOWN = 40;
/** How many fences a message says the reason of, the weakest first. */
const REASONS_SHOWN = 5;

/** What an association is told of a season plan. */
export interface BoardPlan {
  /** Visits to its fences that stand, by day; then those that do not any more. */
  readonly planned: readonly ToldVisitFacts[];
  readonly noLonger: readonly ToldVisitFacts[];
  readonly currency: string;
  /** Its fences of the visits as they stand now. */
  readonly fences: readonly NoticedFence[];
}

const costOf = (visits: readonly ToldVisitFacts[]): BudgetRange =>
  sumRanges(visits.flatMap(({ items }) => items.map(({ cost }) => cost)));
const firstDayOf = (visits: readonly ToldVisitFacts[]): string =>
  visits.map(({ firstDay }) => firstDay).sort()[0] ?? '';
const lastDayOf = (visits: readonly ToldVisitFacts[]): string =>
  visits
    .map(({ lastDay }) => lastDay)
    .sort()
    .at(-1) ?? '';

const standing = (visit: ToldVisitFacts, words: VisitWords): string =>
  visit.state === 'confirmed' ? words.board.standing.confirmed : words.board.standing.proposed;

const COLUMNS = [
  'site',
  'place',
  'fence',
  'what',
  'first_day',
  'last_day',
  'standing',
  'crew',
  'cost_low',
  'cost_high',
  'currency',
];

function planCsv({ planned, currency }: BoardPlan, words: VisitWords): string {
  const rows = planned.flatMap((visit) =>
    visit.items.map((item) => [
      visit.siteName,
      visit.place,
      item.fenceRef,
      itemText(item, words),
      visit.firstDay,
      visit.lastDay,
      visit.state,
      visit.crewName,
      item.cost.low,
      item.cost.high,
      currency,
    ]),
  );
  return csvText([COLUMNS, ...rows]);
}

/** A table a visit, site by site, and after each site a sentence of by when and at what cost; at most so many rows in all. */
function siteTables(
  { planned, currency }: BoardPlan,
  words: VisitWords,
  language: RecipientFacts['language'],
): readonly BodyBlock[] {
  const sites = new Map<string, ToldVisitFacts[]>();
  for (const visit of planned) {
    const key = `${visit.siteName}, ${visit.place}`;
    sites.set(key, [...(sites.get(key) ?? []), visit]);
  }
  let left = ROWS_SHOWN;
  const table = (site: string, visit: ToldVisitFacts): readonly BodyBlock[] => {
    const shown = visit.items.slice(0, left);
    left -= shown.length;
    if (shown.length === 0) return [];
    const rows = shown.map((item) => [
      item.fenceRef,
      itemText(item, words),
      rangeInWords(item.cost, currency, language),
    ]);
    const caption = `${site}, ${words.when(visit)} (${standing(visit, words)})`;
    return [{ kind: 'table', caption, columns: words.board.columns, rows }];
  };
  const all = planned.reduce((sum, { items }) => sum + items.length, 0);
  const blocks = [...sites.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([site, visits]): readonly BodyBlock[] => {
      const sum = rangeInWords(costOf(visits), currency, language);
      return [
        ...visits.flatMap((visit) => table(site, visit)),
        { kind: 'paragraph', text: words.board.siteCost(site, sum, lastDayOf(visits)) },
      ];
    });
  return all > ROWS_SHOWN ? [...blocks, { kind: 'paragraph', text: words.board.more(all - ROWS_SHOWN) }] : blocks;
}

/** The message of a season plan to an association: what is planned at its sites, by when, and what it costs a site. */
export function boardMessage(input: {
  readonly plan: BoardPlan;
  readonly recipient: RecipientFacts;
  readonly office: OfficeFacts;
}): OwnerMessage {
  const { plan, recipient, office } = input;
  const { language } = recipient;
  const words = visitWordsOf(language);
  const fenceWords = wordsOf(language);
  const { board } = words;
  const { planned, noLonger, currency } = plan;
  const heading = (text: string): BodyBlock => ({ kind: 'heading', text });
  const paragraph = (text: string): BodyBlock => ({ kind: 'paragraph', text });
  const days = { firstDay: firstDayOf(planned), lastDay: lastDayOf(planned) };
  const sites = new Set(planned.map(({ siteName, place }) => `${siteName}, ${place}`)).size;
  const fences = new Set(planned.flatMap(({ items }) => items.map(({ fenceRef }) => fenceRef))).size;
  const answer =
    planned.length === 0
      ? board.nothingPlanned
      : board.answer({
          visits: planned.length,
          fences,
          sites,
          ...days,
          total: rangeInWords(costOf(planned), currency, language),
        });
  const news = plan.fences.map((fence) => fenceNews(fence, language)).sort((a, b) => a.share - b.share);
  const dangerous = news.filter(({ isDangerous }) => isDangerous);
  const gone = noLonger.map(
    (visit) =>
      `${visit.siteName}: ${visit.items.map(({ fenceRef }) => fenceRef).join(', ')}, ${words.when(visit.before ?? visit)}`,
  );
  return ownerMessage({
    recipient,
    office,
    fenceRef: null,
    subject:
      planned.length === 0
        ? board.nothingPlanned[0]
        : board.subject(planned.length, sites, days.firstDay, days.lastDay),
    files:
      planned.length === 0
        ? []
        : [{ name: 'season-plan.csv', contentType: 'text/csv; charset=utf-8', text: planCsv(plan, words) }],
    blocks: [
      {
        kind: 'answer',
        title: officeName(office, language),
        lines: [
          ...(dangerous.length > 0
            ? [fenceWords.digest.danger(dangerous.slice(0, REASONS_SHOWN), dangerous.length)]
            : []),
          ...answer,
        ],
      },
      paragraph(fenceWords.greeting(oneLine(recipient.name))),
      paragraph(recipient.covering ?? board.covering),
      ...(planned.length === 0
        ? []
        : [
            heading(board.headings.planned),
            ...siteTables(plan, words, language),
            paragraph(`${words.budget}${recipient.letter === null ? ` ${board.csv}` : ''}`),
          ]),
      ...(gone.length === 0
        ? []
        : [
            heading(board.headings.noLonger),
            paragraph(board.noLonger),
            { kind: 'list', items: gone.slice(0, ROWS_SHOWN) } as const,
            ...(gone.length > ROWS_SHOWN ? [paragraph(board.more(gone.length - ROWS_SHOWN))] : []),
          ]),
      ...(planned.length === 0 ? [] : [heading(board.headings.next), paragraph(board.next)]),
      ...(news.length === 0
        ? []
        : [
            heading(board.headings.why),
            {
              kind: 'list',
              items: news
                .slice(0, REASONS_SHOWN)
                .map(
                  (each) =>
                    `${each.ref}: ${[...fenceWords.answer(each), ...fenceWords.sureness(each).slice(0, 1)].join(' ')}`,
                ),
            } as const,
            paragraph(fenceWords.basis),
          ]),
    ],
  });
}
