/** What the parent is told: one line as the service is up, then what each page took, as it is asked for. */
export type TimedServiceMessage =
  | { readonly kind: 'up'; readonly url: string }
  | {
      readonly kind: 'took';
      /** From the parsed request to the last byte given to the socket, by who asks and path [ms]. */
      readonly pages: Readonly<Record<string, readonly number[]>>;
      /** Fences that the sweep at work has done; null where none is at work. */
      readonly sweptSoFar: number | null;
      /** Processor time of all threads since the start [s]. */
      readonly cpuSeconds: number;
    };

/** Names who asks. */
export const READER_HEADER = 'x-reader';
