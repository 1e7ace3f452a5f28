import { DateTime } from 'luxon';
import { dayInWords } from '../../notify/plain-words.ts';
import type { VisitWay } from '../../register/answer-tables.ts';
import { noteLinkVisit } from '../../register/link-visit-store.ts';
import type { OwnerLink } from '../../register/owner-link-store.ts';
import type { OwnerRecord } from '../../register/owner-record.ts';
import { readRecord } from '../../register/record-store.ts';
import { readSettings } from '../../register/settings-store.ts';
import { dayInZone, isoUtc } from '../../service/clock.ts';
import { ownerPath } from '../../service/owner-links.ts';
import type { AppParts } from '../../service/service.ts';
import { formToken } from '../access/form-token.ts';
import type { PageContext } from '../access/visitor.ts';
import { frameFor, type PageFrame } from '../frame/page-frame.ts';

/** What a page says of a form that was just sent. */
const SAID = ['noted', 'already'] as const;
type Said = (typeof SAID)[number];

/** What every page behind an owner's link needs. */
export interface OwnerView {
  readonly owner: OwnerRecord;
  readonly link: OwnerLink;
  /** Where this owner's pages lie. */
  readonly home: string;
  readonly frame: PageFrame;
  /** Ties the page's forms to the browser. */
  readonly formToken: string;
  /** What came of the form that led here; null where none did. */
  readonly said: Said | null;
  /** The day of a stored moment, in words, in the register's zone. */
  readonly dayOf: (moment: string) => string;
}

const wayOf = (context: PageContext): VisitWay => {
  const { method } = context.req;
  return method === 'HEAD' ? 'head' : method === 'POST' ? 'post' : 'get';
};

/**
 * Whose link it is, the visit counted under the page's name. The authorization lets nobody else here. Null where the owner is not in
 * the register any more.
 */
export async function ownerView(
  context: PageContext,
  { register, clock }: Pick<AppParts, 'register' | 'clock'>,
  page: string,
): Promise<OwnerView | null> {
  const visitor = context.get('visitor');
  if (visitor.kind !== 'owner') throw new Error('a page of an owner was asked for without a link');
  const { link } = visitor;
  await noteLinkVisit(register.db, { linkId: link.id, page, way: wayOf(context) }, isoUtc(clock()));
  const owner = await readRecord(register.db, 'owners', link.ownerRef);
  if (!owner) return null;
  const { timeZone } = await readSettings(register.db);
  const said = SAID.find((each) => each === context.req.query('said')) ?? null;
  return {
    owner,
    link,
    home: ownerPath(context.req.param('token') ?? ''),
    frame: frameFor(context),
    formToken: formToken(context),
    said,
    dayOf: (moment) => dayInWords(dayInZone(DateTime.fromISO(moment), timeZone), owner.language),
  };
}
