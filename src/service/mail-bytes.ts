import type { DateTime } from 'luxon';
import MailComposer from 'nodemailer/lib/mail-composer';
import type { MessageFile, OwnerMessage } from '../notify/message-facts.ts';
import { oneLine } from '../notify/plain-words.ts';
import type { Invitation } from './calendar-text.ts';
import { sha256 } from './canonical-json.ts';
import { listHeaders, type MailList } from './list-headers.ts';
import { mailPicturePng } from './picture-png.ts';
import { zipFile } from './zip-file.ts';

const amongOf = ({ pictures }: OwnerMessage): 'alone' | 'several' => (pictures.length > 1 ? 'several' : 'alone');

/** A file longer than this goes into an archive, so that the mail stays small [characters]. */
const LONGEST_PLAIN_FILE = 20_000;

const attachedFile = (file: MessageFile) =>
  file.text.length > LONGEST_PLAIN_FILE
    ? { filename: `${file.name}.zip`, content: zipFile(file.name, file.text), contentType: 'application/zip' }
    : { filename: file.name, content: Buffer.from(file.text, 'utf8'), contentType: file.contentType };

/** Everything that a mail's bytes depend on. */
export interface MailToBuild {
  readonly message: OwnerMessage;
  /** With its angle brackets. */
  readonly messageId: string;
  readonly at: DateTime;
  readonly from: string;
  readonly to: { readonly name: string; readonly address: string };
  /** Name that a mail comes from and address that an answer goes to. */
  readonly office: { readonly name: string; readonly email: string };
  /** The entry for the owner's calendar; null where there is none. */
  readonly invitation: Invitation | null;
  /** How the reader stops the list; left out where only by a written word to the office. */
  readonly list?: Pick<MailList, 'unsubscribeUrl' | 'oneClick'>;
}

/**
 * Builds the RFC 5322 bytes of a mail: plain text, HTML with its pictures inline, and files. The same input gives the same
 * bytes. Names and subject are put on one line first, so that nothing a person typed can add a header.
 */
export async function mailBytes(mail: MailToBuild): Promise<Buffer> {
  const { message, office } = mail;
  const composer = new MailComposer({
    from: { name: oneLine(office.name), address: mail.from },
    to: { name: oneLine(mail.to.name), address: mail.to.address },
    replyTo: office.email,
    subject: oneLine(message.subject),
    date: mail.at.toJSDate(),
    messageId: mail.messageId,
    headers: {
      ...listHeaders({ officeEmail: office.email, unsubscribeUrl: null, oneClick: false, ...mail.list }),
      'Auto-Submitted': 'auto-generated',
    },
    text: message.text,
    html: message.html,
    ...(mail.invitation === null
      ? {}
      : {
          icalEvent: {
            method: mail.invitation.method,
            filename: mail.invitation.method === 'CANCEL' ? 'cancel.ics' : 'invite.ics',
            content: mail.invitation.text,
          },
        }),
    attachments: [
      ...message.pictures.map((picture) => ({
        filename: `${picture.cid.split('@')[0] ?? 'picture'}.png`,
        cid: picture.cid,
        content: mailPicturePng(picture.svg, picture.widthPx, amongOf(message)),
        contentType: 'image/png',
        contentDisposition: 'inline',
      })),
      ...message.files.map(attachedFile),
    ],
    baseBoundary: sha256(mail.messageId).slice(0, 24),
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  const built = await composer.compile().build();
  // text parts come with the line ends of their text; a mail's line ends are CRLF throughout (RFC 5322, 2.3)
  return Buffer.from(built.toString('latin1').replace(/\r?\n/g, '\r\n'), 'latin1');
}

/** The HTML of a letter to print: the message with its pictures inside. */
export function letterBytes(message: OwnerMessage): Buffer {
  const html = message.pictures.reduce(
    (text, picture) =>
      text.replaceAll(
        `src="cid:${picture.cid}"`,
        `src="data:image/png;base64,${mailPicturePng(picture.svg, picture.widthPx, amongOf(message)).toString('base64')}"`,
      ),
    message.html,
  );
  return Buffer.from(html, 'utf8');
}
