import { medianDecayRate } from '../../../src/decay/decay-rate.ts';
import type {
  GroundlineReading,
  InspectionFacts,
  InspectionMethod,
  PostReading,
} from '../../../src/forecast/evidence/inspection.ts';
import type { FenceFacts } from '../../../src/forecast/fence-facts.ts';
import { DAYS_PER_YEAR, dayFromNumber, dayNumber } from '../../../src/units/calendar-day.ts';
import { metresFromFeet } from '../../../src/units/length.ts';
import { EXAMPLE_FENCE, WARM_SITE } from '../example-fence.ts';

/** A reading of one post of which only the groundline was looked at. */
export const groundlineOf = (post: number, groundline: GroundlineReading | null): PostReading => ({
  post,
  groundline,
  cavityMm: null,
  leanDegrees: null,
  collarCracked: null,
  railConnection: null,
  trimmerCutMm: null,
  closedOff: false,
});

/** An inspection of posts 1, 2, 3, … in turn. */
export const inspectionOn = (
  day: string,
  readings: readonly (GroundlineReading | null)[],
  method: InspectionMethod = 'awl-or-probe',
): InspectionFacts => ({
  ref: `I ${day}`,
  day,
  method,
  readings: readings.map((reading, index) => groundlineOf(index + 1, reading)),
});

/** A fence of eleven posts whose prior is ln r ~ N(ln 0.5, 0.45), built so that the given day finds it so many years old. */
export function halfMillimetreFence(years: number, day = '2026-03-01', spread = 0.45): FenceFacts {
  const built = dayFromNumber(dayNumber(day) - years * DAYS_PER_YEAR);
  return {
    ...EXAMPLE_FENCE,
    run: { ...EXAMPLE_FENCE.run, runLengthM: metresFromFeet(80) },
    installed: { earliest: built, latest: built },
    learned: {
      version: 1,
      paces: [
        {
          treatmentClass: 'ground-contact',
          logShift: Math.log(0.5 / medianDecayRate('ground-contact', WARM_SITE.climate)),
          spread,
        },
      ],
      footing: null,
    },
  };
}
