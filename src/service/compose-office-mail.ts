import { DateTime } from 'luxon';
import { type OfficeNews, officeMessage } from '../notify/office-message.ts';
import { officeName } from '../notify/office-name.ts';
import type { Register } from '../register/database.ts';
import { listHeldNotices } from '../register/held-notices.ts';
import { NoticeAlreadyWritten } from '../register/notice-store.ts';
import { listOfficeNotices } from '../register/office-notices.ts';
import { forgetOfficeTold, loadOfficeTold, postOfficeMail } from '../register/office-told.ts';
import { listOutbox } from '../register/outbox.ts';
import { listSweepFailures, newestSweep } from '../register/sweep-store.ts';
import { sha256 } from './canonical-json.ts';
import { type Clock, dayInZone, isoUtc } from './clock.ts';
import { mailBytes } from './mail-bytes.ts';
import { signedBytes } from './mail-signature.ts';
import type { Sender } from './owner-messages.ts';

/** A register counts as not swept where no sweep has ended for so long [h]. */
const UNSWEPT_HOURS = 48;
const EVERYTHING = Number.MAX_SAFE_INTEGER;

/** Something that is open for the office, and the name under which it is told once. */
interface OpenItem extends OfficeNews {
  readonly what: string;
}

async function unswept(register: Register, now: Clock): Promise<readonly OpenItem[]> {
  const [any, finished] = [await newestSweep(register), await newestSweep(register, 'finished')];
  const since = finished?.finishedAt ?? any?.startedAt ?? null;
  if (since === null || now().diff(DateTime.fromISO(since)).as('hours') < UNSWEPT_HOURS) return [];
  const line = finished
    ? `the last sweep ended on ${since.slice(0, 10)}`
    : `no sweep has ended since ${since.slice(0, 10)}`;
  return [{ matter: 'not swept', what: `not swept since ${since}`, line }];
}

/** Everything that is open for the office now. */
async function openItems(register: Register, now: Clock): Promise<readonly OpenItem[]> {
  const finished = await newestSweep(register, 'finished');
  const failures = finished ? await listSweepFailures(register, finished.id) : [];
  const parked = await listOutbox(register, { state: 'parked', limit: EVERYTHING });
  const items: OpenItem[] = [];
  for (const { id, matter, fenceRef, siteName, occasion } of await listOfficeNotices(register)) {
    if (matter !== 'dangerous' && matter !== 'readings disagree') continue;
    const line = `No. ${id}: fence ${fenceRef} at ${siteName}, ${occasion.replace(/; told .*$/, '')}`;
    items.push({ matter, what: `notice ${id}`, line });
  }
  for (const { ref, message } of failures)
    items.push({ matter: 'fence not forecast', what: `fence ${ref}`, line: `${ref}: ${message}` });
  for (const { id, subject, envelopeTo, lastReply } of parked)
    items.push({
      matter: 'message refused',
      what: `message ${id}`,
      line: `No. ${id} to ${envelopeTo ?? 'nobody'}, "${subject}": ${lastReply ?? 'no reply'}`,
    });
  for (const { id, matter, fenceRef, siteName, ownerName } of await listHeldNotices(register))
    items.push({
      matter: 'notices held',
      what: `held ${id}`,
      line: `No. ${id}, ${matter}: fence ${fenceRef} at ${siteName}, to ${ownerName}`,
    });
  return [...items, ...(await unswept(register, now))];
}

/**
 * Writes the daily mail to the office where something is open that no such mail has named, at most one a day of the register's zone. None is
 * written where the office has not said who it is. Returns how many things it names as new; 0 where there is no mail.
 */
export async function composeOfficeMail(
  register: Register,
  { now, sender }: { readonly now: Clock; readonly sender: Sender },
): Promise<number> {
  if (sender.gap !== null) return 0;
  const today = dayInZone(now(), sender.timeZone);
  const told = await loadOfficeTold(register);
  const open = await openItems(register, now);
  const still = new Set(open.map(({ what }) => what));
  await forgetOfficeTold(
    register,
    [...told.what].filter((what) => !still.has(what)),
  );
  if (told.lastAt !== null && dayInZone(DateTime.fromISO(told.lastAt), sender.timeZone) >= today) return 0;
  const news = open.filter(({ what }) => !told.what.has(what));
  if (news.length === 0) return 0;
  const { office, from } = sender;
  const message = officeMessage({ news, openBefore: open.length - news.length, office });
  const named = news.map(({ what }) => what);
  const messageId = `<${sha256(JSON.stringify(['office', today, named])).slice(0, 40)}@${from.split('@')[1] ?? 'localhost'}>`;
  const name = officeName(office, 'en');
  const written = await mailBytes({
    message,
    messageId,
    at: now(),
    from,
    to: { name, address: office.email },
    office: { name, email: office.email },
    invitation: null,
  });
  const raw = sender.dkim ? await signedBytes(written, sender.dkim) : written;
  try {
    await postOfficeMail(
      register,
      {
        messageId,
        ownerRef: null,
        channel: 'mail',
        envelopeFrom: from,
        envelopeTo: office.email,
        subject: message.subject,
        raw,
        sha256: sha256(raw),
        noticeIds: [],
      },
      { named, at: isoUtc(now()) },
    );
  } catch (error) {
    if (error instanceof NoticeAlreadyWritten) return 0;
    throw error;
  }
  return news.length;
}
