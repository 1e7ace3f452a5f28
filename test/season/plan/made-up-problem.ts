import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type {
  MustRank,
  PlanCrew,
  PlanJob,
  PlanOption,
  PlanProblem,
  WeekBar,
} from '../../../src/season/plan/plan-problem.ts';
import { addDays } from '../../../src/units/calendar-day.ts';

/** How large a made-up problem is. */
export interface ProblemSize {
  readonly jobs: number;
  readonly crews: number;
  readonly weeks: number;
  readonly sites: number;
}

/** Uniform numbers in [0, 1) from a seeded generator. */
export function uniforms(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  // small seeds leave most bits of the first states empty
  for (let i = 0; i < 50; i += 1) generator.next();
  return () => (generator.next() >>> 0) / 2 ** 32;
}

const FIRST_MONDAY = '2027-01-04';
const quarters = (hours: number): number => Math.round(hours * 4) / 4;

/**
 * A made-up office: sites in regions about a base, fences with works of several kinds, crews of two to four people. About
 * two fifths of the hours asked for are there. The season opens three weeks before the last week, or at it, by region.
 */
export function madeUpProblem(size: ProblemSize, seed: number): PlanProblem {
  const next = uniforms(seed);
  const between = (low: number, high: number): number => low + (high - low) * next();
  const weeks = Array.from({ length: size.weeks }, (_, week) => addDays(FIRST_MONDAY, 7 * week));
  const regions = Array.from({ length: Math.max(1, Math.round(size.sites / 25)) }, (_, n) => ({
    name: `region-${String(n + 1).padStart(2, '0')}`,
    eastKm: between(-40, 40),
    northKm: between(-40, 40),
    opensInWeek: size.weeks - Math.floor(next() * Math.min(4, size.weeks)),
  }));
  const sites = Array.from({ length: size.sites }, (_, n) => {
    const region = regions[n % regions.length]!;
    return {
      ref: `S-${String(n + 1).padStart(4, '0')}`,
      region,
      eastKm: region.eastKm + between(-8, 8),
      northKm: region.northKm + between(-8, 8),
      locateWeeks: 1 + Math.floor(next() * 2),
      weight: next() < 0.08 ? 6 : between(0.4, 1.6),
    };
  });
  const hoursAsked = size.jobs * 7;
  const people = Array.from({ length: size.crews }, () => 2 + Math.floor(next() * 3));
  const hoursPerPersonWeek = Math.max(
    12,
    (0.4 * hoursAsked) / (size.weeks * people.reduce((sum, count) => sum + count, 0)),
  );
  const crews: PlanCrew[] = people.map((count, n) => {
    const base = { eastKm: between(-30, 30), northKm: between(-30, 30) };
    return {
      ref: `crew-${n + 1}`,
      personHoursByWeek: weeks.map(() =>
        next() < 0.05 ? 0 : quarters(count * hoursPerPersonWeek * (next() < 0.15 ? 0.6 : 1)),
      ),
      skills: n % 2 === 0 ? ['applicator', 'digging'] : ['digging'],
      languages: ['en'],
      travel: sites.map((site) => {
        const wayKm = 2 * 1.3 * Math.hypot(site.eastKm - base.eastKm, site.northKm - base.northKm);
        return {
          siteRef: site.ref,
          personHours: quarters((count * wayKm) / 60),
          cost: Math.round((count * wayKm * 28) / 60 + wayKm * 0.5),
        };
      }),
    };
  });
  const totalWeight = sites.reduce((sum, { weight }) => sum + weight, 0);
  const siteAt = (): (typeof sites)[number] => {
    let left = next() * totalWeight;
    return (
      sites.find(({ weight }) => {
        left -= weight;
        return left <= 0;
      }) ?? sites[0]!
    );
  };
  const jobs = Array.from({ length: size.jobs }, (_, n): PlanJob => {
    const site = siteAt();
    const posts = 4 + Math.floor(next() ** 2 * 22);
    const risk = Math.exp(between(4.5, 8.6));
    const dice = next();
    const mustRank: MustRank = dice < 0.02 ? 1 : dice < 0.06 ? 2 : dice < 0.2 ? 3 : 0;
    const option = (
      key: string,
      hours: number,
      effect: number,
      rules: { readonly cureWeeks: number; readonly locate: boolean; readonly skill: string | null },
    ): PlanOption => {
      const cost = Math.round(hours * 38 + posts * 6);
      return {
        key,
        personHours: Math.max(0.5, quarters(hours)),
        cost,
        benefitByWeek: weeks.map((_day, week) => {
          const inSeason = Math.max(0, week - site.region.opensInWeek + 1);
          return Math.round((risk * effect * (1 - 0.06 * inSeason) * (1 - 0.002 * week) - cost) * 100) / 100;
        }),
        barsByWeek: weeks.map((_day, week) => {
          const bars: WeekBar[] = [];
          if (rules.locate && week < site.locateWeeks) bars.push('locate-notice');
          if (week + rules.cureWeeks >= site.region.opensInWeek) bars.push('cure-time');
          return bars;
        }),
        skill: rules.skill,
        satisfiesMust: key !== 'inspect',
        note: key === 'rebuild' && next() < 0.2 ? 'cheaper-to-replace-next-year' : null,
      };
    };
    const options = [
      option('inspect', 0.5 + posts * 0.06, between(0.1, 0.3), { cureWeeks: 0, locate: false, skill: null }),
      option('groundline-treatment', 1 + posts * 0.3, between(0.3, 0.6), {
        cureWeeks: 0,
        locate: false,
        skill: 'applicator',
      }),
      option('steel-sleeve', 1.5 + posts * 0.7, between(0.6, 0.85), { cureWeeks: 0, locate: false, skill: null }),
      option('post-swap', 2 + posts * 1.2, between(0.8, 0.95), { cureWeeks: 1, locate: true, skill: 'digging' }),
    ].filter(() => next() < 0.6);
    const promised =
      mustRank === 1 && next() < 0.5
        ? { week: weeks[Math.floor(next() * weeks.length)]!, crewRef: null, optionKey: null }
        : null;
    return {
      ref: `F-${String(n + 1).padStart(5, '0')}`,
      siteRef: site.ref,
      region: site.region.name,
      mustRank,
      promised,
      previous: null,
      options,
    };
  });
  return { weeks, crews, jobs, changePenalty: 25 };
}
