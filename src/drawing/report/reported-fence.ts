import type { InspectionMethod, PostReading } from '../../forecast/evidence/inspection.ts';
import type { StormOutcome } from '../../forecast/evidence/storm-outcome.ts';
import type { FenceFacts } from '../../forecast/fence-facts.ts';
import type { Works } from '../../forecast/works.ts';
import type { FenceConsequence } from '../../season/snap-consequence.ts';
import type { CalendarDay } from '../../units/calendar-day.ts';
import type { ToldForecast } from './fence-sentences-in.ts';

/** When a record came into the register; null where that is not told. */
interface Entered {
  readonly enteredOn: CalendarDay | null;
}

/** An inspection as a report tells it. */
interface ReportedInspection extends Entered {
  readonly day: CalendarDay;
  readonly inspector: string;
  readonly qualification: string;
  readonly method: InspectionMethod;
  readonly instrument: string;
  readonly readings: readonly PostReading[];
}

/** What a storm did, as a report tells it. */
interface ReportedStorm extends Omit<StormOutcome, 'ref'>, Entered {
  readonly gustSource: string;
  readonly reportedBy: string;
}

/** Works as a report tells them. */
interface ReportedWorks extends Pick<Works, 'kind' | 'day' | 'posts'>, Entered {}

/** Everything that a report says of one fence. It holds no note of the office and no address of an owner. */
export interface ReportedFence extends ToldForecast {
  readonly ref: string;
  readonly site: { readonly name: string; readonly place: string; readonly windSource: string };
  /** Names alone. */
  readonly owners: readonly string[];
  readonly style: string;
  readonly namedEnd: string;
  readonly consequence: FenceConsequence;
  readonly facts: FenceFacts;
  readonly inspections: readonly ReportedInspection[];
  readonly storms: readonly ReportedStorm[];
  readonly works: readonly ReportedWorks[];
  readonly inputHash: string;
}
