import { z } from 'zod';
import { FOOTING_KINDS } from '../capacity/footing.ts';
import { postBreadthMm } from '../capacity/post-section.ts';
import type { EndFacts, RunFacts } from '../forecast/fence-facts.ts';
import { refuseWood, sectionOf, woodShape } from './post-wood-record.ts';
import { RANGES } from './value-ranges.ts';
import {
  daySchema,
  type Refuse,
  rangedSchema,
  refSchema,
  refuseInto,
  requiredTextSchema,
  textSchema,
} from './value-schemas.ts';

/** Solidity of each style where the record gives none [-]; picket and open rail are judgement. */
export const STYLE_SOLIDITY = {
  'solid-board': 1,
  'board-on-board': 1,
  shadowbox: 1,
  picket: 0.5,
  'open-rail': 0.35,
} as const;
export type FenceStyle = keyof typeof STYLE_SOLIDITY;
export const FENCE_STYLES = Object.keys(STYLE_SOLIDITY) as [FenceStyle, ...FenceStyle[]];
export const END_KINDS = ['return', 'building', 'gate', 'free', 'unknown'] as const;
export const BOARD_RUNS = ['continuous', 'spliced', 'unknown'] as const;
export const TRIMMER_GUARDS = ['yes', 'no', 'unknown'] as const;
export const CONSEQUENCES = ['ordinary', 'pool-barrier', 'over-footpath', 'livestock', 'other-high'] as const;

/** One straight run between corners, gates or ends; its posts are numbered from end A, the named end. */
export const fenceSchema = z
  .object({
    ref: refSchema,
    siteRef: refSchema,
    ownerRef: refSchema,
    secondOwnerRef: refSchema.nullable(),
    style: z.enum(FENCE_STYLES),
    solidity: rangedSchema(RANGES.solidity),
    heightM: rangedSchema(RANGES.heightM),
    runLengthM: rangedSchema(RANGES.runLengthM),
    bottomGapM: rangedSchema(RANGES.bottomGapM),
    postSpacingM: rangedSchema(RANGES.postSpacingM),
    namedEnd: requiredTextSchema(100),
    endAKind: z.enum(END_KINDS),
    endAReturnM: rangedSchema(RANGES.returnLengthM).nullable(),
    endBKind: z.enum(END_KINDS),
    endBReturnM: rangedSchema(RANGES.returnLengthM).nullable(),
    ...woodShape,
    retentionKgM3: rangedSchema(RANGES.retentionKgM3).nullable(),
    installedEarliest: daySchema,
    installedLatest: daySchema,
    embedmentM: rangedSchema(RANGES.embedmentM).nullable(),
    footing: z.enum(FOOTING_KINDS).nullable(),
    footingDiameterM: rangedSchema(RANGES.footingDiameterM).nullable(),
    boards: z.enum(BOARD_RUNS),
    trimmerGuards: z.enum(TRIMMER_GUARDS),
    yearlyTrimmerCutMm: rangedSchema(RANGES.yearlyTrimmerCutMm),
    consequence: z.enum(CONSEQUENCES),
    accessNote: textSchema(2000),
    note: textSchema(4000),
  })
  .superRefine((fence, context) => {
    const refuse = refuseInto(context);
    refuseWood(fence, refuse);
    refuseGeometry(fence, refuse);
    refuseFooting(fence, refuse);
    if (fence.secondOwnerRef === fence.ownerRef) {
      refuse('secondOwnerRef', 'the same as the first owner; leave it empty or name the other owner');
    }
    if (fence.installedEarliest > fence.installedLatest) {
      refuse('installedEarliest', 'the range ends before it begins; write the earlier date first');
    }
    if (fence.trimmerGuards === 'yes' && fence.yearlyTrimmerCutMm > 0) {
      refuse(
        'yearlyTrimmerCutMm',
        'guards are fitted, so nothing is cut each year; write 0 or set trimmer_guards to no',
      );
    }
  });

export type FenceRecord = Readonly<z.infer<typeof fenceSchema>>;

type Fields<K extends keyof FenceRecord> = Pick<FenceRecord, K>;

function refuseGeometry(
  fence: Fields<
    | 'style'
    | 'solidity'
    | 'bottomGapM'
    | 'heightM'
    | 'postSpacingM'
    | 'runLengthM'
    | 'endAKind'
    | 'endAReturnM'
    | 'endBKind'
    | 'endBReturnM'
  >,
  refuse: Refuse,
): void {
  if (STYLE_SOLIDITY[fence.style] === 1 && fence.solidity !== 1) {
    refuse('solidity', `a ${fence.style} fence counts as solid; write 1 or leave it empty`);
  }
  if (fence.bottomGapM > fence.heightM / 2) {
    refuse('bottomGapM', 'more than half the height; give the gap between ground and boards');
  }
  if (fence.postSpacingM > fence.runLengthM) {
    refuse('postSpacingM', 'longer than the run; give the distance from post to post');
  }
  for (const end of ['A', 'B'] as const) {
    const isReturn = fence[`end${end}Kind`] === 'return';
    const length = fence[`end${end}ReturnM`];
    if (isReturn && length === null) {
      refuse(`end${end}ReturnM`, 'missing; a return needs its length, or write unknown as the kind of end');
    }
    if (!isReturn && length !== null) {
      refuse(
        `end${end}ReturnM`,
        `a length for an end of kind ${fence[`end${end}Kind`]}; leave it empty, or write return as the kind of end`,
      );
    }
  }
}

function refuseFooting(
  fence: Fields<'footing' | 'footingDiameterM' | 'sectionKind' | 'sectionWidthMm' | 'sectionDepthMm'>,
  refuse: Refuse,
): void {
  if (fence.footingDiameterM === null) return;
  if (fence.footing === null) {
    refuse('footing', 'missing beside a footing diameter; write concrete, soil or gravel, or leave the diameter empty');
  }
  if (fence.footingDiameterM * 1000 <= postBreadthMm(sectionOf(fence))) {
    refuse('footingDiameterM', 'not wider than the post; give the diameter of the hole');
  }
}

function endFacts(kind: FenceRecord['endAKind'], returnLengthM: number | null): EndFacts {
  if (kind !== 'return') return { kind };
  if (returnLengthM === null) throw new Error('a return without a length');
  return { kind, returnLengthM };
}

/** The geometry of a run as the forecast takes it. */
export const runFacts = (fence: FenceRecord): RunFacts => ({
  heightM: fence.heightM,
  runLengthM: fence.runLengthM,
  bottomGapM: fence.bottomGapM,
  postSpacingM: fence.postSpacingM,
  solidity: fence.solidity,
  ends: [endFacts(fence.endAKind, fence.endAReturnM), endFacts(fence.endBKind, fence.endBReturnM)],
});
