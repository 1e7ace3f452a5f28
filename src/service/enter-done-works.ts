import { postNumbersText, worksName } from '../drawing/what-if-words.ts';
import type { Works } from '../forecast/works.ts';
import type { Register } from '../register/database.ts';
import { enterWorks } from '../register/enter-works.ts';
import { loadFenceFacts } from '../register/fence-facts-store.ts';
import { worksRecord } from '../register/works-from-facts.ts';
import type { WorksRecord } from '../register/works-record.ts';
import { plannedWorks } from '../season/planned-works.ts';
import type { VisitItem, VisitWorks } from '../season/visit/visit.ts';
import type { WorksCatalogue } from '../season/works-catalogue.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { type WantedWorks, WHOLE_FENCE } from './fence-quote.ts';

/** What was done at a fence, entered into the register; with faults nothing may be kept of it. */
export interface DoneWorks {
  readonly works: readonly VisitWorks[];
  readonly records: readonly WorksRecord[];
  readonly faults: readonly string[];
  /** What turned out otherwise than it was asked for. */
  readonly notes: readonly string[];
}

/** How works are entered. */
export interface DoneWorksInputs {
  /** What was done instead of the plan; null: what was planned. */
  readonly wanted: readonly WantedWorks[] | null;
  readonly day: CalendarDay;
  readonly catalogue: WorksCatalogue;
  /** Moment of writing, ISO 8601. */
  readonly at: string;
  /** Ref of the works of that number, from 1; refs sort as the works were done. */
  readonly refOf: (index: number) => string;
}

/** What was done, as it is asked for: works of the whole fence name no posts. */
const wantedOf = ({ works }: VisitItem): readonly WantedWorks[] =>
  works.map(({ kind, posts }) => ({ kind, posts: WHOLE_FENCE.has(kind) ? 'all' : posts }));

/**
 * Enters what was done at one fence of a visit: built as the catalogue says, at the posts that the visit names. Works within
 * a transaction of the caller, which must end without a trace where there are faults.
 */
export async function enterDoneWorks(
  register: Register,
  item: VisitItem,
  { wanted, day, catalogue, at, refOf }: DoneWorksInputs,
): Promise<DoneWorks> {
  const { fenceRef } = item;
  const facts = (await loadFenceFacts(register, [fenceRef])).get(fenceRef);
  if (!facts) return { works: [], records: [], faults: [`fence ${fenceRef} is not in the register`], notes: [] };
  const done: Works[] = [];
  const works: VisitWorks[] = [];
  const faults: string[] = [];
  const notes: string[] = [];
  for (const { kind, posts } of wanted ?? wantedOf(item)) {
    if (kind === 'inspect') {
      const planned = item.works.find((each) => each.kind === 'inspect');
      const read = posts === 'all' ? (planned?.posts ?? []) : posts;
      works.push({ kind, posts: read, postCount: read.length });
      continue;
    }
    try {
      const planned = plannedWorks({
        kind,
        facts: { ...facts, works: [...facts.works, ...done] },
        day,
        posts,
        build: catalogue[kind].build,
        ref: refOf(done.length + 1),
      });
      if (planned.kind === 'no sense') {
        faults.push(`fence ${fenceRef}, ${worksName(kind)}: ${planned.reason}`);
        continue;
      }
      const { posts: touched, postCount } = planned;
      const left = posts === 'all' ? [] : posts.filter((number) => !touched.includes(number));
      if (left.length > 0)
        notes.push(
          `fence ${fenceRef}, ${worksName(kind)}: not entered for post ${postNumbersText(left)}, to which it does nothing`,
        );
      done.push(planned.works);
      works.push({ kind, posts: touched, postCount });
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      faults.push(error.message);
    }
  }
  const records = done.map((each) => worksRecord(fenceRef, each));
  if (faults.length === 0 && records.length > 0) {
    const refused = await enterWorks(register.db, facts, records, at);
    faults.push(...refused.map((reason) => `fence ${fenceRef}, ${reason}`));
  }
  return { works, records, faults, notes };
}
