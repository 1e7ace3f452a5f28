import { setImmediate } from 'node:timers/promises';
import type { FenceFacts } from '../forecast/fence-facts.ts';
import { nearestName } from '../register/csv/nearest-name.ts';
import type { Register } from '../register/database.ts';
import { loadFenceFacts } from '../register/fence-facts-store.ts';
import { type FenceParties, loadFenceParties } from '../register/fence-parties-store.ts';
import { fencesOfOwner } from '../register/owner-fences.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import { everyRef } from '../register/record-names.ts';
import { readRecord } from '../register/record-store.ts';
import { readSettings } from '../register/settings-store.ts';
import { fenceOutlook } from '../season/fence-outlook.ts';
import { type FenceMoney, type FenceMoneyTerms, fenceMoney, partOf } from '../season/money/fence-money.ts';
import type { Responsible } from '../season/money/plan-fence.ts';
import { type ReservePlan, reservePlan } from '../season/money/reserve-plan.ts';
import type { ReservePlanRequest } from '../season/money/reserve-request.ts';
import { seasonToPlan } from '../season/planned-season.ts';
import type { WorksCatalogue } from '../season/works-catalogue.ts';

import type { Clock } from './clock.ts';
import { dayInZone } from './clock.ts';
import { forecastSettingsOf } from './run-sweep.ts';
import { loadCatalogue } from './season-register.ts';

/** On which terms money is planned. */
export interface MoneyTerms
  extends Omit<ReservePlanRequest, 'fences' | 'payer' | 'firstYear'>,
    Omit<FenceMoneyTerms, 'firstYear'> {
  /** What one owner pays of a fence that has two owners, 0 to 1 [-]. */
  readonly sharedPart: number;
  readonly now: Clock;
  readonly onProgress: (done: number, total: number) => void;
}

/** What is asked about the money of one owner. */
export interface OwnerMoneyRequest extends MoneyTerms {
  readonly ownerRef: string;
}

/** One fence of an owner's plan: costs are of the whole fence, the plan pays the owner's share. */
export interface OwnerFence extends Omit<FenceMoney, 'planned'> {
  readonly siteName: string;
  readonly responsible: Responsible;
  /** What the owner pays of it, 0 to 1 [-]. */
  readonly share: number;
  /** Name of the other owner; null where there is none. */
  readonly sharedWith: string | null;
}

/** What one payer has to spend on fences, and when. */
export interface FencesMoney {
  readonly plan: ReservePlan;
  /** In the order of the plan's fences. */
  readonly fences: readonly OwnerFence[];
  /** Fences that could not be looked at, and why; the plan is without them. */
  readonly unseen: readonly { readonly ref: string; readonly message: string }[];
}

/** What one owner has to spend on fences, and when. */
export interface OwnerMoney extends FencesMoney {
  readonly owner: Pick<OwnerRecord, 'ref' | 'name' | 'kind'>;
}

export type OwnerMoneyResult =
  | { readonly kind: 'no such owner'; readonly nearest: string | null }
  | { readonly kind: 'no fences'; readonly owner: Pick<OwnerRecord, 'ref' | 'name'> }
  | ({ readonly kind: 'planned' } & OwnerMoney);

/** Who an owner is in a plan: an association keeps common fences, a person or company those of its lots. */
const responsibleOf = ({ kind }: Pick<OwnerRecord, 'kind'>): Responsible =>
  kind === 'association' ? 'association' : 'lot';

/** A fence that money is planned for. */
interface FenceToPlan {
  readonly facts: FenceFacts;
  readonly parties: FenceParties;
  readonly today: string;
  readonly seasonYear: number;
}

/** A fence with who pays how much of it. */
type PaidFence = FenceToPlan & Pick<OwnerFence, 'share' | 'sharedWith'>;

