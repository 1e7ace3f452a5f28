/** Last bay shorter than this share of the spacing is joined to the one before it [-]; judgement. */
const SHORTEST_BAY_SHARE = 0.05;

/**
 * Positions of the posts of a run from end A [m]: full bays from end A, what is left over as the last bay, a post at
 * either end. A left-over under a twentieth of the spacing makes no bay of its own.
 * @param runLengthM length of the run [m], > 0
 * @param spacingM post spacing [m], > 0
 * @returns at least two positions, ascending, first 0, last the run length
 * Source: how runs are set out, common practice, no source.
 */
export function generatePostPositions(runLengthM: number, spacingM: number): readonly number[] {
  const bays = Math.max(1, Math.ceil(runLengthM / spacingM - SHORTEST_BAY_SHARE));
  return Array.from({ length: bays + 1 }, (_, index) => (index === bays ? runLengthM : index * spacingM));
}
