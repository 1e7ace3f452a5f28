import type { FenceNews } from './fence-news.ts';
import { fenceNews } from './fence-news.ts';
import { fencePicture } from './fence-picture.ts';
import type { Matter } from './matter-rules.ts';
import { isShort } from './matters.ts';
import type { BodyBlock } from './message-body.ts';
import type { NoticedFence, OfficeFacts, OwnerMessage, RecipientFacts } from './message-facts.ts';
import { amountInWords, rangeInWords } from './money-words.ts';
import { ownerMessage } from './owner-message.ts';
import { oneLine } from './plain-words.ts';
import { wordsOf } from './words-of.ts';
import { type OfferedWorks, offeredFor } from './works-offer.ts';

const paragraphs = (texts: readonly (string | null)[]): readonly BodyBlock[] =>
  texts.flatMap((text) => (text ? [{ kind: 'paragraph', text } as const] : []));

/** The matters that something is suggested for; none where all is well. What works did not mend is suggested by its standing. */
export function advisedMatters({ matters, standing, endsStanding, isDangerous }: FenceNews): readonly Matter[] {
  // it is told only where nothing else is wrong
  if (matters[0] === 'better') return [];
  const toldNow = matters.filter((matter) => matter !== 'better' && matter !== 'works done');
  const afterWorks: readonly Matter[] = matters.includes('works done') && standing !== 'clear' ? [standing] : [];
  const all: readonly Matter[] = [
    ...(isDangerous ? (['dangerous'] as const) : []),
    ...(toldNow.some((matter) => matter !== 'dangerous') ? toldNow : [...toldNow, ...afterWorks]),
    ...(isShort(endsStanding) ? (['ends short'] as const) : []),
  ];
  return [...new Set(all)];
}

/** The message about one fence; several matters of one sweep are told in one. Its first lines are the answer. */
export function fenceMessage(input: {
  readonly fence: NoticedFence;
  readonly recipient: RecipientFacts;
  readonly office: OfficeFacts;
}): OwnerMessage {
  const { fence, recipient, office } = input;
  const words = wordsOf(recipient.language);
  const news = fenceNews(fence, recipient.language);
  const [weightiest] = news.matters;
  if (!weightiest) throw new Error(`a message about ${news.ref} has no matter`);
  const ends = words.ends(news);
  const { headings } = words;
  const heading = (text: string): BodyBlock => ({ kind: 'heading', text });
  const advised = advisedMatters(news);
  // keeping away is for now; the first works after it have a day
  const dated = advised.findIndex((matter) => matter !== 'dangerous');
  const nothingToDo = advised.length === 0;
  const danger = words.danger(news);
  const offered = offeredFor(news.offer, advised);
  const { currency = '' } = news.offer ?? {};
  const rangeOf = ({ cost }: OfferedWorks): string => rangeInWords(cost, currency, recipient.language);
  const ground = words.leanAt(news);
  const wayOut =
    offered.length === 0
      ? []
      : [
          words.wayOut(
            words.by(news),
            offered.map((each) => ({ kind: each.kind, range: rangeOf(each) })),
          ),
        ];
  const extra = news.offer?.waiting?.extra;
  const waiting = extra === undefined ? [] : [words.waiting(amountInWords(extra, currency, recipient.language))];
  const advice: readonly BodyBlock[] = nothingToDo
    ? paragraphs([words.matter.suggestion.better('', false)])
    : [
        heading(headings.suggestion),
        ...paragraphs(
          advised.map((matter, index) =>
            words.matter.suggestion[matter](index === dated ? words.by(news) : words.sameTime, news.strengthFell),
          ),
        ),
        ...(offered.length === 0
          ? []
          : [
              heading(headings.cost),
              { kind: 'list', items: offered.map((each) => words.offered(each, rangeOf(each))) } as const,
              ...paragraphs([words.budget]),
            ]),
        heading(headings.nothingDone),
        ...paragraphs([...words.nothingDone(news), ...waiting]),
      ];
  return ownerMessage({
    recipient,
    office,
    subject: words.matter.subject[weightiest](news),
    fenceRef: news.ref,
    files: [],
    blocks: [
      {
        kind: 'answer',
        title: words.about(news),
        lines: [...(danger ? [danger] : []), ...words.answer(news), ...wayOut],
      },
      { kind: 'paragraph', text: words.greeting(oneLine(recipient.name)) },
      { kind: 'paragraph', text: recipient.covering ?? words.covering(1) },
      heading(headings.changed),
      ...paragraphs([...news.matters.map((matter) => words.matter.changed[matter](news)), ends]),
      { kind: 'picture', picture: fencePicture(fence, news, recipient.language, 1) },
      ...advice,
      heading(headings.sureness),
      ...paragraphs(words.sureness(news)),
      ...(ground ? [heading(headings.ground), ...paragraphs([`${ground} ${words.leanMeans}`])] : []),
      heading(headings.basis),
      ...paragraphs([words.basis, words.designGust(news)]),
      ...(news.unknowns.length > 0
        ? paragraphs([words.unknowns(news.unknowns.map((input) => words.unknown[input]))])
        : []),
    ],
  });
}
