import { BENEFIT_STAGE, type Candidate, type CompiledProblem } from './compiled-problem.ts';
import { type Schedule, VALUE_TOLERANCE } from './schedule.ts';
import { seededNumbers } from './seeded-numbers.ts';
import { offersBySlot, type VisitLoad, visitLoad } from './visit-offers.ts';

/** How long to search, and at which prices an hour is weighed meanwhile. */
export interface RearrangeTask {
  readonly schedule: Schedule;
  readonly prices: Float64Array;
  readonly steps: number;
  readonly stopNow: () => boolean;
}

/** A better schedule, or the same one, and the steps it took. */
export interface Rearranged {
  readonly schedule: Schedule;
  readonly steps: number;
}

// the search's own habits: shares and counts that did well on made-up problems, not facts
const SEED = 1;
const FIRST_HEAT = 0.15;
const LAST_HEAT = 0.0015;
const SHARE_TAKEN = 0.6;
const SITES_DRAWN = 12;
const RATE_NOISE = 0.3;
/** More jobs than a step can touch: one must of a stage outweighs all of the stages after it. */
const STAGE_BASE = 1000;

/**
 * Improves a schedule by taking visits out of a few slots and filling these slots anew, many times over. A step that
 * loses a little is at first allowed, with a chance that falls to nearly nothing (simulated annealing); one that loses a
 * must is not. The best schedule met is given back.
 */
export function rearrange({ schedule: first, prices, steps, stopNow }: RearrangeTask): Rearranged {
  const { compiled } = first;
  const next = seededNumbers(SEED);
  const pick = (count: number): number => Math.min(count - 1, Math.floor(next() * count));
  const offers = compiled.siteRefs.map((_, site) => offersBySlot(compiled, site, prices));
  const search = searchState(first, offers);
  const placed = first.chosen.filter((candidate) => candidate !== null);
  const typical = placed.reduce((sum, { value }) => sum + Math.abs(value), 0) / Math.max(1, placed.length);
  let best = first;
  let bestValue = 0;
  let bestMusts = 0;
  let step = 0;
  for (; compiled.slotCount > 0 && step < steps && !stopNow(); step += 1) {
    const heat = typical * FIRST_HEAT * (LAST_HEAT / FIRST_HEAT) ** (step / steps);
    const slots = drawSlots(compiled, next, pick);
    const [valueBefore, mustsBefore] = [search.value(), search.musts()];
    const taken: Candidate[] = [];
    const sites = new Set<number>();
    for (const slot of slots) {
      for (const site of search.sitesIn(slot)) {
        sites.add(site);
        if (next() < SHARE_TAKEN) taken.push(...search.takeVisit(site, slot));
      }
    }
    for (let n = 0; n < SITES_DRAWN; n += 1) {
      const waiting = search.waitingAt(next());
      if (waiting !== null) sites.add(compiled.siteOfJob[waiting]!);
    }
    const brought = refill([...sites], slots);
    const gain = search.value() - valueBefore;
    const mustGain = search.musts() - mustsBefore;
    if (mustGain > 0 || (mustGain === 0 && (gain >= 0 || next() < Math.exp(gain / heat)))) {
      if (
        search.musts() > bestMusts ||
        (search.musts() === bestMusts && search.value() > bestValue + VALUE_TOLERANCE)
      ) {
        [bestValue, bestMusts] = [search.value(), search.musts()];
        best = search.schedule.copy();
      }
    } else {
      for (const { job } of brought) search.take(job);
      for (const candidate of taken) search.put(candidate);
    }
  }
  return { schedule: best, steps: step };

  /**
   * Fills slots with visits to sites, those that bring a must first, then each time the one that is worth most an hour.
   * What a visit would bring is looked at again only where its slot or its site has changed.
   */
  function refill(sites: readonly number[], slots: readonly number[]): readonly Candidate[] {
    const brought: Candidate[] = [];
    const loads: (VisitLoad | null)[] = [];
    const rates: number[] = [];
    const look = (level: number, s: number, t: number): void => {
      const [site, slot, at] = [sites[s]!, slots[t]!, s * slots.length + t];
      const here = offers[site]![slot]!;
      const load = here.length === 0 ? null : visitLoad(search.schedule, { site, slot, offers: here, prices, level });
      loads[at] = load;
      rates[at] =
        load === null
          ? Number.NEGATIVE_INFINITY
          : (load.net / Math.max(load.hours, 0.01)) * (1 + RATE_NOISE * (next() - 0.5));
    };
    const levels = new Set(sites.flatMap((site) => search.levelsWaiting(site)));
    for (const level of [...levels].sort((left, right) => right - left)) {
      for (let s = 0; s < sites.length; s += 1) for (let t = 0; t < slots.length; t += 1) look(level, s, t);
      for (;;) {
        let most = 0;
        for (let at = 1; at < rates.length; at += 1) if (rates[at]! > rates[most]!) most = at;
        const load = loads[most];
        if (!load) break;
        for (const candidate of load.candidates) search.put(candidate);
        brought.push(...load.candidates);
        const [site, slot] = [Math.floor(most / slots.length), most % slots.length];
        for (let s = 0; s < sites.length; s += 1) if (loads[s * slots.length + slot] !== null) look(level, s, slot);
        for (let t = 0; t < slots.length; t += 1) if (t !== slot) look(level, site, t);
      }
    }
    return brought;
  }
}

