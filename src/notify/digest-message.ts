import { onceInWords } from '../drawing/quantity-text.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import { sumRanges } from '../season/money/budget-range.ts';
import { digestCsv } from './digest-csv.ts';
import type { FenceNews } from './fence-news.ts';
import { fenceNews } from './fence-news.ts';
import { fencePicture } from './fence-picture.ts';
import type { Matter } from './matter-rules.ts';
import { MATTERS } from './matter-rules.ts';
import type { BodyBlock } from './message-body.ts';
import type { NoticedFence, OfficeFacts, OwnerMessage, RecipientFacts } from './message-facts.ts';
import type { MessageWords } from './message-words.ts';
import { amountInWords, rangeInWords } from './money-words.ts';
import { officeName } from './office-name.ts';
import { ownerMessage } from './owner-message.ts';
import { oneLine } from './plain-words.ts';
import { wordsOf } from './words-of.ts';
import { offeredFor } from './works-offer.ts';

/** How many fences of a digest are drawn. */
const DRAWN = 3;
/** How many rows of a digest's tables are written out, the weakest fences; the attached file has all. */
const ROWS_SHOWN = 30;
/** How many fences a sentence names, and how many sentences of one kind there are. */
const NAMED = 12;

interface Told {
  readonly fence: NoticedFence;
  readonly news: FenceNews;
}

function tableRow(news: FenceNews, words: MessageWords, language: RecipientFacts['language']): readonly string[] {
  return [
    news.ref,
    words.standing[news.standing],
    news.holds,
    news.shouldHold,
    news.standing === 'short from new'
      ? words.digest.sinceBuilt
      : news.standing === 'short'
        ? words.digest.now
        : (news.shortSeason ?? words.digest.notShort),
    news.onceInYears === null ? words.digest.noCurve : onceInWords(news.onceInYears, language),
    news.matters.map((matter) => words.matter.inShort[matter]).join(', '),
  ];
}

/** One table a site, in the order of the sites' names. */
function siteTables(
  told: readonly Told[],
  words: MessageWords,
  language: RecipientFacts['language'],
): readonly BodyBlock[] {
  const bySite = new Map<string, FenceNews[]>();
  for (const { news } of told) bySite.set(news.site, [...(bySite.get(news.site) ?? []), news]);
  return [...bySite.entries()]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([site, fences]) => ({
      kind: 'table',
      caption: `${site}, ${fences[0]?.place ?? ''}`,
      columns: words.digest.columns,
      rows: fences.map((news) => tableRow(news, words, language)),
    }));
}

/** Refs of fences in one line; past a dozen only how many more there are. */
const named = (refs: readonly string[], words: MessageWords): string =>
  refs.length <= NAMED
    ? refs.join(', ')
    : `${refs.slice(0, NAMED).join(', ')}${words.digest.moreFences(refs.length - NAMED)}`;

/** What the least of the works that are suggested come to over all fences: the answer; then what waiting a season costs on the average. */
function total(told: readonly Told[], words: MessageWords, language: RecipientFacts['language']): readonly string[] {
  const least = told.flatMap(({ news }) => {
    const [first] = offeredFor(news.offer, news.matters);
    return first ? [{ cost: first.cost, offer: news.offer }] : [];
  });
  const [one] = least;
  if (!one?.offer) return [];
  const { currency } = one.offer;
  const extra = least.reduce(
    (sum, { offer }) => sum + (offer?.waiting ? offer.waiting.chance * offer.waiting.extra : 0),
    0,
  );
  const range = rangeInWords(sumRanges(least.map(({ cost }) => cost)), currency, language);
  return [
    words.digest.total(least.length, range),
    ...(extra > 0 ? [words.digest.waiting(amountInWords(extra, currency, language))] : []),
    words.budget,
  ];
}

/** The suggestions of a digest: one a matter, with the fences it is for. */
function suggestions(told: readonly Told[], words: MessageWords): readonly string[] {
  const of = (matter: Matter): readonly FenceNews[] =>
    told.filter(({ news }) => news.matters[0] === matter).map(({ news }) => news);
  return MATTERS.filter((matter) => matter !== 'better' && matter !== 'works done').flatMap((matter) => {
    const byAdvice = new Map<string, string[]>();
    for (const news of of(matter)) {
      const advice = words.matter.suggestion[matter](words.by(news), news.strengthFell);
      byAdvice.set(advice, [...(byAdvice.get(advice) ?? []), news.ref]);
    }
    return [...byAdvice].map(([advice, refs]) => `${named(refs, words)}: ${advice}`);
  });
}

