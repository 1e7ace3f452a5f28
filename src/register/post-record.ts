import { z } from 'zod';
import type { InstallDate, PostOverride } from '../forecast/fence-facts.ts';
import { postWood, type WoodFields, woodShape } from './post-wood-record.ts';
import { RANGES } from './value-ranges.ts';
import { daySchema, rangedSchema, refSchema, refuseInto, wholeSchema } from './value-schemas.ts';

/** One post where it differs from its fence. Null: as the fence has it. */
export const postSchema = z
  .object({
    fenceRef: refSchema,
    number: wholeSchema(RANGES.postNumber),
    positionM: rangedSchema(RANGES.positionM).nullable(),
    installedEarliest: daySchema.nullable(),
    installedLatest: daySchema.nullable(),
    sectionKind: woodShape.sectionKind.nullable(),
    sectionWidthMm: woodShape.sectionWidthMm.nullable(),
    sectionDepthMm: woodShape.sectionDepthMm,
    species: woodShape.species.nullable(),
    grade: woodShape.grade.nullable(),
    incised: woodShape.incised.nullable(),
    treatmentClass: woodShape.treatmentClass.nullable(),
    momentCapacityNm: woodShape.momentCapacityNm,
    sharedFenceRef: refSchema.nullable(),
    sharedEnd: z.enum(['A', 'B']).nullable(),
  })
  .superRefine((post, context) => {
    const refuse = refuseInto(context);
    if (Object.entries(post).every(([key, value]) => key === 'fenceRef' || key === 'number' || value === null)) {
      refuse('number', 'nothing on this row differs from the fence; fill in what does, or leave the row out');
    }
    if ((post.sharedFenceRef === null) !== (post.sharedEnd === null)) {
      const key = post.sharedEnd === null ? 'sharedEnd' : 'sharedFenceRef';
      refuse(key, 'missing; a shared corner names the other fence and which of its ends, A or B, meets here');
    }
    if (post.sharedFenceRef === post.fenceRef) {
      refuse('sharedFenceRef', 'a fence cannot share a corner with itself; name the other fence');
    }
    if (
      post.installedEarliest !== null &&
      post.installedLatest !== null &&
      post.installedEarliest > post.installedLatest
    ) {
      refuse('installedEarliest', 'the range ends before it begins; write the earlier date first');
    }
  });

export type PostRecord = Readonly<z.infer<typeof postSchema>>;

const WOOD_KEYS = ['sectionKind', 'species', 'grade', 'incised', 'treatmentClass', 'momentCapacityNm'] as const;

/** The material of a post, what it leaves out taken from its fence; null where it leaves out everything. */
export function overriddenWood(post: PostRecord, fence: WoodFields): WoodFields | null {
  if (WOOD_KEYS.every((key) => post[key] === null)) return null;
  const section = post.sectionKind === null || post.sectionWidthMm === null ? fence : post;
  return {
    sectionKind: section.sectionKind ?? fence.sectionKind,
    sectionWidthMm: section.sectionWidthMm ?? fence.sectionWidthMm,
    sectionDepthMm: section.sectionDepthMm,
    species: post.species ?? fence.species,
    grade: post.grade ?? fence.grade,
    incised: post.incised ?? fence.incised,
    treatmentClass: post.treatmentClass ?? fence.treatmentClass,
    // A post with a class of its own never takes over the moment of a fence of another material.
    momentCapacityNm: post.momentCapacityNm ?? (post.treatmentClass === null ? fence.momentCapacityNm : null),
  };
}

/** What the forecast takes from a post's record; the run it shares is for the caller to find. */
export function postOverride(post: PostRecord, fence: WoodFields, sharedRun: PostOverride['sharedRun']): PostOverride {
  const wood = overriddenWood(post, fence);
  const installed: InstallDate | null =
    post.installedEarliest === null || post.installedLatest === null
      ? null
      : { earliest: post.installedEarliest, latest: post.installedLatest };
  return {
    number: post.number,
    positionM: post.positionM,
    installed,
    wood: wood && postWood(wood),
    sharedRun,
  };
}
