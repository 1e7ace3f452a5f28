export const FOOTING_KINDS = ['concrete', 'soil', 'gravel'] as const;
/** How a post is set: in a concrete collar, or direct-buried in tamped soil or gravel. */
export type FootingKind = (typeof FOOTING_KINDS)[number];
