import type { BodyBlock } from './message-body.ts';
import type { MessageFile, OfficeFacts, OwnerMessage, RecipientFacts } from './message-facts.ts';
import { oneLine } from './plain-words.ts';
import { renderHtml } from './render-html.ts';
import { renderText } from './render-text.ts';
import { wordsOf } from './words-of.ts';

/** What makes up a message, beside who it is for. */
export interface MessageParts {
  readonly recipient: RecipientFacts;
  readonly office: OfficeFacts;
  readonly subject: string;
  readonly blocks: readonly BodyBlock[];
  readonly files: readonly MessageFile[];
}

/** Puts greeting, address, call, cautions and reason around the blocks and renders both parts of the message. */
export function ownerMessage(parts: MessageParts): OwnerMessage {
  const { recipient, office } = parts;
  const words = wordsOf(recipient.language);
  const subject = oneLine(parts.subject);
  const address = recipient.postalAddress?.split(/\r?\n/).map(oneLine).filter(Boolean).join(', ');
  const blocks: BodyBlock[] = [
    ...(address ? [{ kind: 'paragraph', text: `${oneLine(recipient.name)}, ${address}` } as const] : []),
    ...parts.blocks,
    { kind: 'heading', text: words.headings.call },
    { kind: 'paragraph', text: `${words.call(office, recipient.postalAddress === null)} ${words.quote}` },
    { kind: 'heading', text: words.headings.cautions },
    { kind: 'list', items: words.cautions },
    { kind: 'small', text: words.why(office) },
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
