/** A stored moment (ISO text in UTC) as a page shows it: `2027-05-31 14:05 UTC`. */
export const momentText = (iso: string): string => `${iso.slice(0, 10)} ${iso.slice(11, 16)} UTC`;
