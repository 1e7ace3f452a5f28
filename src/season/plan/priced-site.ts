import { BENEFIT_STAGE, type Candidate, type CompiledProblem, gainInStage } from './compiled-problem.ts';
import { jobOffers } from './job-offers.ts';
import { type SiteBound, siteBound } from './site-bound.ts';

/** The prices of one step, and the sums a site adds itself to. */
export interface SiteStep {
  readonly prices: Float64Array;
  readonly rankPrices: Float64Array;
  /** What is left of the hours, then of the counts; the site takes its part off. */
  readonly left: Float64Array;
  /** What the sites would do; the site adds its part. */
  readonly relaxed: Candidate[];
  /** What each job earns at most at these prices, by job; the site writes those of its own. */
  readonly worths: Float64Array;
  /** True where the site is to look again which share of the way it asks by the hour. */
  readonly chooseShare: boolean;
}

/** Which site, in which stage; and which earlier stages are served in full, so that all their jobs are forced. */
export interface PricedSiteTask {
  readonly site: number;
  readonly stage: number;
  readonly inFull: readonly boolean[];
}

/**
 * Prepares one site for being bounded at many prices: the answer gives at least the most that the site can earn once it
 * pays for its hours.
 *
 * Of the way, a share may be asked by the hour of work instead of by the visit: a visit holds at most the slot's hours
 * less the way, so the hours of its works, over that room, are at most 1, and asking the share by them only relaxes. It
 * tightens the bound of a site whose works fill several visits.
 */
export function pricedSite(compiled: CompiledProblem, task: PricedSiteTask): (step: SiteStep) => number {
  const { site, stage, inFull } = task;
  const { slotCount, slotHours } = compiled;
  const way = compiled.travelHours.subarray(site * slotCount, (site + 1) * slotCount);
  const cost = compiled.travelCost.subarray(site * slotCount, (site + 1) * slotCount);
  const room = slotHours.map((hours, slot) => hours - way[slot]!);
  const jobs = compiled.jobsOfSite[site]!.map((job) => jobOffers(compiled, job, inFull));
  const offers = jobs.map((job) => job.offers);
  const forced = Uint8Array.from(jobs, (job) => (job.forced ? 1 : 0));
  const gain = new Float64Array(jobs.length * slotCount);
  const chosen = new Int32Array(jobs.length * slotCount);
  const visit = new Float64Array(slotCount);
  const perHour = new Float64Array(slotCount);
  const shares = mayNeedSeveralVisits(offers, room) ? [0, 0.5, 1] : [0];
  let share = 0;

  const bounded = (prices: Float64Array, rankPrices: Float64Array, ofShare: number): SiteBound => {
    for (let slot = 0; slot < slotCount; slot += 1) {
      const whole = prices[slot]! * way[slot]! + (stage === BENEFIT_STAGE ? cost[slot]! : 0);
      visit[slot] = room[slot]! > 0 ? (1 - ofShare) * whole : Number.POSITIVE_INFINITY;
      perHour[slot] = prices[slot]! + (room[slot]! > 0 ? (ofShare * whole) / room[slot]! : 0);
    }
    gain.fill(Number.NEGATIVE_INFINITY);
    offers.forEach((mine, index) => {
      const from = index * slotCount;
      for (let n = 0; n < mine.length; n += 1) {
        const candidate = mine[n]!;
        let net = gainInStage(candidate, stage) - perHour[candidate.slot]! * candidate.hours;
        for (let earlier = 0; earlier < inFull.length; earlier += 1)
          if (((candidate.counts >> earlier) & 1) === 1 && !inFull[earlier]) net += rankPrices[earlier]!;
        if (net > gain[from + candidate.slot]!) {
          gain[from + candidate.slot] = net;
          chosen[from + candidate.slot] = n;
        }
      }
    });
    return siteBound({ jobCount: jobs.length, slotCount, gain, visit, forced });
  };

  return ({ prices, rankPrices, left, relaxed, worths, chooseShare }) => {
    if (chooseShare && shares.length > 1) {
      const bounds = shares.map((each) => bounded(prices, rankPrices, each).bound);
      share = shares[bounds.indexOf(Math.min(...bounds))]!;
    }
    const { bound, worth, slotOfJob } = bounded(prices, rankPrices, share);
    const opened = new Set<number>();
    offers.forEach((mine, index) => {
      worths[compiled.jobsOfSite[site]![index]!] = worth[index]!;
      const slot = slotOfJob[index]!;
      if (slot < 0) return;
      const candidate = mine[chosen[index * slotCount + slot]!]!;
      relaxed.push(candidate);
      left[slot]! -= candidate.hours * (1 + (share * way[slot]!) / room[slot]!);
      if (!opened.has(slot)) left[slot]! -= (1 - share) * way[slot]!;
      opened.add(slot);
      for (let earlier = 0; earlier < inFull.length; earlier += 1)
        if (((candidate.counts >> earlier) & 1) === 1 && !inFull[earlier]) left[slotCount + earlier]! += 1;
    });
    return bound;
  };
}

function mayNeedSeveralVisits(offers: readonly (readonly Candidate[])[], room: Float64Array): boolean {
  const longest = offers.reduce((sum, mine) => sum + mine.reduce((most, { hours }) => Math.max(most, hours), 0), 0);
  return room.some((hours) => hours > 0 && hours < longest);
}
