const LEAST_COLUMNS = 60;
const MOST_COLUMNS = 110;

/** Characters a chart may take: as the terminal is wide, within what can be read. */
export const chartColumns = (columns: number): number => Math.min(MOST_COLUMNS, Math.max(LEAST_COLUMNS, columns));
