import { simpleParser } from 'mailparser';

/** What an owner sees of a finished message: a mail's HTML part with its pictures inside, or the letter. */
export async function messageHtml({
  channel,
  raw,
}: {
  readonly channel: 'mail' | 'letter';
  readonly raw: Uint8Array;
}): Promise<string> {
  if (channel === 'letter') return new TextDecoder().decode(raw);
  const { html, textAsHtml } = await simpleParser(Buffer.from(raw));
  return html || (textAsHtml ?? '');
}
