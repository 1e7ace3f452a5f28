import { fenceNews } from './fence-news.ts';
import { fencePicture } from './fence-picture.ts';
import type { Matter } from './matters.ts';
import { isShort } from './matters.ts';
import type { BodyBlock } from './message-body.ts';
import type { NoticedFence, OfficeFacts, OwnerMessage, RecipientFacts } from './message-facts.ts';
import { ownerMessage } from './owner-message.ts';
import { oneLine } from './plain-words.ts';
import { wordsOf } from './words-of.ts';

const paragraphs = (texts: readonly (string | null)[]): readonly BodyBlock[] =>
  texts.flatMap((text) => (text ? [{ kind: 'paragraph', text } as const] : []));

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
  const shortEndsToo = ends !== null && isShort(news.endsStanding);
  const advised: readonly Matter[] = shortEndsToo ? [...news.matters, 'ends short'] : news.matters;
  const nothingToDo = weightiest === 'better';
  const advice: readonly BodyBlock[] = nothingToDo
    ? paragraphs([words.suggestion[weightiest]('', false)])
    : [
        heading(headings.suggestion),
        ...paragraphs(
          advised.map((matter, index) =>
            words.suggestion[matter](index === 0 ? words.by(news) : words.sameTime, news.strengthFell),
          ),
        ),
        heading(headings.nothingDone),
        ...paragraphs(words.nothingDone(news)),
      ];
  const ground = words.leanAt(news);
  return ownerMessage({
    recipient,
    office,
    subject: words.subject[weightiest](news),
    files: [],
    blocks: [
      { kind: 'answer', title: words.about(news), lines: words.answer(news) },
      { kind: 'paragraph', text: words.greeting(oneLine(recipient.name)) },
      heading(headings.changed),
      ...paragraphs([...news.matters.map((matter) => words.changed[matter](news)), ends]),
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
