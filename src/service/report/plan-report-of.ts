import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { planReport, type ReportedPlan } from '../../drawing/report/plan-report.ts';
import { MODEL_VERSION } from '../../forecast/model-version.ts';
import { nearestName } from '../../register/csv/nearest-name.ts';
import type { FenceRecord } from '../../register/fence-record.ts';
import { fencesOfOwner } from '../../register/owner-fences.ts';
import { everyRef } from '../../register/record-names.ts';
import { readRecord, recordsWhereIn } from '../../register/record-store.ts';
import type { SiteRecord } from '../../register/site-record.ts';
import { NO_MONEY } from '../../season/money/money.ts';
import { currencyAsked } from '../currency-asked.ts';
import { type FencesMoney, fencesMoney, fencesToPlan, type MoneyTerms, ownerMoney } from '../owner-money.ts';
import { USUAL_TERMS } from '../usual-terms.ts';
import { makingOf, type ReportParts, type ReportResult } from './report-result.ts';

/** What a plan is made with. */
type PlanParts = Pick<ReportParts, 'register' | 'now'>;

/** Whose plan is asked for, and for how many years. */
export interface PlanRequest {
  readonly of: { readonly kind: 'owner' | 'site'; readonly ref: string };
  /** 10 to 30 [a]. */
  readonly years: number;
  /** The register's where null. */
  readonly currency: string | null;
  /** The payer's language where null; English for a site. */
  readonly language: ChartLanguage | null;
}

/** A plan with what a page or a report says of it, in the language that goes with it. */
export interface LoadedPlan {
  readonly kind: 'plan';
  readonly reported: ReportedPlan;
  readonly money: FencesMoney;
  readonly language: ChartLanguage;
  readonly timeZone: string;
}

/** A plan, or why there is none. */
export type PlanResult = LoadedPlan | Exclude<ReportResult, { kind: 'report' }>;

const PER_CENT = 100;

const termsOf = ({ now }: PlanParts, years: number): MoneyTerms => ({
  years,
  openingBalance: NO_MONEY,
  contribution: { kind: 'find', course: 'flat', cover: 'expected' },
  inflation: USUAL_TERMS.inflationPercent / PER_CENT,
  interest: USUAL_TERMS.interestPercent / PER_CENT,
  floor: NO_MONEY,
  dependence: 'independent',
  rule: 'cheapest',
  longestServiceYears: USUAL_TERMS.longestServiceYears,
  inspectEveryYears: USUAL_TERMS.inspectEveryYears,
  sharedPart: USUAL_TERMS.sharedPercent / PER_CENT,
  now,
  onProgress: () => undefined,
});

function reportedPlan(
  money: FencesMoney,
  currency: string,
  of: Pick<ReportedPlan, 'payer' | 'where' | 'units' | 'others'>,
): ReportedPlan {
  const { plan, fences, unseen } = money;
  return { ...of, currency, plan, fences, unseen, ...USUAL_TERMS, modelVersion: MODEL_VERSION };
}

async function ownerPlan(parts: PlanParts, request: PlanRequest): Promise<PlanResult> {
  const { db } = parts.register;
  const { ref } = request.of;
  const money = await ownerMoney(parts.register, { ...termsOf(parts, request.years), ownerRef: ref });
  if (money.kind === 'no such owner')
    return { kind: 'not found', what: `owner ${JSON.stringify(ref)}`, nearest: money.nearest };
  if (money.kind === 'no fences')
    return { kind: 'refused', reason: `${money.owner.name} owns no fence in the register` };
  const siteRefs = [...new Set((await fencesOfOwner(db, ref)).map(({ siteRef }) => siteRef))];
  const sites = await recordsWhereIn(db, 'sites', 'ref', siteRefs);
  const owner = await readRecord(db, 'owners', ref);
  return {
    kind: 'plan',
    money,
    language: request.language ?? owner?.language ?? 'en',
    timeZone: sites[0]?.timeZone ?? 'UTC',
    reported: reportedPlan(money, await currencyAsked(db, request.currency), {
      payer: money.owner.name,
      where: sites.map(({ name }) => name),
      units: sites[0]?.units ?? 'us',
      others: 0,
    }),
  };
}

