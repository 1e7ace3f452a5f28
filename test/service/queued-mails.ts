import type { Register } from '../../src/register/database.ts';
import { postMessages } from '../../src/register/notice-store.ts';
import { sha256 } from '../../src/service/canonical-json.ts';

/** Puts plain mails 1, 2, … into the outbox, due at once. */
export async function queueMails(register: Register, count: number, at: string): Promise<readonly string[]> {
  const messages = Array.from({ length: count }, (_, index) => {
    const messageId = `<mail-${index + 1}@example.org>`;
    const raw = Buffer.from(
      `Message-ID: ${messageId}\r\nFrom: notices@example.org\r\nTo: ann@example.net\r\nSubject: ${index + 1}\r\n\r\n.A line that begins with a dot\r\nMail ${index + 1}\r\n`,
    );
    return {
      messageId,
      ownerRef: 'ANN',
      channel: 'mail' as const,
      envelopeFrom: 'notices@example.org',
      envelopeTo: `ann+${index + 1}@example.net`,
      subject: String(index + 1),
      raw,
      sha256: sha256(raw),
      noticeIds: [],
    };
  });
  await postMessages(register, messages, at);
  return messages.map((message) => message.messageId);
}
