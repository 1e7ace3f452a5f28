import { type LeftOutNames, leftOutClause } from '../drawing/left-out-words.ts';
import { leftOutText, WHY_SERVED } from '../drawing/plan-words.ts';
import { ageFigure } from '../drawing/quantity-text.ts';
import type { PlanContent } from '../register/plan-store.ts';

/** What must be done and is not, fence by fence, with what stands in its way. */
const musts = ({ unservedMusts }: PlanContent, names: LeftOutNames): readonly string[] =>
  unservedMusts.length === 0
    ? []
    : [
        'Must be done, and is not in the plan:',
        ...[...unservedMusts]
          .sort((a, b) => a.mustRank - b.mustRank || (a.jobRef < b.jobRef ? -1 : 1))
          .map((fence) => `  ${fence.jobRef} (${WHY_SERVED[fence.mustRank]}): ${leftOutClause(fence, names)}.`),
        '',
      ];

/** Fences that need not have any works, by reason, every one named. */
function others({ unservedOthers = [] }: PlanContent, names: LeftOutNames): readonly string[] {
  if (unservedOthers.length === 0) return [];
  return [
    'Not in the plan, and need not be:',
    ...unservedOthers.flatMap(({ reason, fences, named = [] }) => {
      const head = `  ${fences} ${fences === 1 ? 'fence' : 'fences'}: ${leftOutText(reason)}`;
      if (!named.some(({ nearest }) => nearest))
        return named.length === 0 ? [head] : [head, `    ${named.map(({ jobRef }) => jobRef).join(', ')}`];
      return [head, ...named.map((fence) => `    ${fence.jobRef}: ${leftOutClause(fence, names)}.`)];
    }),
    '',
  ];
}

const wornOut = ({ wornOut: worn = [] }: PlanContent): readonly string[] =>
  worn.length === 0
    ? []
    : [
        `Rails and boards are at their end at fences whose posts it mends: ${worn.map(({ fenceRef, ageYears }) => `${fenceRef} (${ageFigure(ageYears)} years)`).join(', ')}. Their money says to replace them. Follow the plan, unless one is rebuilt before the season opens: then cancel its visit.`,
        '',
      ];

/** What a plan leaves out and why, and the fences that it mends though they are due for replacement. */
export const leftOutLines = (content: PlanContent, names: LeftOutNames): readonly string[] => [
  ...musts(content, names),
  ...others(content, names),
  ...wornOut(content),
];
