import type { PostSection } from '../capacity/post-section.ts';
import type { Grade, Species } from '../capacity/wood-strength.ts';
import type { TreatmentClass } from '../decay/treatment-class.ts';

/** The wood (or other material) of one post. */
export interface PostWood {
  readonly section: PostSection;
  readonly species: Species;
  readonly grade: Grade;
  readonly incised: boolean;
  readonly treatmentClass: TreatmentClass;
  /** Bending moment the post carries where it does not rot (steel, concrete, composite) [N m]; null for wood. */
  readonly momentCapacityNm: number | null;
}