/** Where the design gusts come from: one line a site and gust, the sites by name. */
function designGusts(told: readonly Told[], words: MessageWords): readonly string[] {
  const lines = [...new Set(told.map(({ news }) => `${news.site}: ${words.designGust(news)}`))].sort();
  return lines.length <= NAMED ? lines : [...lines.slice(0, NAMED), words.digest.more(lines.length - NAMED)];
}

/**
 * The message about many fences of one owner: the answer, a table a site, the weakest drawn, what to do, and the same
 * table as a file. Fences come weakest first within it.
 */
export function digestMessage(input: {
  readonly fences: readonly NoticedFence[];
  readonly recipient: RecipientFacts;
  readonly office: OfficeFacts;
}): OwnerMessage {
  const { recipient, office } = input;
  const { language } = recipient;
  const words = wordsOf(language);
  const told = input.fences
    .map((fence) => ({ fence, news: fenceNews(fence, language) }))
    .sort((a, b) => a.news.share - b.news.share || (a.news.ref < b.news.ref ? -1 : 1));
  const worst = told[0];
  if (!worst) throw new Error('a digest has no fences');
  const counts: Record<FenceStanding, number> = { clear: 0, closing: 0, short: 0, 'short from new': 0 };
  for (const { news } of told) counts[news.standing] += 1;
  const drawn = told.slice(0, DRAWN);
  const ground = drawn.flatMap(({ news }) => {
    const at = words.leanAt(news);
    return at === null ? [] : [`${news.ref}: ${at}`];
  });
  const paragraph = (text: string): BodyBlock => ({ kind: 'paragraph', text });
  const heading = (text: string): BodyBlock => ({ kind: 'heading', text });
  const advice = suggestions(told, words);
  const costs = total(told, words, language);
  const dangerous = told.map(({ news }) => news).filter(({ isDangerous }) => isDangerous);
  return ownerMessage({
    recipient,
    office,
    subject: words.digest.subject(told.length, counts.short + counts['short from new']),
    fenceRef: null,
    files: [
      {
        name: 'fences.csv',
        contentType: 'text/csv; charset=utf-8',
        text: digestCsv(told.map(({ fence }) => fence)),
      },
    ],
    blocks: [
      {
        kind: 'answer',
        title: officeName(office, language),
        lines: [
          ...(dangerous.length > 0 ? [words.digest.danger(dangerous.slice(0, NAMED), dangerous.length)] : []),
          ...words.digest.answer(told.length, counts, worst.news),
          ...costs.slice(0, 1),
        ],
      },
      { kind: 'paragraph', text: words.greeting(oneLine(recipient.name)) },
      { kind: 'paragraph', text: recipient.covering ?? words.covering(told.length) },
      heading(words.headings.table),
      ...siteTables(told.slice(0, ROWS_SHOWN), words, language),
      ...(told.length > ROWS_SHOWN ? [paragraph(words.digest.more(told.length - ROWS_SHOWN))] : []),
      paragraph(words.digest.csv),
      heading(words.headings.worst),
      ...drawn.flatMap(({ fence, news }, index): readonly BodyBlock[] => [
        { kind: 'paragraph', text: `${words.about(news)}. ${words.answer(news).join(' ')}` },
        { kind: 'picture', picture: fencePicture(fence, news, language, index + 1) },
        ...words.nothingDone(news).map(paragraph),
      ]),
      ...(advice.length > 0 ? [heading(words.headings.suggestion), { kind: 'list', items: advice } as const] : []),
      ...(costs.length > 0 ? [heading(words.headings.cost), ...costs.slice(1).map(paragraph)] : []),
      heading(words.headings.sureness),
      ...drawn.map(({ news }) => paragraph(`${news.ref}: ${words.sureness(news).join(' ')}`)),
      ...(ground.length > 0
        ? [heading(words.headings.ground), ...ground.map(paragraph), paragraph(words.leanMeans)]
        : []),
      heading(words.headings.basis),
      paragraph(words.basis),
      ...designGusts(told, words).map(paragraph),
    ],
  });
}
