import { randomUUID } from 'node:crypto';
import { setImmediate } from 'node:timers/promises';
import { DateTime } from 'luxon';
import type { FenceFacts, ForecastSettings } from '../forecast/fence-facts.ts';
import { forecastFence } from '../forecast/forecast-fence.ts';
import { MODEL_VERSION } from '../forecast/model-version.ts';
import type { Register } from '../register/database.ts';
import { listFenceRefs, loadFenceFacts } from '../register/fence-facts-store.ts';
import { loadFenceParties } from '../register/fence-parties-store.ts';
import { forecastOf, loadIntroductions, loadStoredForecasts, loadStoredStates } from '../register/forecast-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { writeSweepChunk } from '../register/sweep-chunk.ts';
import type { SweepClaim } from '../register/sweep-claim.ts';
import { currentSweepClaim, releaseSweepClaim, renewSweepClaim, takeSweepClaim } from '../register/sweep-claim.ts';
import type { Sweep, SweepFailure } from '../register/sweep-store.ts';
import { finishSweep, listSweepFailures, newestSweep, startSweep } from '../register/sweep-store.ts';
import type { SweptFence } from '../register/swept-fence.ts';
import { canonicalJson } from './canonical-json.ts';
import type { Clock } from './clock.ts';
import { dayInZone, isoUtc } from './clock.ts';
import type { ForecastFunction } from './fence-to-judge.ts';
import { judgeFence } from './judge-fence.ts';
import { isProcessGone, processStart } from './process-start.ts';
import { toldLately } from './told-lately.ts';

/** Fences of one chunk, unless asked otherwise. */
const CHUNK_SIZE = 200;
/** A chunk ends after so long [ms], however few fences it holds, so that a kill costs little. */
const CHUNK_MS = 2000;
/** A sweep that gives no sign of life for so long may be taken over [min]. */
const CLAIM_MINUTES = 3;
/** An unfinished sweep is resumed within so many hours of its start; later a new one takes its place [h]. */
const RESUME_WITHIN_HOURS = 24;

/** How far a sweep has come. */
export interface SweepProgress {
  readonly done: number;
  readonly failed: number;
  readonly lastRef: string;
}

/** How a sweep is run. */
export interface SweepOptions {
  readonly now: Clock;
  /** Settings of the forecast; the register's where not given. */
  readonly settings?: ForecastSettings;
  readonly forecast?: ForecastFunction;
  readonly chunkSize?: number;
  readonly onProgress?: (progress: SweepProgress) => void;
  /** Stops the sweep after the fence at hand; it is resumed by the next. */
  readonly signal?: AbortSignal;
  /** Name of this sweep's claim, so that whoever started it can give the claim back if it dies. */
  readonly token?: string;
}

/** How a sweep ended. */
export type SweepReport =
  | {
      readonly kind: 'finished';
      readonly sweep: Sweep;
      readonly resumed: boolean;
      readonly failures: readonly SweepFailure[];
    }
  | { readonly kind: 'interrupted'; readonly sweep: Sweep }
  /** Another sweep is at work. */
  | { readonly kind: 'busy'; readonly heldBy: SweepClaim };

interface Running extends Required<Pick<SweepOptions, 'now' | 'settings' | 'forecast' | 'chunkSize'>> {
  readonly sweep: Sweep;
  readonly asOf: DateTime;
  readonly token: string;
  /** How long before a season opens it is reminded of [d]. */
  readonly reminderDays: number;
}

const claimFor = (token: string, now: Clock): SweepClaim => ({
  token,
  pid: process.pid,
  processStart: processStart(process.pid),
  expiresAt: isoUtc(now().plus({ minutes: CLAIM_MINUTES })),
});

async function loadFacts(
  register: Register,
  refs: readonly string[],
): Promise<ReadonlyMap<string, FenceFacts | Error>> {
  try {
    return await loadFenceFacts(register, refs);
  } catch (error) {
    if (refs.length === 1)
      return new Map(refs.map((ref) => [ref, error instanceof Error ? error : new Error(String(error))]));
    const single = await Promise.all(refs.map((ref) => loadFacts(register, [ref])));
    return new Map(single.flatMap((each) => [...each]));
  }
}

