import { z } from 'zod';
import { FOOTING_KINDS } from '../capacity/footing.ts';
import { GROUNDLINE_TREATMENT_YEARS, type Works, type WorksKind } from '../forecast/works.ts';
import { postNumbersSchema, refuseRepeatedPosts } from './post-numbers.ts';
import { postWood, refuseWood, type WoodFields, woodShape } from './post-wood-record.ts';
import { RANGES } from './value-ranges.ts';
import { daySchema, type Refuse, rangedSchema, refSchema, refuseInto } from './value-schemas.ts';

export const WORKS_KINDS = [
  'groundline-treatment',
  'liner',
  'drainage',
  'trimmer-guard',
  'footing-reset',
  'post-swap',
  'steel-sleeve',
  'added-posts',
  'rebuild',
] as const satisfies readonly WorksKind[];

const WOOD_KEYS = ['sectionKind', 'sectionWidthMm', 'species', 'grade', 'incised', 'treatmentClass'] as const;
const WOOD_EXTRAS = ['sectionDepthMm', 'momentCapacityNm'] as const;

/** Schemas of everything that some kind of works needs to say. */
const detailsShape = {
  yearsEffective: rangedSchema(RANGES.yearsEffective).nullable(),
  embedmentM: rangedSchema(RANGES.embedmentM).nullable(),
  footing: z.enum(FOOTING_KINDS).nullable(),
  footingDiameterM: rangedSchema(RANGES.footingDiameterM).nullable(),
  sectionKind: woodShape.sectionKind.nullable(),
  sectionWidthMm: woodShape.sectionWidthMm.nullable(),
  sectionDepthMm: woodShape.sectionDepthMm,
  species: woodShape.species.nullable(),
  grade: woodShape.grade.nullable(),
  incised: woodShape.incised.nullable(),
  treatmentClass: woodShape.treatmentClass.nullable(),
  momentCapacityNm: woodShape.momentCapacityNm,
  positionsM: z.array(rangedSchema(RANGES.positionM)).min(1).max(500).nullable(),
  postSpacingM: rangedSchema(RANGES.postSpacingM).nullable(),
};
export type WorksDetailKey = keyof typeof detailsShape;
export const WORKS_DETAIL_KEYS = Object.keys(detailsShape) as readonly WorksDetailKey[];

interface KindRule {
  readonly needs: readonly WorksDetailKey[];
  readonly takes: readonly WorksDetailKey[];
  /** True where it is done to the fence, never to single posts. */
  readonly wholeFence: boolean;
}

const KIND_RULES: Record<WorksKind, KindRule> = {
  'groundline-treatment': { needs: ['yearsEffective'], takes: [], wholeFence: false },
  liner: { needs: [], takes: [], wholeFence: false },
  drainage: { needs: [], takes: [], wholeFence: true },
  'trimmer-guard': { needs: [], takes: [], wholeFence: false },
  'footing-reset': { needs: ['embedmentM', 'footing'], takes: ['footingDiameterM'], wholeFence: false },
  'post-swap': { needs: WOOD_KEYS, takes: WOOD_EXTRAS, wholeFence: false },
  'steel-sleeve': { needs: ['momentCapacityNm'], takes: [], wholeFence: false },
  'added-posts': { needs: [...WOOD_KEYS, 'positionsM'], takes: WOOD_EXTRAS, wholeFence: true },
  rebuild: { needs: WOOD_KEYS, takes: [...WOOD_EXTRAS, 'postSpacingM'], wholeFence: true },
};

/** Something done to a fence on a day: its kind, the posts, and what that kind needs to say (the rest null). */
export const worksSchema = z
  .object({
    ref: refSchema,
    fenceRef: refSchema,
    day: daySchema,
    kind: z.enum(WORKS_KINDS),
    posts: postNumbersSchema,
    ...detailsShape,
  })
  .superRefine((works, context) => {
    const refuse = refuseInto(context);
    const { needs, takes, wholeFence } = KIND_RULES[works.kind];
    for (const key of WORKS_DETAIL_KEYS) {
      if (needs.includes(key)) {
        if (works[key] === null) refuse(key, `missing; works of kind ${works.kind} need it`);
      } else if (!takes.includes(key) && works[key] !== null) {
        refuse(key, `works of kind ${works.kind} have no use for it; leave it empty`);
      }
    }
    if (wholeFence && works.posts !== 'all') {
      refuse('posts', `works of kind ${works.kind} are done to the whole fence; write all`);
    }
    refuseRepeatedPosts(works.posts, refuse);
    if (needs.includes('sectionKind') && WOOD_KEYS.every((key) => works[key] !== null)) {
      refuseWood(works as WoodFields, refuse);
    }
    refuseDiameter(works, refuse);
  });

export type WorksRecord = Readonly<z.infer<typeof worksSchema>>;

function refuseDiameter(works: Pick<WorksRecord, 'footing' | 'footingDiameterM'>, refuse: Refuse): void {
  if (works.footingDiameterM !== null && works.footing === null) {
    refuse('footing', 'missing beside a footing diameter; write concrete, soil or gravel');
  }
}

/** What a kind of works takes when the record leaves it out. */
export const worksDefaults = (kind: string): Partial<WorksRecord> => {
  if (kind === 'groundline-treatment') return { yearsEffective: GROUNDLINE_TREATMENT_YEARS };
  const rule = WORKS_KINDS.includes(kind as WorksKind) ? KIND_RULES[kind as WorksKind] : null;
  return rule?.needs.includes('grade') ? { grade: 'unknown', incised: false } : {};
};

function given<T>(value: T | null, works: WorksRecord): T {
  if (value === null) throw new Error(`works ${works.ref} of kind ${works.kind} lack what their kind needs`);
  return value;
}

const woodOf = (works: WorksRecord) =>
  postWood({
    sectionKind: given(works.sectionKind, works),
    sectionWidthMm: given(works.sectionWidthMm, works),
    sectionDepthMm: works.sectionDepthMm,
    species: given(works.species, works),
    grade: given(works.grade, works),
    incised: given(works.incised, works),
    treatmentClass: given(works.treatmentClass, works),
    momentCapacityNm: works.momentCapacityNm,
  });

/** Works as the forecast takes them. Throws where the record breaks its own rules. */
export function worksFacts(works: WorksRecord): Works {
  const base = { ref: works.ref, day: works.day, posts: works.posts };
  const { kind } = works;
  switch (kind) {
    case 'groundline-treatment':
      return { ...base, kind, yearsEffective: given(works.yearsEffective, works) };
    case 'liner':
    case 'drainage':
    case 'trimmer-guard':
      return { ...base, kind };
    case 'footing-reset':
      return {
        ...base,
        kind,
        embedmentM: given(works.embedmentM, works),
        footing: given(works.footing, works),
        footingDiameterM: works.footingDiameterM,
      };
    case 'post-swap':
      return { ...base, kind, wood: woodOf(works) };
    case 'steel-sleeve':
      return { ...base, kind, momentCapacityNm: given(works.momentCapacityNm, works) };
    case 'added-posts':
      return { ...base, kind, positionsM: given(works.positionsM, works), wood: woodOf(works) };
    case 'rebuild':
      return { ...base, kind, wood: woodOf(works), postSpacingM: works.postSpacingM };
  }
}
