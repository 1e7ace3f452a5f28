import { setImmediate } from 'node:timers/promises';
import type { FenceFacts } from '../forecast/fence-facts.ts';
import { nearestName } from '../register/csv/nearest-name.ts';
import type { Register } from '../register/database.ts';
import { loadFenceFacts } from '../register/fence-facts-store.ts';
import { type FenceParties, loadFenceParties } from '../register/fence-parties-store.ts';
import type { OwnerRecord } from '../register/owner-record.ts';
import { listRecords, readRecord } from '../register/record-store.ts';
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

/** What is asked about the money of one owner. */
export interface OwnerMoneyRequest
  extends Omit<ReservePlanRequest, 'fences' | 'payer' | 'firstYear'>,
    Omit<FenceMoneyTerms, 'firstYear'> {
  readonly ownerRef: string;
  /** What this owner pays of a fence that has two owners, 0 to 1 [-]. */
  readonly sharedPart: number;
  readonly now: Clock;
  readonly onProgress: (done: number, total: number) => void;
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

/** What one owner has to spend on fences, and when. */
export interface OwnerMoney {
  readonly owner: Pick<OwnerRecord, 'ref' | 'name' | 'kind'>;
  readonly plan: ReservePlan;
  /** In the order of the plan's fences. */
  readonly fences: readonly OwnerFence[];
  /** Fences that could not be looked at, and why; the plan is without them. */
  readonly unseen: readonly { readonly ref: string; readonly message: string }[];
}

export type OwnerMoneyResult =
  | { readonly kind: 'no such owner'; readonly nearest: string | null }
  | { readonly kind: 'no fences'; readonly owner: Pick<OwnerRecord, 'ref' | 'name'> }
  | ({ readonly kind: 'planned' } & OwnerMoney);

/** Who an owner is in a plan: an association keeps common fences, a person or company those of its lots. */
const responsibleOf = ({ kind }: Pick<OwnerRecord, 'kind'>): Responsible =>
  kind === 'association' ? 'association' : 'lot';

interface OwnedFence {
  readonly facts: FenceFacts;
  readonly parties: FenceParties;
  readonly today: string;
  readonly seasonYear: number;
}

async function ownedFences(register: Register, ownerRef: string, now: Clock): Promise<readonly OwnedFence[]> {
  const refs = (await listRecords(register.db, 'fences'))
    .filter((fence) => fence.ownerRef === ownerRef || fence.secondOwnerRef === ownerRef)
    .map(({ ref }) => ref);
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
  { facts, parties, today, seasonYear }: OwnedFence,
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
 * The plan of repair and replacement of one owner's fences, first and second owner alike. Of a fence with two owners the plan
 * pays the part that is asked for; what the other owner pays is in nobody's plan here. Years are those in which the storm
 * season opens that works of today are weighed by, the first of them over all fences being the first of the plan. Throws
 * RangeError where the terms do not hold together.
 */
export async function ownerMoney(register: Register, request: OwnerMoneyRequest): Promise<OwnerMoneyResult> {
  const { ownerRef, sharedPart, now, onProgress } = request;
  const owner = await readRecord(register.db, 'owners', ownerRef);
  if (!owner) {
    const refs = (await listRecords(register.db, 'owners')).map(({ ref }) => ref);
    return { kind: 'no such owner', nearest: nearestName(ownerRef, refs) };
  }
  const owned = await ownedFences(register, ownerRef, now);
  if (owned.length === 0) return { kind: 'no fences', owner };
  const responsible = responsibleOf(owner);
  const firstYear = Math.min(...owned.map(({ seasonYear }) => seasonYear));
  const catalogue = await loadCatalogue(register.db);
  const settings = forecastSettingsOf(await readSettings(register.db));
  const fences: OwnerFence[] = [];
  const planned: ReservePlanRequest['fences'][number][] = [];
  const unseen: OwnerMoney['unseen'][number][] = [];
  for (const [index, fence] of owned.entries()) {
    const other = fence.parties.owners.find(({ ref }) => ref !== ownerRef);
    const share = other ? sharedPart : 1;
    try {
      const { planned: forPlan, ...money } = moneyOf(fence, { catalogue, settings, terms: { ...request, firstYear } });
      planned.push({ ...partOf(forPlan, share), responsible });
      fences.push({
        ...money,
        siteName: fence.parties.site.name,
        responsible,
        share,
        sharedWith: other?.name ?? null,
      });
    } catch (error) {
      unseen.push({ ref: fence.facts.ref, message: error instanceof Error ? error.message : String(error) });
    }
    onProgress(index + 1, owned.length);
    await setImmediate();
  }
  const plan = reservePlan({ ...request, firstYear, payer: responsible, fences: planned });
  return { kind: 'planned', owner: { ref: owner.ref, name: owner.name, kind: owner.kind }, plan, fences, unseen };
}