/** Fences as they are planned today; refs that the register does not hold are left out. */
export async function fencesToPlan(
  register: Register,
  refs: readonly string[],
  now: Clock,
): Promise<readonly FenceToPlan[]> {
  const facts = await loadFenceFacts(register, refs);
  const parties = await loadFenceParties(register, refs);
  return refs.flatMap((ref) => {
    const [known, party] = [facts.get(ref), parties.get(ref)];
    if (!known || !party) return [];
    const today = dayInZone(now(), party.site.timeZone);
    return [{ facts: known, parties: party, today, seasonYear: seasonToPlan(known.site.seasonWindow, today).year }];
  });
}

function moneyOf(
  { facts, parties, today, seasonYear }: FenceToPlan,
  by: {
    readonly catalogue: WorksCatalogue;
    readonly settings: ReturnType<typeof forecastSettingsOf>;
    readonly terms: FenceMoneyTerms;
  },
): FenceMoney {
  const latest = [...facts.works, ...facts.inspections, ...facts.outcomes].reduce(
    (last, { day }) => (day > last ? day : last),
    today,
  );
  const outlook = fenceOutlook(facts, by.settings, latest, seasonYear);
  return fenceMoney({ outlook, seasonYear, catalogue: by.catalogue, consequence: parties.consequence }, by.terms);
}

/**
 * The plan of repair and replacement of fences that one payer pays, wholly or in part, at least one. Its first year is that of
 * the earliest season over all of them. Throws RangeError where the terms do not hold together.
 */
export async function fencesMoney(
  register: Register,
  paid: readonly PaidFence[],
  request: MoneyTerms & { readonly payer: Responsible },
): Promise<FencesMoney> {
  const { payer, onProgress } = request;
  const firstYear = Math.min(...paid.map(({ seasonYear }) => seasonYear));
  const catalogue = await loadCatalogue(register.db);
  const settings = forecastSettingsOf(await readSettings(register.db));
  const fences: OwnerFence[] = [];
  const planned: ReservePlanRequest['fences'][number][] = [];
  const unseen: FencesMoney['unseen'][number][] = [];
  for (const [index, fence] of paid.entries()) {
    const { share, sharedWith } = fence;
    try {
      const { planned: forPlan, ...money } = moneyOf(fence, { catalogue, settings, terms: { ...request, firstYear } });
      planned.push({ ...partOf(forPlan, share), responsible: payer });
      fences.push({ ...money, siteName: fence.parties.site.name, responsible: payer, share, sharedWith });
    } catch (error) {
      unseen.push({ ref: fence.facts.ref, message: error instanceof Error ? error.message : String(error) });
    }
    onProgress(index + 1, paid.length);
    await setImmediate();
  }
  return { plan: reservePlan({ ...request, firstYear, fences: planned }), fences, unseen };
}

/**
 * The plan of repair and replacement of one owner's fences, first and second owner alike. Of a fence with two owners the plan
 * pays the part that is asked for; what the other owner pays is in nobody's plan here. Years are those in which the storm
 * season opens that works of today are weighed by, the first of them over all fences being the first of the plan. Throws
 * RangeError where the terms do not hold together.
 */
export async function ownerMoney(register: Register, request: OwnerMoneyRequest): Promise<OwnerMoneyResult> {
  const { ownerRef, sharedPart, now } = request;
  const owner = await readRecord(register.db, 'owners', ownerRef);
  if (!owner) {
    const refs = await everyRef(register.db, 'owners');
    return { kind: 'no such owner', nearest: nearestName(ownerRef, refs) };
  }
  const refs = (await fencesOfOwner(register.db, ownerRef)).map(({ ref }) => ref);
  const owned = await fencesToPlan(register, refs, now);
  if (owned.length === 0) return { kind: 'no fences', owner };
  const paid = owned.map((fence): PaidFence => {
    const other = fence.parties.owners.find(({ ref }) => ref !== ownerRef);
    return { ...fence, share: other ? sharedPart : 1, sharedWith: other?.name ?? null };
  });
  const money = await fencesMoney(register, paid, { ...request, payer: responsibleOf(owner) });
  return { kind: 'planned', owner: { ref: owner.ref, name: owner.name, kind: owner.kind }, ...money };
}