interface CommonFences {
  readonly payer: 'association' | 'lot';
  readonly payerName: string;
  readonly refs: readonly string[];
}

/** The fences of a site that its associations keep; all of them, paid by the site as one, where there is no association. */
async function commonFences(
  { register }: PlanParts,
  site: SiteRecord,
  fences: readonly FenceRecord[],
): Promise<CommonFences> {
  const ownerRefs = [
    ...new Set(
      fences.flatMap(({ ownerRef, secondOwnerRef }) =>
        secondOwnerRef === null ? [ownerRef] : [ownerRef, secondOwnerRef],
      ),
    ),
  ];
  const associations = (await recordsWhereIn(register.db, 'owners', 'ref', ownerRefs)).filter(
    ({ kind }) => kind === 'association',
  );
  if (associations.length === 0) return { payer: 'lot', payerName: site.name, refs: fences.map(({ ref }) => ref) };
  const kept = new Set(associations.map(({ ref }) => ref));
  return {
    payer: 'association',
    payerName: associations.map(({ name }) => name).join(', '),
    refs: fences
      .filter(
        ({ ownerRef, secondOwnerRef }) => kept.has(ownerRef) || (secondOwnerRef !== null && kept.has(secondOwnerRef)),
      )
      .map(({ ref }) => ref),
  };
}

async function sitePlan(parts: PlanParts, request: PlanRequest): Promise<PlanResult> {
  const { register } = parts;
  const { ref } = request.of;
  const site = await readRecord(register.db, 'sites', ref);
  if (!site) {
    const nearest = nearestName(ref, await everyRef(register.db, 'sites'));
    return { kind: 'not found', what: `site ${JSON.stringify(ref)}`, nearest };
  }
  const fences = await recordsWhereIn(register.db, 'fences', 'site_ref', [ref]);
  if (fences.length === 0) return { kind: 'refused', reason: `${site.name} has no fence in the register` };
  const common = await commonFences(parts, site, fences);
  const terms = termsOf(parts, request.years);
  const paid = (await fencesToPlan(register, common.refs, parts.now)).map((fence) => {
    const other = common.payer === 'lot' ? undefined : fence.parties.owners.find(({ kind }) => kind !== 'association');
    return { ...fence, share: other ? terms.sharedPart : 1, sharedWith: other?.name ?? null };
  });
  const money = await fencesMoney(register, paid, { ...terms, payer: common.payer });
  return {
    kind: 'plan',
    money,
    language: request.language ?? 'en',
    timeZone: site.timeZone,
    reported: reportedPlan(money, await currencyAsked(register.db, request.currency), {
      payer: common.payerName,
      where: [`${site.name}, ${site.place}`],
      units: site.units,
      others: fences.length - common.refs.length,
    }),
  };
}

/** The plan of an owner's fences, or of those that are kept in common at a site. */
export const loadPlan = (parts: PlanParts, request: PlanRequest): Promise<PlanResult> =>
  request.of.kind === 'owner' ? ownerPlan(parts, request) : sitePlan(parts, request);

/** A loaded plan as a report. */
export const reportOfPlan = async (parts: ReportParts, loaded: LoadedPlan): Promise<ReportResult> => ({
  kind: 'report',
  report: planReport(loaded.reported, await makingOf(parts, loaded)),
});

/** The replacement plan of an owner or a site, as a report. */
export async function planReportOf(parts: ReportParts, request: PlanRequest): Promise<ReportResult> {
  const loaded = await loadPlan(parts, request);
  return loaded.kind === 'plan' ? reportOfPlan(parts, loaded) : loaded;
}
