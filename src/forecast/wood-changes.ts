import type { PostSection } from '../capacity/post-section.ts';
import type { Grade } from '../capacity/wood-strength.ts';
import type { TreatmentClass } from '../decay/treatment-class.ts';
import { inchesFromMm } from '../units/length.ts';
import {
  changedByStep,
  changedEitherWay,
  type InputChange,
  sameText,
  shortNumber,
  type ValueText,
} from './input-change.ts';
import type { FenceState } from './post-state.ts';
import type { PostWood } from './post-wood.ts';
import { type SensitivityCase, withPosts } from './sensitivity-case.ts';

/** Treatment classes that a use category, or a durability class, apart: the lighter before the heavier. */
const TREATMENT_STEPS: readonly (readonly (readonly [key: TreatmentClass, name: string])[])[] = [
  [
    ['above-ground-stock', 'above-ground stock'],
    ['ground-contact', 'ground contact'],
    ['heavy-duty', 'heavy duty'],
    ['extreme-duty', 'extreme duty'],
  ],
  [
    ['refractory-unincised', 'not incised'],
    ['refractory-incised', 'incised'],
  ],
  [
    ['heartwood-class-4', 'class 4'],
    ['heartwood-class-3', 'class 3'],
    ['heartwood-class-2', 'class 2'],
    ['heartwood-class-1', 'class 1'],
  ],
];

const GRADE_STEPS: readonly (readonly [grade: Grade, name: string])[] = [
  ['no-3', 'No.3'],
  ['no-2', 'No.2'],
  ['no-1', 'No.1'],
];

/** The wood that most posts have. */
function usualWood(state: FenceState): PostWood {
  const counts = new Map<string, { readonly wood: PostWood; count: number }>();
  for (const { wood } of state.posts) {
    const key = JSON.stringify(wood);
    const known = counts.get(key);
    if (known) known.count += 1;
    else counts.set(key, { wood, count: 1 });
  }
  return [...counts.values()].reduce((most, each) => (each.count > most.count ? each : most)).wood;
}

const grownSection = (section: PostSection, byMm: number): PostSection =>
  section.kind === 'round'
    ? { ...section, diameterMm: section.diameterMm + byMm }
    : { ...section, widthMm: section.widthMm + byMm, depthMm: section.depthMm + byMm };

/** A section as its sides: `3.38 × 3.38 in`. */
function sectionText(section: PostSection): ValueText {
  const sides = section.kind === 'round' ? [section.diameterMm] : [section.widthMm, section.depthMm];
  const joined = (side: (mm: number) => string): string => sides.map(side).join(' × ');
  return {
    us: `${joined((mm) => shortNumber(inchesFromMm(mm), 2))} in`,
    metric: `${joined((mm) => shortNumber(mm, 0))} mm`,
  };
}

/**
 * The wood that most posts have, off in its section by so much a side, in its treatment class and its grade by a step; posts
 * of another wood stay as they are.
 * @param errors each side of the section [mm]
 */
export function woodChanges(at: SensitivityCase, errors: { readonly sectionMm: number }): readonly InputChange[] {
  const wood = usualWood(at.state);
  const key = JSON.stringify(wood);
  const withWood = (change: Partial<PostWood>): SensitivityCase =>
    withPosts(at, (post) => (JSON.stringify(post.wood) === key ? { ...post, wood: { ...wood, ...change } } : post));
  const steps = TREATMENT_STEPS.find((row) => row.some(([treatment]) => treatment === wood.treatmentClass));
  const grade = wood.grade === 'unknown' ? 'no-2' : wood.grade;
  return [
    changedEitherWay('section', (sign) => {
      const section = grownSection(wood.section, sign * errors.sectionMm);
      return { label: sectionText(section), at: withWood({ section }) };
    }),
    ...(steps
      ? [
          changedByStep(
            'treatment class',
            steps,
            ([treatment]) => treatment === wood.treatmentClass,
            ([treatmentClass, name]) => ({ label: sameText(name), at: withWood({ treatmentClass }) }),
          ),
        ]
      : []),
    changedByStep(
      'grade',
      GRADE_STEPS,
      ([step]) => step === grade,
      ([step, name]) => ({ label: sameText(name), at: withWood({ grade: step }) }),
    ),
  ];
}
