import {
  type MustRank,
  type PlanCrew,
  type PlanJob,
  type PlanOption,
  type PlanProblem,
  WEEK_BARS,
} from '../../../src/season/plan/plan-problem.ts';
import { addDays } from '../../../src/units/calendar-day.ts';
import { uniforms } from './made-up-problem.ts';

/** How many of each; a small one can be enumerated. */
export interface DrawnSize {
  readonly jobs: number;
  readonly crews: number;
  readonly weeks: number;
  readonly sites: number;
  readonly options: number;
}

/** A small office with tight weeks, in which every rule of the plan bites: bars, skills, promises, earlier plans, musts. */
export function drawnProblem(seed: number, size: DrawnSize): PlanProblem {
  const next = uniforms(seed);
  const whole = (most: number): number => Math.floor(next() * most);
  const weeks = Array.from({ length: size.weeks }, (_, week) => addDays('2027-02-01', 7 * week));
  const sites = Array.from({ length: size.sites }, (_, n) => `site-${n}`);
  const crews = Array.from(
    { length: size.crews },
    (_, n): PlanCrew => ({
      ref: `crew-${n}`,
      personHoursByWeek: weeks.map(() => (next() < 0.1 ? 0 : 3 + whole(33) / 4)),
      skills: next() < 0.6 ? ['applicator'] : [],
      languages: [],
      travel: sites
        .filter(() => next() < 0.9)
        .map((siteRef) => ({ siteRef, personHours: whole(9) / 4, cost: whole(120) })),
    }),
  );
  const jobs = Array.from({ length: size.jobs }, (_, n): PlanJob => {
    const options = Array.from({ length: 1 + whole(size.options) }, (_none, k): PlanOption => {
      const benefit = whole(900) - 150;
      return {
        key: `option-${k}`,
        personHours: 0.5 + whole(20) / 4,
        cost: whole(300),
        benefitByWeek: weeks.map((_day, week) => benefit - 7 * week + whole(5)),
        barsByWeek: weeks.map(() => WEEK_BARS.filter(() => next() < 0.06)),
        skill: next() < 0.2 ? 'applicator' : null,
        satisfiesMust: next() < 0.7,
        note: next() < 0.1 ? 'cheaper-to-replace-next-year' : null,
      };
    });
    const anywhere = () => ({
      week: weeks[whole(weeks.length)]!,
      crewRef: crews[whole(crews.length)]!.ref,
      optionKey: options[whole(options.length)]!.key,
    });
    const promised = next() < 0.15 ? anywhere() : null;
    return {
      ref: `fence-${String(n).padStart(3, '0')}`,
      siteRef: sites[whole(sites.length)]!,
      region: 'north',
      mustRank: (next() < 0.4 ? 1 + whole(3) : 0) as MustRank,
      promised: promised && {
        ...promised,
        crewRef: next() < 0.5 ? promised.crewRef : null,
        optionKey: next() < 0.5 ? promised.optionKey : null,
      },
      previous: next() < 0.3 ? anywhere() : null,
      options,
    };
  });
  return { weeks, crews, jobs, changePenalty: whole(60) };
}
