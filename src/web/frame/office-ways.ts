/** How the office writes moments and money. */
export interface OfficeWays {
  readonly timeZone: string;
  /** Three letters: `USD`. */
  readonly currency: string;
}
