import type { CatalogueKind } from '../catalogue-entry.ts';
import type { WorksCatalogue } from '../works-catalogue.ts';
import { type CostedPart, worksCost } from '../works-cost.ts';

/** Hours of a crew's people that the works at one fence really took, on one visit. */
export interface UsedHours {
  readonly works: readonly CostedPart[];
  /** At the fence, without the way [h]; above 0. */
  readonly personHours: number;
}

/** How far the catalogue's hours of a kind are off, by what crews used. */
export interface HoursCorrection {
  readonly kind: CatalogueKind;
  /** What the catalogue's hours are multiplied with [-]. */
  readonly factor: number;
  /** Hours used and planned of this kind [h]. */
  readonly usedPersonHours: number;
  readonly plannedPersonHours: number;
  /** Fences at which it was done on some visit, alone or with other kinds. */
  readonly visits: number;
}

/** Visits that the catalogue's own hours count as much as [-]. Source: judgement. */
const PRIOR_VISITS = 5;
/** One visit's used hours count as at most so many times those planned, and as at least one part of so many. Source: judgement. */
const MOST_RATIO = 4;

/** Hours of each kind of works done together [h]: its own by the post, and what is counted once a fence to the kind that has most of it. */
function plannedByKind(works: readonly CostedPart[], catalogue: WorksCatalogue): ReadonlyMap<CatalogueKind, number> {
  const fixedOf = (kind: CatalogueKind): number => catalogue[kind].personHours.fixed;
  const first = works.reduce<CostedPart | null>(
    (most, part) => (most === null || fixedOf(part.kind) > fixedOf(most.kind) ? part : most),
    null,
  );
  const hours = new Map<CatalogueKind, number>();
  for (const part of works) {
    const own = catalogue[part.kind].personHours.perPost * part.postCount + (part === first ? fixedOf(part.kind) : 0);
    hours.set(part.kind, (hours.get(part.kind) ?? 0) + own);
  }
  return hours;
}

/**
 * The factor by which the catalogue's hours of each kind are corrected, from hours that crews really used:
 * `factor = (k * 1 + n * r) / (k + n)`, with `r` the hours used over those planned of the kind, `n` the visits that tell of
 * it and `k = 5` the visits that the catalogue counts as. Hours of a fence at which several kinds were done are shared by
 * their planned hours, and it counts for each kind by its share. Kinds that nobody did are not in the list.
 * @param catalogue as the office keeps it, not corrected
 * Source: credibility weighting, factor `n / (n + k)` (Bühlmann 1967, from memory); k and the limits of one visit, judgement.
 */
export function correctedHours(used: readonly UsedHours[], catalogue: WorksCatalogue): readonly HoursCorrection[] {
  const sums = new Map<CatalogueKind, { used: number; planned: number; weight: number; visits: number }>();
  for (const { works, personHours } of used) {
    const planned = worksCost(works, catalogue).personHours;
    if (!(planned > 0)) continue;
    const ratio = Math.min(MOST_RATIO, Math.max(1 / MOST_RATIO, personHours / planned));
    for (const [kind, hours] of plannedByKind(works, catalogue)) {
      const sum = sums.get(kind) ?? { used: 0, planned: 0, weight: 0, visits: 0 };
      sum.used += hours * ratio;
      sum.planned += hours;
      sum.weight += hours / planned;
      sum.visits += 1;
      sums.set(kind, sum);
    }
  }
  return [...sums]
    .filter(([, { planned }]) => planned > 0)
    .map(([kind, sum]) => ({
      kind,
      factor: (PRIOR_VISITS + sum.weight * (sum.used / sum.planned)) / (PRIOR_VISITS + sum.weight),
      usedPersonHours: sum.used,
      plannedPersonHours: sum.planned,
      visits: sum.visits,
    }))
    .sort((a, b) => (a.kind < b.kind ? -1 : 1));
}

/** The catalogue with the hours of each kind multiplied by its correction; prices, rules and materials stay. */
export function withCorrectedHours(catalogue: WorksCatalogue, corrections: readonly HoursCorrection[]): WorksCatalogue {
  const corrected = { ...catalogue };
  for (const { kind, factor } of corrections) {
    const { fixed, perPost } = catalogue[kind].personHours;
    corrected[kind] = { ...catalogue[kind], personHours: { fixed: fixed * factor, perPost: perPost * factor } };
  }
  return corrected;
}
