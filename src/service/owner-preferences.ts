import { groupOf, MATTER_GROUPS, ORDINARY_GROUPS, toldByWishes } from '../notify/matter-groups.ts';
import type { Register } from '../register/database.ts';
import type { StoredNotice } from '../register/notice-store.ts';
import { cancelMessage } from '../register/outbox.ts';
import { addOwnerAnswer } from '../register/owner-answer-store.ts';
import type { OwnerLink } from '../register/owner-link-store.ts';
import {
  type OwnerPreferences,
  readOwnerPreferences,
  waitingMailsOf,
  writeOwnerPreferences,
} from '../register/owner-preference-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import { readRecord, upsertRecords } from '../register/record-store.ts';
import { canonicalJson } from './canonical-json.ts';
import { type Clock, isoUtc } from './clock.ts';

/** What an owner is written about where they never said anything: everything. */
export const EVERYTHING: OwnerPreferences = { muted: [], pausedUntil: null };

/** How often a pause may reach ahead at most [d]. */
export const LONGEST_PAUSE_DAYS = 366;

/** Parts notices by what their owner wants: told now, never told, told once the pause is over. */
export function sortByWishes(
  notices: readonly StoredNotice[],
  preferences: OwnerPreferences | null,
  today: string,
): { readonly wanted: readonly StoredNotice[]; readonly unwanted: readonly StoredNotice[] } {
  const told = (notice: StoredNotice) => toldByWishes(notice.matter, preferences, today);
  return {
    wanted: notices.filter((notice) => told(notice) === 'yes'),
    unwanted: notices.filter((notice) => told(notice) === 'no'),
  };
}

/** What an owner may change: everything but what is not named. */
export interface PreferenceChange {
  readonly language?: OwnerRecord['language'];
  readonly muted?: readonly string[];
  readonly pausedUntil?: string | null;
}

const inOrder = (muted: readonly string[]): readonly string[] => MATTER_GROUPS.filter((group) => muted.includes(group));

/** Takes mails that have not left out of the outbox where all that they tell is not wanted any more. */
async function cancelUnwanted(register: Register, ownerRef: string, muted: readonly string[]): Promise<void> {
  for (const { outboxId, matters } of await waitingMailsOf(register.db, ownerRef)) {
    const unwanted = matters.every((matter) => muted.includes(groupOf(matter) ?? ''));
    if (unwanted) await cancelMessage(register, outboxId);
  }
}

/**
 * Changes what the owner of a link is written about, and in which language; mails that wait and that are not wanted any more do
 * not leave. `unchanged` where all of it was so before: then nothing is noted.
 */
export const changePreferences = (
  register: Register,
  link: Pick<OwnerLink, 'id' | 'ownerRef'>,
  { change, kind }: { readonly change: PreferenceChange; readonly kind: 'preferences' | 'unsubscribed' },
  now: Clock,
): Promise<'changed' | 'unchanged'> =>
  register.db.transaction().execute(async (tx) => {
    const at = isoUtc(now());
    const owner = await readRecord(tx, 'owners', link.ownerRef);
    if (!owner) return 'unchanged';
    const before = (await readOwnerPreferences(tx, link.ownerRef)) ?? EVERYTHING;
    const after = {
      muted: inOrder(change.muted ?? before.muted),
      pausedUntil: change.pausedUntil === undefined ? before.pausedUntil : change.pausedUntil,
    };
    const language = change.language ?? owner.language;
    if (language === owner.language && canonicalJson(after) === canonicalJson(before)) return 'unchanged';
    await writeOwnerPreferences(tx, link.ownerRef, after, at);
    if (language !== owner.language) await upsertRecords(tx, 'owners', [{ ...owner, language }], at);
    await addOwnerAnswer(tx, {
      ownerRef: link.ownerRef,
      linkId: link.id,
      kind,
      subject: '',
      detail: canonicalJson({
        before: { ...before, language: owner.language },
        after: { ...after, language },
      }),
      once: `${kind}|${link.ownerRef}|${at}|${canonicalJson({ ...after, language })}`,
      at,
      open: false,
    });
    await cancelUnwanted({ ...register, db: tx }, link.ownerRef, after.muted);
    return 'changed';
  });

/** Stops everything but news of danger, as a mail program does by one click. Doing it again changes nothing. */
export async function unsubscribe(
  register: Register,
  link: Pick<OwnerLink, 'id' | 'ownerRef'>,
  now: Clock,
): Promise<'changed' | 'unchanged'> {
  const before = (await readOwnerPreferences(register.db, link.ownerRef)) ?? EVERYTHING;
  const muted = [...before.muted.filter((group) => group === 'danger'), ...ORDINARY_GROUPS];
  return changePreferences(register, link, { change: { muted }, kind: 'unsubscribed' }, now);
}
