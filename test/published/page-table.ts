/** A Markdown table. */
export const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');

/** A number to so many significant digits, without trailing zeros. */
export const digits = (value: number, count: number): string => String(Number(value.toPrecision(count)));

/** How many different values there are. */
export const distinct = (values: readonly string[]): number => new Set(values).size;
