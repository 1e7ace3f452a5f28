import type { FenceForecast, SeasonForecast } from './fence-forecast.ts';

/** A tree of plain values: what a season forecast is made of. */
type Leaf = string | number | boolean | null | readonly number[];
type Tree = { readonly [key: string]: Leaf | Tree };

const isTree = (value: Leaf | Tree): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Column: one value a season, or `same` where every season has the same. */
type Column = { readonly same: Leaf } | { readonly each: readonly Leaf[] };

function flatten(tree: Tree, prefix: string, into: Map<string, Leaf>): void {
  for (const [key, value] of Object.entries(tree)) {
    if (isTree(value)) flatten(value, `${prefix}${key}.`, into);
    else into.set(`${prefix}${key}`, value);
  }
}

function toColumns(seasons: readonly SeasonForecast[]): Record<string, Column> {
  const rows = seasons.map((season) => {
    const leaves = new Map<string, Leaf>();
    flatten(season as unknown as Tree, '', leaves);
    return leaves;
  });
  const names = [...new Set(rows.flatMap((row) => [...row.keys()]))].sort();
  const columns: Record<string, Column> = {};
  for (const name of names) {
    // A group that is null in one season has no leaves there: undefined, written as a gap.
    const values = rows.map((row) => row.get(name));
    const texts = values.map((value) => JSON.stringify(value));
    const same = texts.every((text) => text !== undefined && text === texts[0]);
    columns[name] = same
      ? { same: values[0]! }
      : { each: values.map((value) => (value === undefined ? 'gap' : value)) };
  }
  return columns;
}

function fromColumns(columns: Readonly<Record<string, Column>>, count: number): readonly SeasonForecast[] {
  return Array.from({ length: count }, (_, row) => {
    const season: Record<string, unknown> = {};
    for (const [name, column] of Object.entries(columns)) {
      const value = 'same' in column ? column.same : column.each[row];
      if (value === 'gap') continue;
      const path = name.split('.');
      const last = path.pop()!;
      let at = season;
      for (const key of path) {
        at[key] ??= {};
        at = at[key] as Record<string, unknown>;
      }
      at[last] = value;
    }
    return season as unknown as SeasonForecast;
  });
}

/**
 * A forecast as compact text: seasons by column, constant columns once. Same forecast, same bytes.
 * `decodeForecast` gives the forecast back, equal in every value.
 */
export function encodeForecast(forecast: FenceForecast): string {
  const { seasons, ...rest } = forecast;
  return JSON.stringify({ ...rest, seasonCount: seasons.length, columns: toColumns(seasons) });
}

/** The forecast that `encodeForecast` wrote. Throws SyntaxError where the text is not JSON. */
export function decodeForecast(text: string): FenceForecast {
  const { seasonCount, columns, ...rest } = JSON.parse(text) as Omit<FenceForecast, 'seasons'> & {
    readonly seasonCount: number;
    readonly columns: Readonly<Record<string, Column>>;
  };
  return { ...rest, seasons: fromColumns(columns, seasonCount) };
}
