import { greatCircleM, type Place } from '../travel.ts';
import type { Visit } from './visit.ts';

/** A visit with where it is. */
export interface PlacedVisit<V extends Pick<Visit, 'uid' | 'startsAt'>> {
  readonly visit: V;
  /** Null where it is not known. */
  readonly place: Place | null;
}

/** Index of the visit nearest to where the crew is; the first where it is not known where either is. */
function nearest(from: Place | null, visits: readonly { readonly place: Place | null }[]): number {
  if (!from) return 0;
  const distances = visits.map(({ place }) => (place ? greatCircleM(from, place) : Number.POSITIVE_INFINITY));
  return Math.max(0, distances.indexOf(Math.min(...distances)));
}

/**
 * The visits of a day in the order in which a crew makes them: those with a time by their time, then the others, each the
 * nearest to the one before; among equals by uid.
 * Source: nearest neighbour from the base (model choice).
 */
export function inDayOrder<V extends Pick<Visit, 'uid' | 'startsAt'>>(
  visits: readonly PlacedVisit<V>[],
  base: Place | null,
): readonly V[] {
  const key = ({ startsAt, uid }: V): string => `${startsAt ?? '~'} ${uid}`;
  const sorted = visits.toSorted((a, b) => (key(a.visit) < key(b.visit) ? -1 : 1));
  const ordered = sorted.filter(({ visit }) => visit.startsAt !== null);
  const left = sorted.filter(({ visit }) => visit.startsAt === null);
  while (left.length > 0) {
    const at = ordered.findLast(({ place }) => place !== null)?.place ?? base;
    ordered.push(...left.splice(nearest(at, left), 1));
  }
  return ordered.map(({ visit }) => visit);
}
