import { BOARD_MATTER, MATTER_RULES, type OwnerMatter } from '../notify/matter-rules.ts';
import { decideVisitMatter, type ToldVisit, type VisitFacts, visitOccasion } from '../notify/visit-telling.ts';
import type { Register } from '../register/database.ts';
import { loadFenceParties } from '../register/fence-parties-store.ts';
import { heldBy, holdingForOwners } from '../register/holding.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import { recordsWhereIn } from '../register/record-store.ts';
import {
  cancelUnsent,
  type DecidedVisitNotice,
  listVisitNotices,
  type VisitNotice,
  voidUnwritten,
  writeVisitNotices,
} from '../register/visit-notices.ts';
import type { Visit } from '../season/visit/visit.ts';
import type { CalendarDay } from '../units/calendar-day.ts';
import { canonicalJson } from './canonical-json.ts';

/** Why notices and messages of a visit that changed again are not told. */
export const CHANGED_AGAIN = 'the visit has changed again';

/** What a notice of a visit keeps of it. */
interface KeptFacts extends VisitFacts {
  /** What the owner was last told before; null where nothing was. */
  readonly before: ToldVisit | null;
}

/** When and why a visit is told of. */
interface VisitTelling {
  /** The day at the site. */
  readonly today: CalendarDay;
  /** Moment of the change (ISO 8601, UTC). */
  readonly at: string;
  /** The season plan that changed it, where one did: associations are then told of the plan. */
  readonly planNumber: number | null;
}

const factsOf = ({ state, sequence, firstDay, lastDay, startsAt, crewRef }: VisitFacts): VisitFacts => ({
  state,
  sequence,
  firstDay,
  lastDay,
  startsAt,
  crewRef,
});

/** What a notice of a visit kept of it when it was decided. */
export const keptFacts = ({ facts }: Pick<VisitNotice, 'facts'>): KeptFacts => JSON.parse(facts) as KeptFacts;

/** Makes void what no message carries, and takes back what has not left. Returns what owners know or are being told. */
async function supersede(
  { db }: Register,
  uid: string,
  notices: readonly VisitNotice[],
): Promise<readonly VisitNotice[]> {
  const unwritten = notices.filter(({ outboxId }) => outboxId === null);
  await voidUnwritten(
    db,
    unwritten.map(({ id }) => id),
    CHANGED_AGAIN,
  );
  const written = notices.filter(({ outboxId, messageState }) => outboxId !== null && messageState !== 'cancelled');
  // the plan's message tells of other visits too, and goes out
  const messages = written.flatMap(({ outboxId, matter }) =>
    outboxId === null || matter === BOARD_MATTER ? [] : outboxId,
  );
  const taken = new Set((await cancelUnsent(db, [...new Set(messages)], uid)).messages);
  return written.filter(({ outboxId }) => outboxId !== null && !taken.has(outboxId));
}

/** The last thing an owner was told of a visit. */
function lastTold(notices: readonly VisitNotice[], ownerRef: string): ToldVisit | null {
  const last = notices.findLast((notice) => notice.ownerRef === ownerRef);
  return last ? { ...factsOf(keptFacts(last)), matter: last.matter } : null;
}

/** The enrolled owners who are concerned: those of the visit's fences by now, and those who were told of it before. */
async function concerned(
  register: Register,
  visit: Visit,
  known: readonly VisitNotice[],
): Promise<
  readonly { readonly owner: OwnerRecord; readonly fenceRefs: readonly string[]; readonly isTheirs: boolean }[]
> {
  const parties = await loadFenceParties(
    register,
    visit.items.map(({ fenceRef }) => fenceRef),
  );
  const fencesOf = new Map<string, string[]>();
  for (const { fenceRef, owners } of parties.values())
    for (const { ref } of owners) fencesOf.set(ref, [...(fencesOf.get(ref) ?? []), fenceRef]);
  const refs = [...new Set([...fencesOf.keys(), ...known.map(({ ownerRef }) => ownerRef)])].sort();
  const owners = await recordsWhereIn(register.db, 'owners', 'ref', refs);
  return owners
    .filter(({ enrolled }) => enrolled)
    .map((owner) => {
      const own = fencesOf.get(owner.ref);
      const told = known.filter(({ ownerRef }) => ownerRef === owner.ref).map(({ fenceRef }) => fenceRef);
      return { owner, fenceRefs: own ?? [...new Set(told)], isTheirs: own !== undefined };
    });
}

/**
 * Queues what owners are to be told of a visit as it is now, within the transaction that changed it: called with a register whose database
 * is that transaction. What was to be told of it before and has not left is made void or taken back. Returns how many notices were queued.
 */
export async function tellOfVisit(register: Register, visit: Visit, telling: VisitTelling): Promise<number> {
  const { today, at, planNumber } = telling;
  const notices = await listVisitNotices(register.db, visit.uid);
  const newest = notices.at(-1);
  // only its price or hours changed: what was queued still tells of it
  if (newest && sameFacts(keptFacts(newest), visit)) return 0;
  const known = await supersede(register, visit.uid, notices);
  const people = await concerned(register, visit, known);
  const holding = await holdingForOwners(
    register.db,
    people.map(({ owner }) => owner.ref),
  );
  const decided = people.flatMap(({ owner, fenceRefs, isTheirs }): readonly DecidedVisitNotice[] => {
    const before = lastTold(known, owner.ref);
    const told = decideVisitMatter({ visit, told: before, isTheirs, today });
    if (told === null) return [];
    const matter: OwnerMatter = planNumber !== null && owner.kind === 'association' ? BOARD_MATTER : told;
    const facts = canonicalJson({ ...factsOf(visit), ...(isTheirs ? {} : { state: 'cancelled' }), before });
    const held = heldBy(holding, owner.ref, { matter, mayBeHeld: MATTER_RULES[matter].mayBeHeld });
    return fenceRefs.map((fenceRef) => ({
      fenceRef,
      ownerRef: owner.ref,
      matter,
      occasion: visitOccasion(visit),
      facts,
      held,
      visitUid: visit.uid,
      planNumber,
    }));
  });
  return writeVisitNotices(register.db, decided, at);
}

const sameFacts = (kept: KeptFacts, visit: Visit): boolean =>
  kept.sequence === visit.sequence && kept.state === visit.state;