/** Two to four slots: of one crew in weeks near each other, or of any crews in any weeks. */
function drawSlots(
  { slotCount, weeks, crews }: CompiledProblem,
  next: () => number,
  pick: (count: number) => number,
): readonly number[] {
  const seed = pick(slotCount);
  const slots = new Set([seed]);
  const many = 2 + pick(3);
  for (let n = 0; n < 3 * many && slots.size < many; n += 1) {
    const crew = next() < 0.5 ? Math.floor(seed / weeks.length) : pick(crews.length);
    const week = next() < 0.5 ? (seed % weeks.length) + pick(7) - 3 : pick(weeks.length);
    if (week >= 0 && week < weeks.length) slots.add(crew * weeks.length + week);
  }
  return [...slots];
}

const ONLY_THE_REST: readonly number[] = [0];

interface SearchState {
  readonly schedule: Schedule;
  /** Value and weighed musts, counted from where the search began. */
  value(): number;
  musts(): number;
  sitesIn(slot: number): readonly number[];
  /** A waiting job, by its share of the way through all of them; null where none waits. */
  waitingAt(share: number): number | null;
  /** The must levels of a site's waiting jobs, and 0. */
  levelsWaiting(site: number): readonly number[];
  takeVisit(site: number, slot: number): readonly Candidate[];
  take(job: number): void;
  put(candidate: Candidate): void;
}

function searchState(first: Schedule, offers: readonly (readonly (readonly Candidate[])[])[]): SearchState {
  const schedule = first.copy();
  const { compiled, chosen } = schedule;
  const { siteOfJob, jobsOfSite } = compiled;
  const levelOfJob = compiled.candidatesOfJob.map((mine) =>
    mine.reduce((most, { importance }) => Math.max(most, importance), 0),
  );
  const placedIn: Set<number>[] = Array.from({ length: compiled.slotCount }, () => new Set());
  for (const candidate of chosen) if (candidate !== null) placedIn[candidate.slot]!.add(candidate.job);
  const offered = new Set(offers.flatMap((ofSite) => ofSite.flatMap((ofSlot) => ofSlot.map(({ job }) => job))));
  const waiting = [...offered].filter((job) => chosen[job] === null).sort((left, right) => left - right);
  const mustsWaiting = Int32Array.from(
    jobsOfSite,
    (jobs) => jobs.filter((job) => chosen[job] === null && levelOfJob[job]! > 0).length,
  );
  const place = new Map(waiting.map((job, index) => [job, index]));
  let value = 0;
  let musts = 0;
  const weight = ({ importance }: Candidate): number => {
    let sum = 0;
    for (let bit = 0; bit < BENEFIT_STAGE; bit += 1) if ((importance >> bit) & 1) sum += STAGE_BASE ** bit;
    return sum;
  };
  const put = (candidate: Candidate): void => {
    value += schedule.netValue(candidate);
    musts += weight(candidate);
    schedule.put(candidate);
    placedIn[candidate.slot]!.add(candidate.job);
    if (levelOfJob[candidate.job]! > 0) mustsWaiting[siteOfJob[candidate.job]!]! -= 1;
    const at = place.get(candidate.job);
    if (at === undefined) return;
    const last = waiting.pop()!;
    place.delete(candidate.job);
    if (last === candidate.job) return;
    waiting[at] = last;
    place.set(last, at);
  };
  const take = (job: number): void => {
    const candidate = chosen[job]!;
    schedule.take(job);
    value -= schedule.netValue(candidate);
    musts -= weight(candidate);
    placedIn[candidate.slot]!.delete(job);
    if (levelOfJob[job]! > 0) mustsWaiting[siteOfJob[job]!]! += 1;
    place.set(job, waiting.length);
    waiting.push(job);
  };
  return {
    schedule,
    value: () => value,
    musts: () => musts,
    sitesIn: (slot) => {
      const sites: number[] = [];
      for (const job of placedIn[slot]!) if (!sites.includes(siteOfJob[job]!)) sites.push(siteOfJob[job]!);
      return sites;
    },
    waitingAt: (share) => waiting[Math.floor(share * waiting.length)] ?? null,
    levelsWaiting: (site) =>
      mustsWaiting[site] === 0
        ? ONLY_THE_REST
        : [0, ...jobsOfSite[site]!.filter((job) => chosen[job] === null).map((job) => levelOfJob[job]!)],
    takeVisit: (site, slot) => {
      const leaving = [...placedIn[slot]!].filter((job) => siteOfJob[job] === site).map((job) => chosen[job]!);
      leaving.sort((left, right) => left.job - right.job);
      for (const { job } of leaving) take(job);
      return leaving;
    },
    take,
    put,
  };
}
