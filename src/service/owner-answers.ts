import type { Register } from '../register/database.ts';
import type { StoredForecast } from '../register/forecast-store.ts';
import { loadStoredForecasts } from '../register/forecast-store.ts';
import { addOwnerAnswer, listOwnerAnswers, type NamedAnswer } from '../register/owner-answer-store.ts';
import { fencesOfOwner } from '../register/owner-fences.ts';
import type { OwnerLink } from '../register/owner-link-store.ts';
import { canonicalJson } from './canonical-json.ts';
import { type Clock, isoUtc } from './clock.ts';

type Answering = Pick<OwnerLink, 'id' | 'ownerRef'>;

/** What tells one state of what is known of a fence from another: an unchanged fence is read once. */
const stateOf = ({ inputHash, seasonOne }: Pick<StoredForecast, 'inputHash' | 'seasonOne'>): string =>
  `${seasonOne} ${inputHash}`;

/** When an owner said that they have read how each of their fences stands now, by ref; fences of which they did not are not in it. */
export async function readFences(
  register: Register,
  ownerRef: string,
  forecasts: readonly StoredForecast[],
): Promise<ReadonlyMap<string, string>> {
  const said = await listOwnerAnswers(register.db, { ownerRef, kind: 'read' });
  const at = new Map<string, string>();
  for (const { subject, detail, at: moment } of said) {
    const forecast = forecasts.find(({ fenceRef }) => fenceRef === subject);
    const { state } = JSON.parse(detail) as { readonly state: string };
    if (forecast && stateOf(forecast) === state) at.set(subject, moment);
  }
  return at;
}

/**
 * Notes that an owner has read how fences of theirs stand: one, or (null) all of them. What was read is the forecast on record;
 * said of the same forecast again, nothing is noted.
 */
export async function acknowledge(
  register: Register,
  link: Answering,
  fenceRef: string | null,
  now: Clock,
): Promise<'noted' | 'already' | 'no such fence'> {
  const theirs = (await fencesOfOwner(register.db, link.ownerRef)).map(({ ref }) => ref);
  const refs = fenceRef === null ? theirs : theirs.filter((ref) => ref === fenceRef);
  const forecasts = await loadStoredForecasts(register, refs);
  if (forecasts.size === 0) return 'no such fence';
  let noted = false;
  for (const forecast of forecasts.values()) {
    const state = stateOf(forecast);
    const stored = await addOwnerAnswer(register.db, {
      ownerRef: link.ownerRef,
      linkId: link.id,
      kind: 'read',
      subject: forecast.fenceRef,
      detail: canonicalJson({
        state,
        standing: forecast.standing,
        snapMps: forecast.snapMps,
        designGustMps: forecast.designGustMps,
        computedAt: forecast.computedAt,
      }),
      once: `read|${link.ownerRef}|${forecast.fenceRef}|${state}`,
      at: isoUtc(now()),
      open: false,
    });
    noted ||= stored === 'stored';
  }
  return noted ? 'noted' : 'already';
}

/** What somebody who wants a call says. */
export interface CallWish {
  /** A number to call; empty where the office has one. */
  readonly phone: string;
  readonly when: string;
  readonly about: string;
}

/** The call that an owner waits for; null where none. */
export async function openCall(register: Register, ownerRef: string): Promise<NamedAnswer | null> {
  const [open = null] = await listOwnerAnswers(register.db, { ownerRef, kind: 'call wanted', open: true });
  return open;
}

/** Puts an owner on the list of those to call, once until the office has called. */
export const askForCall = (
  register: Register,
  link: Answering,
  wish: CallWish,
  now: Clock,
): Promise<'noted' | 'already'> =>
  register.db.transaction().execute(async (tx) => {
    const { ownerRef } = link;
    const asked = await listOwnerAnswers(tx, { ownerRef, kind: 'call wanted' });
    if (asked.some(({ settledAt }) => settledAt === null)) return 'already';
    const stored = await addOwnerAnswer(tx, {
      ownerRef,
      linkId: link.id,
      kind: 'call wanted',
      subject: '',
      detail: canonicalJson(wish),
      once: `call wanted|${ownerRef}|${asked.length}`,
      at: isoUtc(now()),
      open: true,
    });
    return stored === 'stored' ? 'noted' : 'already';
  });
