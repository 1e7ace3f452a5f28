import { setImmediate } from 'node:timers/promises';
import type { FenceFacts, ForecastSettings } from '../forecast/fence-facts.ts';
import type { FenceStanding } from '../forecast/fence-forecast.ts';
import { forecastFence } from '../forecast/forecast-fence.ts';
import type { Register } from '../register/database.ts';
import { type FenceListing, listFenceRefs, loadFenceFacts } from '../register/fence-facts-store.ts';
import { countFences } from '../register/fence-list.ts';
import { loadFenceParties } from '../register/fence-parties-store.ts';
import { forecastOf, loadIntroductions, loadStoredForecasts, loadStoredStates } from '../register/forecast-store.ts';
import { type LearnedVersion, learnedFactsFor } from '../register/learned-store.ts';
import { listNoticesOfFence } from '../register/notice-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { canonicalJson } from './canonical-json.ts';
import { type Clock, dayInZone } from './clock.ts';
import { judgeFence } from './judge-fence.ts';
import type { LearningProgress } from './learn-register.ts';
import { forecastSettingsOf } from './run-sweep.ts';

/** Fences of one chunk. */
const CHUNK_SIZE = 200;

/** How a fence would stand with another version, beside how the next sweep would find it without. */
export interface StandingChange {
  readonly ref: string;
  /** Which posts: those of the line, or those that decide the ends. */
  readonly of: 'fence' | 'ends';
  readonly from: FenceStanding | null;
  readonly to: FenceStanding | null;
}

/** A notice that would be written because of another version. */
interface NoticeToCome {
  readonly ref: string;
  readonly ownerRef: string;
  readonly matter: string;
}

/** What another version would change; nothing of it is stored. */
export interface LearnedPreview {
  /** Fences that would be forecast anew. */
  readonly fences: readonly string[];
  readonly standings: readonly StandingChange[];
  readonly notices: readonly NoticeToCome[];
  /** Fences that could not be forecast, and why. */
  readonly unread: readonly { readonly ref: string; readonly message: string }[];
}

interface Judging {
  readonly register: Register;
  readonly clock: Clock;
  readonly settings: ForecastSettings;
  readonly after: LearnedVersion | null;
}

type FencePreview = Omit<LearnedPreview, 'unread'>;

const NOTHING: FencePreview = { fences: [], standings: [], notices: [] };

/** What the other version would change at one fence. */
async function previewFence(
  { register, clock, settings, after }: Judging,
  { timeZone }: FenceListing,
  facts: FenceFacts,
): Promise<FencePreview> {
  const learned = learnedFactsFor(after, facts);
  if (canonicalJson(learned) === canonicalJson(facts.learned)) return NOTHING;
  const { ref } = facts;
  const parties = (await loadFenceParties(register, [ref])).get(ref);
  const stored = (await loadStoredStates(register, [ref])).get(ref) ?? null;
  const detail = (await loadStoredForecasts(register, [ref])).get(ref);
  const common = {
    today: dayInZone(clock(), timeZone),
    settings,
    stored,
    storedForecast: detail ? forecastOf(detail) : null,
    owners: (parties?.owners ?? []).filter(({ enrolled }) => enrolled).map((owner) => owner.ref),
    introduced: (await loadIntroductions(register, [ref])).get(ref) ?? new Set<string>(),
    forecast: forecastFence,
  };
  const [without, with_] = [judgeFence({ ...common, facts }), judgeFence({ ...common, facts: { ...facts, learned } })];
  const standingsOf = (swept: ReturnType<typeof judgeFence>): readonly (FenceStanding | null)[] =>
    swept?.forecast
      ? [swept.forecast.standing, swept.forecast.ends_standing]
      : [stored?.standing ?? null, stored?.endsStanding ?? null];
  const noticesOf = (swept: ReturnType<typeof judgeFence>) =>
    (swept?.owners ?? []).flatMap(({ ownerRef, notices }) =>
      notices.map(({ matter, occasion }) => ({ ownerRef, matter, occasion })),
    );
  const nameOf = (notice: { readonly ownerRef: string; readonly matter: string; readonly occasion: string }): string =>
    canonicalJson([notice.ownerRef, notice.matter, notice.occasion]);
  const told = (await listNoticesOfFence(register, ref)).filter(({ voidReason }) => voidReason === null);
  const known = new Set([...noticesOf(without), ...told].map(nameOf));
  const [was, is] = [standingsOf(without), standingsOf(with_)];
  return {
    fences: [ref],
    standings: (['fence', 'ends'] as const).flatMap((of, index) => {
      const [from = null, to = null] = [was[index], is[index]];
      return from === to ? [] : [{ ref, of, from, to }];
    }),
    notices: noticesOf(with_)
      .filter((notice) => !known.has(nameOf(notice)))
      .map(({ ownerRef, matter }) => ({ ref, ownerRef, matter })),
  };
}

/**
 * What the next sweep would find with another version in force, fence by fence, against what it would find without: standings
 * that change, and notices that are written only because of it. Stores nothing.
 */
export async function previewLearned(
  register: Register,
  after: LearnedVersion | null,
  clock: Clock,
  onProgress: LearningProgress = () => undefined,
): Promise<LearnedPreview> {
  const settings = forecastSettingsOf(await readSettings(register.db));
  const total = await countFences(register);
  const previews: FencePreview[] = [];
  const unread: { ref: string; message: string }[] = [];
  let done = 0;
  for (let last: string | null = null; ; ) {
    const listings: readonly FenceListing[] = await listFenceRefs(register, last, CHUNK_SIZE);
    const facts = await loadFenceFacts(
      register,
      listings.map(({ ref }) => ref),
    );
    for (const listing of listings) {
      const known = facts.get(listing.ref);
      try {
        if (known) previews.push(await previewFence({ register, clock, settings, after }, listing, known));
      } catch (error) {
        unread.push({ ref: listing.ref, message: error instanceof Error ? error.message : String(error) });
      }
      done += 1;
      onProgress(done, total);
      await setImmediate();
    }
    last = listings.at(-1)?.ref ?? null;
    if (last === null) break;
  }
  return {
    fences: previews.flatMap(({ fences }) => fences),
    standings: previews.flatMap(({ standings }) => standings),
    notices: previews.flatMap(({ notices }) => notices),
    unread,
  };
}
