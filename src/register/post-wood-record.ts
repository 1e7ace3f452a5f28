import { z } from 'zod';
import type { PostSection } from '../capacity/post-section.ts';
import { GRADES, type Grade, SPECIES_KEYS, type Species } from '../capacity/wood-strength.ts';
import { TREATMENT_CLASS_KEYS, type TreatmentClass } from '../decay/treatment-class.ts';
import type { PostWood } from '../forecast/post-wood.ts';
import { RANGES } from './value-ranges.ts';
import { keySchema, type Refuse, rangedSchema } from './value-schemas.ts';

/** Schemas of what describes one post's material: shared by fences, single posts and works. */
export const woodShape = {
  sectionKind: z.enum(['rectangular', 'round']),
  /** Along the fence; the diameter where round [mm]. */
  sectionWidthMm: rangedSchema(RANGES.sectionMm),
  /** In the wind's direction [mm]; null where round. */
  sectionDepthMm: rangedSchema(RANGES.sectionMm).nullable(),
  species: keySchema<Species>(SPECIES_KEYS),
  grade: z.enum(GRADES),
  incised: z.boolean(),
  treatmentClass: keySchema<TreatmentClass>(TREATMENT_CLASS_KEYS),
  /** Moment the post carries where it does not rot [N m]; null for wood. */
  momentCapacityNm: rangedSchema(RANGES.momentCapacityNm).nullable(),
};

/** What describes one post's material, flat. */
export interface WoodFields {
  readonly sectionKind: 'rectangular' | 'round';
  readonly sectionWidthMm: number;
  readonly sectionDepthMm: number | null;
  readonly species: Species;
  readonly grade: Grade;
  readonly incised: boolean;
  readonly treatmentClass: TreatmentClass;
  readonly momentCapacityNm: number | null;
}

/** The section that the three flat fields describe. */
export const sectionOf = (
  fields: Pick<WoodFields, 'sectionKind' | 'sectionWidthMm' | 'sectionDepthMm'>,
): PostSection =>
  fields.sectionKind === 'round' || fields.sectionDepthMm === null
    ? { kind: 'round', diameterMm: fields.sectionWidthMm }
    : { kind: 'rectangular', widthMm: fields.sectionWidthMm, depthMm: fields.sectionDepthMm };

/** The flat fields of a section. */
export const sectionFields = (
  section: PostSection,
): Pick<WoodFields, 'sectionKind' | 'sectionWidthMm' | 'sectionDepthMm'> =>
  section.kind === 'round'
    ? { sectionKind: 'round', sectionWidthMm: section.diameterMm, sectionDepthMm: null }
    : { sectionKind: 'rectangular', sectionWidthMm: section.widthMm, sectionDepthMm: section.depthMm };

/** The wood of a post as the forecast takes it. */
export const postWood = (fields: WoodFields): PostWood => ({
  section: sectionOf(fields),
  species: fields.species,
  grade: fields.grade,
  incised: fields.incised,
  treatmentClass: fields.treatmentClass,
  momentCapacityNm: fields.momentCapacityNm,
});

const SPECIES_OF_CLASS: Partial<Record<TreatmentClass, readonly Species[]>> = {
  'redcedar-redwood-heartwood': ['western-redcedar', 'redwood'],
  'black-locust': ['black-locust'],
  'juniper-osage-orange': ['eastern-redcedar'],
  'untreated-douglas-fir': ['douglas-fir'],
  'untreated-hardwood': ['black-locust'],
  'round-pine-cca': ['southern-pine', 'ponderosa-pine'],
  'round-pine-penta': ['southern-pine', 'ponderosa-pine'],
  'round-pine-acza': ['southern-pine', 'ponderosa-pine'],
  'round-pine-creosote': ['southern-pine', 'ponderosa-pine'],
  'round-pine-copper-naphthenate': ['southern-pine', 'ponderosa-pine'],
};

/** Treats deep only when incised: the classes measured on southern pine flatter them. */
const REFRACTORY: readonly Species[] = ['douglas-fir', 'hem-fir', 'spruce-pine-fir'];
const SAWN_PINE_CLASSES: readonly TreatmentClass[] = ['ground-contact', 'heavy-duty', 'extreme-duty'];

/** Refuses a section, class, species, incising and moment capacity that contradict one another. */
export function refuseWood(wood: WoodFields, refuse: Refuse): void {
  const { treatmentClass, species, sectionKind, momentCapacityNm } = wood;
  if ((sectionKind === 'round') !== (wood.sectionDepthMm === null)) {
    refuse('sectionKind', 'a rectangular section has two sides, a round one a diameter');
  }
  if (treatmentClass === 'does-not-rot') {
    if (momentCapacityNm === null) {
      refuse('momentCapacityNm', 'missing; a post that does not rot needs the bending moment it carries');
    }
  } else if (momentCapacityNm !== null) {
    refuse(
      'momentCapacityNm',
      `a ${treatmentClass} post is wood and its moment follows from its section; leave it empty`,
    );
  }
  if (treatmentClass.startsWith('round-pine-') && sectionKind !== 'round') {
    refuse(
      'treatmentClass',
      `${treatmentClass} is a class of round posts and the section is sawn; correct one of them`,
    );
  }
  const allowed = SPECIES_OF_CLASS[treatmentClass];
  if (allowed && species !== 'unknown' && !allowed.includes(species)) {
    refuse(
      'treatmentClass',
      `${treatmentClass} does not go with ${species}; correct one of them (it goes with ${allowed.join(', ')} or unknown)`,
    );
  }
  if (treatmentClass === 'refractory-incised' && !wood.incised) {
    refuse('incised', 'refractory-incised says that the wood is incised; write yes, or choose refractory-unincised');
  }
  if (treatmentClass === 'refractory-unincised' && wood.incised) {
    refuse('incised', 'refractory-unincised says that the wood is not incised; write no, or choose refractory-incised');
  }
}

/** A doubt about class and species that is no contradiction; null where there is none. */
export function doubtfulWood(wood: Pick<WoodFields, 'treatmentClass' | 'species' | 'incised'>): string | null {
  if (!SAWN_PINE_CLASSES.includes(wood.treatmentClass) || !REFRACTORY.includes(wood.species)) return null;
  const better = wood.incised ? 'refractory-incised' : 'refractory-unincised';
  return `${wood.treatmentClass} is measured on southern pine and ${wood.species} takes preservative badly; ${better} is more honest`;
}
