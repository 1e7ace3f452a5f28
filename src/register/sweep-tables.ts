export type SweepTables = Record<never, never>;
