import { nearestName } from '../register/csv/nearest-name.ts';
import { listOwnerLinks, revokeOwnerLink } from '../register/owner-link-store.ts';
import { listRecords, readRecord } from '../register/record-store.ts';
import { isoUtc } from '../service/clock.ts';
import { newOwnerLink, OWNER_SCOPES, type OwnerScope } from '../service/owner-links.ts';
import { isLoopbackHost } from '../service/service-address.ts';
import type { CliContext, GlobalOptions } from './cli-context.ts';
import { configOf, withExistingRegister } from './cli-context.ts';
import { CliError } from './cli-error.ts';
import { answeringState } from './command-token.ts';
import { EXIT } from './exit-codes.ts';
import { plainTable } from './plain-table.ts';
import { jsonText } from './terminal.ts';

/** Options of the `owner-link` commands. */
export interface OwnerLinkOptions extends GlobalOptions {
  readonly json?: boolean;
}

/** Options of `owner-link new`. */
export interface OwnerLinkNewOptions extends OwnerLinkOptions {
  readonly may: readonly OwnerScope[];
  readonly days: number;
}

/** Makes a signed link to an owner's fences, and shows it this once. */
export async function runOwnerLinkNew(
  context: CliContext,
  ownerRef: string,
  options: OwnerLinkNewOptions,
): Promise<void> {
  const { terminal, clock } = context;
  const config = configOf(context, options);
  const { link, url } = await withExistingRegister(config, async ({ db }) => {
    if (!(await readRecord(db, 'owners', ownerRef))) {
      const nearest = nearestName(
        ownerRef,
        (await listRecords(db, 'owners')).map(({ ref }) => ref),
      );
      throw new CliError(
        EXIT.notFound,
        `no owner ${JSON.stringify(ownerRef)} in the register${nearest === null ? '' : `; did you mean ${nearest}?`}`,
        'refs are compared letter by letter; "stormpale export owners" lists them, --data names another register',
      );
    }
    const wanted = { ownerRef, scopes: options.may, days: options.days };
    return newOwnerLink(db, wanted, { publicUrl: config.publicUrl, now: clock });
  });
  if (options.json) {
    terminal.out(jsonText({ ...link, url }));
    return;
  }
  terminal.out(`${url}\n`);
  terminal.err(
    [
      `Link ${link.id} is for ${ownerRef} and their fences, and nobody else's, until ${link.expiresAt.slice(0, 10)}. It may: ${link.scopes.join(', ')}.`,
      'Whoever has the link can open it. It is shown this once.',
      `To end it: stormpale owner-link revoke ${link.id}`,
      ...(isLoopbackHost(new URL(url).hostname)
        ? ['It opens on this machine only: set STORMPALE_PUBLIC_URL to the address under which others reach the pages.']
        : []),
      '',
    ].join('\n'),
  );
}

/** Lists the links that were made, without their signatures. */
export async function runOwnerLinkList(context: CliContext, options: OwnerLinkOptions): Promise<void> {
  const links = await withExistingRegister(configOf(context, options), ({ db }) => listOwnerLinks(db));
  const { terminal } = context;
  const now = isoUtc(context.clock());
  if (options.json) terminal.out(jsonText(links));
  else if (links.length === 0) terminal.out('No owner links were made. "stormpale owner-link new OWNER" makes one.\n');
  else {
    const rows = links.map((link) => [
      String(link.id),
      link.ownerRef,
      link.scopes.length === OWNER_SCOPES.length ? 'everything' : link.scopes.join(', '),
      link.createdAt.slice(0, 10),
      answeringState(link, now),
    ]);
    terminal.out(plainTable(['Link', 'Owner', 'May', 'Made', 'State'], rows, [0]));
  }
}

/** Ends a link for good. */
export async function runOwnerLinkRevoke(context: CliContext, id: number, options: OwnerLinkOptions): Promise<void> {
  const now = isoUtc(context.clock());
  const link = await withExistingRegister(configOf(context, options), ({ db }) => revokeOwnerLink(db, id, now));
  if (!link)
    throw new CliError(EXIT.notFound, `no owner link ${id}`, '"stormpale owner-link list" shows those there are');
  if (options.json) context.terminal.out(jsonText(link));
  else context.terminal.out(`Link ${id} of ${link.ownerRef} is revoked and never answers again.\n`);
}
