import { simpleParser } from 'mailparser';
import type { ReportAction } from '../register/delivery-tables.ts';

/** A delivery report (RFC 3464) in a mail (multipart/report, RFC 6522, before that RFC 3462), as far as it concerns one mail. */
export interface DeliveryReport {
  readonly action: ReportAction;
  /** Status code (RFC 3463), `5.1.1`. */
  readonly status: string;
  readonly recipient: string;
  readonly diagnostic: string;
  /** Addresses that the report came to, and that the returned mail went out under. */
  readonly returnAddresses: readonly string[];
  /** Message-ID of the returned mail with its angle brackets; null where its headers did not come back. */
  readonly messageId: string | null;
}

/** Thrown where a mail is no delivery report that could be acted on. */
export class NoDeliveryReport extends Error {
  constructor(reason: string) {
    super(reason);
    this.name = 'NoDeliveryReport';
  }
}

/** A report's reason in the server's words, with the status code where they do not hold it already. */
export const reasonIn = ({ status, diagnostic }: Pick<DeliveryReport, 'status' | 'diagnostic'>): string =>
  diagnostic.includes(status) ? diagnostic : `${status} ${diagnostic}`.trim();

type Fields = ReadonlyMap<string, string>;

const ACTIONS: readonly ReportAction[] = ['failed', 'delayed', 'delivered', 'relayed', 'expanded'];
const STATUS_PARTS: readonly string[] = ['message/delivery-status', 'message/global-delivery-status'];
const RETURNED_PARTS: readonly string[] = [
  'message/rfc822',
  'text/rfc822-headers',
  'message/global',
  'message/global-headers',
];
/** Headers in which mail servers keep the address that a mail came to. */
const ADDRESS_HEADERS: readonly string[] = ['to', 'delivered-to', 'x-original-to', 'envelope-to'];
/** Longest diagnostic that is kept [characters]. */
const LONGEST_DIAGNOSTIC = 500;

/** Fields of one group, unfolded (RFC 3464, 2.1.1), by name in lower case. */
function fieldsOf(group: string): Fields {
  const unfolded = group.replace(/\r?\n[ \t]+/g, ' ');
  const fields = unfolded.split(/\r?\n/).flatMap((line) => {
    const colon = line.indexOf(':');
    return colon < 1 ? [] : [[line.slice(0, colon).trim().toLowerCase(), line.slice(colon + 1).trim()] as const];
  });
  return new Map(fields);
}

/** What stands after the type, `rfc822; ann@example.net`, without comments in parentheses at the end. */
const typed = (value: string | undefined): string => (value ?? '').replace(/^[\w-]+\s*;\s*/, '').trim();

const statusOf = (fields: Fields): string =>
  /^[245]\.\d{1,3}\.\d{1,3}/.exec(fields.get('status')?.trim() ?? '')?.[0] ?? '';

const actionOf = (fields: Fields): ReportAction | undefined => {
  const word = /^[a-z]+/i.exec(fields.get('action')?.trim() ?? '')?.[0]?.toLowerCase();
  return ACTIONS.find((action) => action === word);
};

const addressesIn = (text: string): readonly string[] => text.match(/[^\s<>,;:"()]+@[^\s<>,;:"()]+/g) ?? [];

function headersOf(content: string): Fields {
  const end = /\r?\n\r?\n/.exec(content);
  return fieldsOf(end ? content.slice(0, end.index) : content);
}

/**
 * Reads a delivery report. Of several recipients the first that failed counts, else the first.
 * Throws `NoDeliveryReport` with the reason where it is none.
 */
export async function readDeliveryReport(raw: Uint8Array): Promise<DeliveryReport> {
  const options = { keepDeliveryStatus: true, skipHtmlToText: true, skipTextToHtml: true, skipImageLinks: true };
  const mail = await simpleParser(Buffer.from(raw), options).catch((error: unknown) => {
    throw new NoDeliveryReport(
      `it cannot be read as a mail (${error instanceof Error ? error.message : String(error)})`,
    );
  });
  const type = mail.headers.get('content-type') as { readonly value?: string } | undefined;
  if (type?.value?.toLowerCase() !== 'multipart/report') {
    throw new NoDeliveryReport('it is no delivery report (multipart/report)');
  }
  const part = (types: readonly string[]): string | null =>
    mail.attachments.find(({ contentType }) => types.includes(contentType.toLowerCase()))?.content.toString('utf8') ??
    null;
  const status = part(STATUS_PARTS);
  if (status === null) throw new NoDeliveryReport('it has no part that says what became of the mail (delivery-status)');
  const recipients = status
    .trim()
    .split(/\r?\n[ \t]*\r?\n/)
    .map(fieldsOf)
    .filter((fields) => fields.has('final-recipient') || fields.has('action'));
  const chosen = recipients.find((fields) => actionOf(fields) === 'failed') ?? recipients[0];
  const action = chosen && actionOf(chosen);
  if (!chosen || !action) throw new NoDeliveryReport('it names no recipient and action');
  const code = statusOf(chosen);
  if (code === '') throw new NoDeliveryReport('it names no status code of the form 5.1.1');
  const returned = headersOf(part(RETURNED_PARTS) ?? '');
  const own = mail.headerLines.filter(({ key }) => ADDRESS_HEADERS.includes(key)).map(({ line }) => line);
  return {
    action,
    status: code,
    recipient: typed(chosen.get('original-recipient') ?? chosen.get('final-recipient')),
    diagnostic: typed(chosen.get('diagnostic-code')).slice(0, LONGEST_DIAGNOSTIC),
    returnAddresses: [...own, returned.get('return-path') ?? ''].flatMap(addressesIn),
    messageId: /<[^<>\s]+>/.exec(returned.get('message-id') ?? '')?.[0] ?? null,
  };
}
