/** A point of the picture [px], y downwards. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A rectangle of the picture [px]. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
