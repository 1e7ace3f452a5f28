export type RecordTables = Record<never, never>;
