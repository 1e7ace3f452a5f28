import type { AcceptedVisits } from '../season/visit/accept-plan.ts';
import { fenceMoves, type VisitPlace } from '../season/visit/fence-moves.ts';
import { mondayOf } from '../season/visit/week-of-day.ts';

const placeText = ({ firstDay, lastDay, crewRef }: VisitPlace): string =>
  `${firstDay}${lastDay === firstDay ? '' : ` to ${lastDay}`}, ${crewRef} (week of ${mondayOf(firstDay)})`;

/** Fences that go elsewhere: from which days and crew to which. */
export const moveLines = (visits: AcceptedVisits): readonly string[] => {
  const lines = fenceMoves(visits).map(
    ({ siteRef, fenceRefs, from, to }) =>
      `  ${siteRef}, ${fenceRefs.join(', ')}: ${placeText(from) === placeText(to) ? `${placeText(to)} as before; what is done changes` : `${placeText(from)} -> ${placeText(to)}`}`,
  );
  return lines.length === 0 ? [] : ['From which days to which:', ...lines, ''];
};