/** Judges the fences after the checkpoint and writes them as one chunk. Returns the new checkpoint; null at the end. */
async function sweepChunk(
  register: Register,
  running: Running,
  checkpoint: string | null,
  signal: AbortSignal | undefined,
): Promise<{ readonly lastRef: string; readonly done: number; readonly failed: number } | null> {
  const listed = await listFenceRefs(register, checkpoint, running.chunkSize);
  const refs = listed.map((fence) => fence.ref);
  if (refs.length === 0) return null;
  const facts = await loadFacts(register, refs);
  const parties = await loadFenceParties(register, refs);
  const stored = await loadStoredStates(register, refs);
  const introductions = await loadIntroductions(register, refs);
  const ownersOf = (ref: string): readonly string[] =>
    (parties.get(ref)?.owners ?? []).filter((owner) => owner.enrolled).map((owner) => owner.ref);
  const introducedTo = (ref: string): ReadonlySet<string> => introductions.get(ref) ?? new Set();
  const withNewOwner = refs.filter((ref) => ownersOf(ref).some((owner) => !introducedTo(ref).has(owner)));
  const storedDetails = await loadStoredForecasts(register, withNewOwner);
  const lately = await toldLately(register, listed, running.asOf);
  const fences: SweptFence[] = [];
  const failures: SweepFailure[] = [];
  let done = 0;
  let unchanged = 0;
  let lastRef = '';
  const chunkEndsAt = performance.now() + CHUNK_MS;
  let renewAt = running.now().plus({ minutes: CLAIM_MINUTES / 3 });
  for (const { ref, timeZone } of listed) {
    if (done > 0 && (signal?.aborted || performance.now() > chunkEndsAt)) break;
    if (running.now() > renewAt) {
      await renewSweepClaim(register.db, claimFor(running.token, running.now));
      renewAt = running.now().plus({ minutes: CLAIM_MINUTES / 3 });
    }
    try {
      const known = facts.get(ref);
      if (!known || known instanceof Error) throw known ?? new Error('its facts are missing from the register');
      const storedDetail = storedDetails.get(ref);
      const swept = judgeFence({
        facts: known,
        today: dayInZone(running.asOf, timeZone),
        settings: running.settings,
        stored: stored.get(ref) ?? null,
        storedForecast: storedDetail ? forecastOf(storedDetail) : null,
        owners: ownersOf(ref),
        introduced: introducedTo(ref),
        forecast: running.forecast,
        reminding: { days: running.reminderDays, told: lately.get(ref) ?? [] },
      });
      if (swept) fences.push(swept);
      if (!swept?.forecast) unchanged += 1;
    } catch (error) {
      failures.push({ ref, message: error instanceof Error ? error.message : String(error) });
    }
    done += 1;
    lastRef = ref;
    await setImmediate();
  }
  await writeSweepChunk(register, claimFor(running.token, running.now), {
    sweepId: running.sweep.id,
    at: isoUtc(running.now()),
    checkpointRef: lastRef,
    fences,
    failures,
    unchanged,
  });
  return { lastRef, done, failed: failures.length };
}

async function resumeOrStart(
  register: Register,
  options: SweepOptions,
  settings: ForecastSettings,
  token: string,
): Promise<{ readonly sweep: Sweep; readonly resumed: boolean }> {
  const now = options.now();
  const unfinished = await newestSweep(register, 'running');
  const settingsText = canonicalJson(settings);
  if (
    unfinished &&
    unfinished.modelVersion === MODEL_VERSION &&
    unfinished.settings === settingsText &&
    // a start more than a day ahead was written under a clock that was wrong
    Math.abs(now.diff(DateTime.fromISO(unfinished.asOf)).as('hours')) < RESUME_WITHIN_HOURS
  ) {
    return { sweep: unfinished, resumed: true };
  }
  const at = isoUtc(now);
  const fresh = { asOf: at, modelVersion: MODEL_VERSION, settings: settingsText, startedAt: at };
  return { sweep: await startSweep(register, claimFor(token, options.now), fresh), resumed: false };
}

/**
 * Recomputes the register: every fence whose facts, season 1, settings or model changed is forecast anew, and what its
 * owners are to be told is decided, chunk by chunk in one transaction each with the checkpoint. A sweep that was killed is
 * resumed from its checkpoint, as of the instant at which it began, so that its results do not depend on interruptions.
 * A fence that cannot be forecast keeps its last forecast and is listed in the report.
 */
export async function runSweep(register: Register, options: SweepOptions): Promise<SweepReport> {
  const token = options.token ?? randomUUID();
  const registerSettings = await readSettings(register.db);
  const settings = options.settings ?? forecastSettingsOf(registerSettings);
  const standing = await currentSweepClaim(register);
  const dead = standing && isProcessGone(standing) ? standing.token : null;
  const heldBy = await takeSweepClaim(register, claimFor(token, options.now), isoUtc(options.now()), dead);
  if (heldBy) return { kind: 'busy', heldBy };
  try {
    const { sweep, resumed } = await resumeOrStart(register, options, settings, token);
    const running: Running = {
      now: options.now,
      settings,
      forecast: options.forecast ?? forecastFence,
      chunkSize: options.chunkSize ?? CHUNK_SIZE,
      sweep,
      asOf: DateTime.fromISO(sweep.asOf, { zone: 'utc' }),
      token,
      reminderDays: registerSettings.reminderDays,
    };
    let checkpoint = sweep.checkpointRef;
    let [done, failed] = [sweep.computed + sweep.unchanged + sweep.failed, sweep.failed];
    for (;;) {
      if (options.signal?.aborted)
        return { kind: 'interrupted', sweep: (await newestSweep(register, 'running')) ?? sweep };
      const chunk = await sweepChunk(register, running, checkpoint, options.signal);
      if (!chunk) break;
      checkpoint = chunk.lastRef;
      done += chunk.done;
      failed += chunk.failed;
      options.onProgress?.({ done, failed, lastRef: chunk.lastRef });
    }
    const finished = await finishSweep(register, claimFor(token, options.now), sweep.id, isoUtc(options.now()));
    return { kind: 'finished', sweep: finished, resumed, failures: await listSweepFailures(register, sweep.id) };
  } finally {
    await releaseSweepClaim(register, token);
  }
}

/** The part of the register's settings that forecasts depend on. */
export function forecastSettingsOf(settings: ForecastSettings): ForecastSettings {
  const { standingReturnPeriodYears, lookAheadSeasons } = settings;
  return { standingReturnPeriodYears, lookAheadSeasons };
}
