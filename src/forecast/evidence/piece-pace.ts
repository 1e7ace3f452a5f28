/** The pace of a post that has been read: its own belief, given the pace of its fence. */
export interface PiecePace {
  /**
   * Quantiles of ln r of the post where its fence has a pace score [ln mm/a].
   * @param score pace score of the fence [-]
   * @param dateLevel level of the install date where it is known as a range, 0 to 1 [-]
   * @param levels probability levels wanted, ascending, each between 0 and 1
   */
  readonly logRates: (score: number, dateLevel: number, levels: readonly number[]) => readonly number[];
  /** Depth that rot is at least taken to have reached [mm], from the day it was last read on. */
  readonly floorFromDay: number;
  readonly floorMm: (dateLevel: number) => number;
}
