import { cautionsIn } from '../drawing/cautions.ts';
import { listed } from './fence-phrases-en.ts';
import type { OfficeMailMatter, OfficeMatter } from './matter-rules.ts';
import type { BodyBlock } from './message-body.ts';
import type { OfficeFacts, OwnerMessage } from './message-facts.ts';
import { officeName } from './office-name.ts';
import { renderHtml } from './render-html.ts';
import { renderText } from './render-text.ts';

/** Most lines of one matter that a mail writes out; pages and commands show all. */
const LINES_SHOWN = 25;

/** One thing that the office is told in its daily mail. */
export interface OfficeNews {
  readonly matter: OfficeMatter | OfficeMailMatter;
  /** What it is, as one line: the fence, the message, the day. */
  readonly line: string;
}

interface Heading {
  readonly matter: OfficeNews['matter'];
  readonly title: string;
  readonly one: string;
  readonly many: string;
  /** What to do about it. */
  readonly wayOut: string;
}

/** The weightiest first. */
const HEADINGS: readonly Heading[] = [
  {
    matter: 'dangerous',
    title: 'Dangerous',
    one: 'fence with posts broken, leaning or closed off',
    many: 'fences with posts broken, leaning or closed off',
    wayOut:
      'Their owners are told, unless it waits below. When one is dealt with: stormpale mail office --settle NUMBER.',
  },
  {
    matter: 'not swept',
    title: 'Not swept',
    one: 'register that was not swept to its end',
    many: 'registers that were not swept to their end',
    wayOut: 'No forecast is newer and no owner hears of anything. See the log of the service, or run stormpale sweep.',
  },
  {
    matter: 'message refused',
    title: 'Messages refused for good',
    one: 'message refused for good',
    many: 'messages refused for good',
    wayOut: 'Their owners do not know. Correct the address and write again, or call: stormpale mail parked.',
  },
  {
    matter: 'fence not forecast',
    title: 'Fences without a new forecast',
    one: 'fence that could not be forecast',
    many: 'fences that could not be forecast',
    wayOut: 'They keep their last forecast. Correct what is named and sweep again.',
  },
  {
    matter: 'readings disagree',
    title: 'Readings that disagree',
    one: 'fence whose readings disagree with what was expected',
    many: 'fences whose readings disagree with what was expected',
    wayOut:
      'Treatment class, install date or a reading may be wrong. Owners are not told; when one is checked: stormpale mail office --settle NUMBER.',
  },
  {
    matter: 'notices held',
    title: 'Held until you release them',
    one: 'notice that waits for you',
    many: 'notices that wait for you',
    wayOut: 'See them with stormpale mail held, and send them with stormpale mail release.',
  },
];

/**
 * The daily mail to the office: what is new since the last one, matter by matter, and how much more is open. Throws where nothing is
 * new: then there is no mail.
 * @param openBefore how many things are still open that an earlier mail named
 */
export function officeMessage(input: {
  readonly news: readonly OfficeNews[];
  readonly openBefore: number;
  readonly office: OfficeFacts;
}): OwnerMessage {
  const { news, openBefore, office } = input;
  if (news.length === 0) throw new Error('the office is mailed only where something is new');
  const groups = HEADINGS.flatMap((heading) => {
    const lines = news.filter(({ matter }) => matter === heading.matter).map(({ line }) => line);
    return lines.length === 0 ? [] : [{ ...heading, lines }];
  });
  const counts = groups.map(({ lines, one, many }) => `${lines.length} ${lines.length === 1 ? one : many}`);
  const subject = `New for the office: ${news.length} ${news.length === 1 ? 'thing' : 'things'}, ${groups.map(({ title }) => title.toLowerCase()).join('; ')}`;
  const blocks: readonly BodyBlock[] = [
    {
      kind: 'answer',
      title: officeName(office, 'en'),
      lines: [
        `New since the last such mail: ${listed(counts)}.`,
        openBefore === 0
          ? 'Nothing else is open.'
          : `${openBefore} more ${openBefore === 1 ? 'is' : 'are'} open from before: see the page of the outbox.`,
      ],
    },
    ...groups.flatMap(({ title, lines, wayOut }): readonly BodyBlock[] => [
      { kind: 'heading', text: title },
      { kind: 'list', items: lines.slice(0, LINES_SHOWN) },
      ...(lines.length > LINES_SHOWN
        ? [{ kind: 'paragraph', text: `And ${lines.length - LINES_SHOWN} more.` } as const]
        : []),
      { kind: 'paragraph', text: wayOut },
    ]),
    {
      kind: 'small',
      text: `${cautionsIn('en').brief} This mail comes at most once a day, and only where something is new.`,
    },
  ];
  const body = { language: 'en', title: subject, blocks } as const;
  return {
    subject,
    text: renderText(body),
    html: renderHtml(body, ({ cid }) => `cid:${cid}`),
    pictures: [],
    files: [],
  };
}
