import { cautionsIn } from '../drawing/cautions.ts';
import type { BodyBlock } from './message-body.ts';
import type { MessageFile, OfficeFacts, OwnerMessage, RecipientFacts } from './message-facts.ts';
import { linksBlock, linksHeading } from './message-links.ts';
import { officeName } from './office-name.ts';
import { dayInWords, oneLine } from './plain-words.ts';
import { renderHtml } from './render-html.ts';
import { renderText } from './render-text.ts';
import { wordsOf } from './words-of.ts';

/** What makes up a message, beside who it is for. */
export interface MessageParts {
  readonly recipient: RecipientFacts;
  readonly office: OfficeFacts;
  readonly subject: string;
  /** The one fence that it is about; null where there are several. */
  readonly fenceRef: string | null;
  readonly blocks: readonly BodyBlock[];
  readonly files: readonly MessageFile[];
}

/** Puts greeting, address, call, cautions and reason around the blocks and renders both parts of the message. */
export function ownerMessage(parts: MessageParts): OwnerMessage {
  const { recipient } = parts;
  const words = wordsOf(recipient.language);
  const subject = oneLine(parts.subject);
  const { letter, language } = recipient;
  const inOneLine = (address: string | null): string | null =>
    address?.split(/\r?\n/).map(oneLine).filter(Boolean).join(', ') || null;
  const office = { ...parts.office, postalAddress: inOneLine(parts.office.postalAddress) };
  const lines = letter
    ? [
        [officeName(office, language), office.postalAddress, office.phone, office.email].filter(Boolean).join(', '),
        dayInWords(letter.day, language),
        [oneLine(recipient.name), inOneLine(letter.postalAddress)].filter(Boolean).join(', '),
      ]
    : [];
  const blocks: BodyBlock[] = [
    ...lines.map((text) => ({ kind: 'paragraph', text }) as const),
    ...parts.blocks,
    ...(recipient.links
      ? [
          { kind: 'heading', text: linksHeading(language) } as const,
          linksBlock(recipient.links, parts.fenceRef, language),
        ]
      : []),
    { kind: 'heading', text: words.headings.call },
    { kind: 'paragraph', text: `${words.call(office, letter === null)} ${words.quote}` },
    { kind: 'heading', text: words.headings.cautions },
    { kind: 'list', items: cautionsIn(language).all },
    { kind: 'small', text: words.why(office, letter === null) },
  ];
  const body = { language: recipient.language, title: subject, blocks };
  return {
    subject,
    text: renderText(body),
    html: renderHtml(body, (picture) => `cid:${picture.cid}`),
    pictures: blocks.flatMap((block) => (block.kind === 'picture' ? [block.picture] : [])),
    files: parts.files,
  };
}
