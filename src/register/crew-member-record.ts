import { z } from 'zod';
import { RANGES } from './value-ranges.ts';
import { daySchema, rangedSchema, refSchema, refuseInto, requiredTextSchema, textSchema } from './value-schemas.ts';

/** What the law or the works may ask of somebody in the crew. */
const CREW_SKILLS = ['licensed-applicator', 'inspector'] as const;
export type CrewSkill = (typeof CREW_SKILLS)[number];

const SKILLS_REASON = `not a list of skills; write any of ${CREW_SKILLS.join(', ')}, parted by blanks`;
const wordsOf = (text: string): readonly string[] => text.split(' ').filter((word) => word !== '');

/** Somebody of a crew: hours a week, languages, skills, and from when to when. */
export const crewMemberSchema = z
  .object({
    ref: refSchema,
    crewRef: refSchema,
    name: requiredTextSchema(200),
    hoursPerWeek: rangedSchema(RANGES.hoursPerWeek),
    languages: textSchema(200),
    skills: textSchema(200).refine(
      (text) => wordsOf(text).every((word) => CREW_SKILLS.includes(word as CrewSkill)),
      SKILLS_REASON,
    ),
    fromDay: daySchema.nullable(),
    toDay: daySchema.nullable(),
  })
  .superRefine(({ fromDay, toDay }, context) => {
    if (fromDay !== null && toDay !== null && toDay < fromDay) {
      refuseInto(context)('toDay', 'before the first day; write the later day last');
    }
  });

export type CrewMemberRecord = Readonly<z.infer<typeof crewMemberSchema>>;

/** The skills of a member. */
export const skillsOf = ({ skills }: Pick<CrewMemberRecord, 'skills'>): readonly CrewSkill[] =>
  wordsOf(skills) as readonly CrewSkill[];

/** The languages of a member, as written. */
export const languagesOf = ({ languages }: Pick<CrewMemberRecord, 'languages'>): readonly string[] =>
  wordsOf(languages);
