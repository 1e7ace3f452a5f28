import { nearestName } from '../register/csv/nearest-name.ts';
import type { Register } from '../register/database.ts';
import { type FeedLink, type FeedSubject, listFeedLinks, revokeFeedLink } from '../register/feed-link-store.ts';
import { listRecords, readRecord } from '../register/record-store.ts';
import { isoUtc } from '../service/clock.ts';
import { newFeedLink } from '../service/feed-links.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';

/** Options of the `feed` commands. */
export interface FeedOptions extends GlobalOptions {
  readonly json?: boolean;
}

async function refuseUnknown({ db }: Register, { kind, ref }: FeedSubject): Promise<void> {
  const records = kind === 'crew' ? 'crews' : 'sites';
  if (await readRecord(db, records, ref)) return;
  const refs: readonly string[] = (await listRecords(db, records)).map((record) => record.ref);
  const nearest = nearestName(ref, refs);
  throw new CliError(
    EXIT.notFound,
    `no ${kind} ${JSON.stringify(ref)} in the register${nearest === null ? '' : `; did you mean ${nearest}?`}`,
    `refs are compared letter by letter; "stormpale export ${records}" lists them, --data names another register`,
  );
}

/** Makes a secret link to the calendar of a crew or a site, and shows it this once. */
export async function runFeedNew(context: CliContext, subject: FeedSubject, options: FeedOptions): Promise<void> {
  const { terminal, clock } = context;
  const config = configOf(context, options);
  const { link, url } = await withExistingRegister(config, async (register) => {
    await refuseUnknown(register, subject);
    return newFeedLink(register.db, subject, { publicUrl: config.publicUrl, now: clock });
  });
  if (options.json) {
    terminal.out(jsonText({ ...link, url }));
    return;
  }
  terminal.out(`${url}\n`);
  terminal.err(
    [
      `Calendar of ${subject.kind} ${subject.ref}, link ${link.id}. Add it to a calendar as a subscription, not as an import.`,
      'Whoever has the link can read it. It is shown this once: the register keeps only its digest.',
      `To end it: stormpale feed revoke ${link.id}`,
      ...(new URL(url).hostname === '127.0.0.1'
        ? ['It opens on this machine only: set STORMPALE_PUBLIC_URL to the address under which others reach the pages.']
        : []),
      '',
    ].join('\n'),
  );
}

const shownDay = (moment: string | null): string => (moment === null ? '' : moment.slice(0, 16).replace('T', ' '));

const linkRow = ({ id, kind, ref, createdAt, revokedAt }: FeedLink): readonly string[] => [
  String(id),
  kind,
  ref,
  shownDay(createdAt),
  revokedAt === null ? 'answers' : `revoked ${shownDay(revokedAt)}`,
];

/** Lists the links that were made, without their secrets. */
export async function runFeedList(context: CliContext, options: FeedOptions): Promise<void> {
  const links = await withExistingRegister(configOf(context, options), ({ db }) => listFeedLinks(db));
  const { terminal } = context;
  if (options.json) terminal.out(jsonText(links));
  else if (links.length === 0) {
    terminal.out('No calendar links were made. "stormpale feed new crew REF" makes one.\n');
  } else terminal.out(plainTable(['Link', 'Of', 'Ref', 'Made (UTC)', 'State'], links.map(linkRow), [0]));
}

/** Ends a link for good. */
export async function runFeedRevoke(context: CliContext, id: number, options: FeedOptions): Promise<void> {
  const { terminal, clock } = context;
  const now = isoUtc(clock());
  const link = await withExistingRegister(configOf(context, options), ({ db }) => revokeFeedLink(db, id, now));
  if (!link) {
    throw new CliError(EXIT.notFound, `no calendar link ${id}`, '"stormpale feed list" shows those there are');
  }
  if (options.json) terminal.out(jsonText(link));
  else if (link.revokedAt === now) {
    terminal.out(`Link ${id} to the calendar of ${link.kind} ${link.ref} is revoked and never answers again.\n`);
  } else terminal.out(`Link ${id} was revoked before, ${shownDay(link.revokedAt)} UTC.\n`);
}
