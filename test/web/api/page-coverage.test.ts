import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ROUTE_ACCESS } from '../../../src/web/access/route-access.ts';

/** One line of the table of docs/api.md: a page's route, and the API's routes in its place or the reason why there are none. */
interface Covered {
  readonly page: string;
  readonly instead: readonly string[];
  readonly words: string;
}

const LEAST_REASON = 15;
const named = ({ method, path }: { readonly method: string; readonly path: string }): string =>
  // what a parameter must look like is no part of its name
  `${method} ${path.replaceAll(/\{[^/]*\}/g, '').replace(/^\/style-.*\.css$/, '/style-….css')}`;

/** The table of the page that says which route of the API stands for which of the pages. */
function covered(): readonly Covered[] {
  const text = readFileSync('docs/api.md', 'utf8');
  const [, table = ''] = text.split('| page | API |');
  return table
    .split('\n')
    .filter((line) => line.startsWith('| `'))
    .map((line) => {
      const [, page = '', words = ''] = line.split('|').map((cell) => cell.trim());
      return {
        page: page.replaceAll('`', ''),
        instead: [...words.matchAll(/`((?:GET|POST|PUT|PATCH) [^`?]+)[^`]*`/g)].map(([, route]) => route!),
        words,
      };
    });
}

/** The table as it would have to be, without the lines of some pages. */
const missing = (table: readonly Covered[]): readonly string[] => {
  const listed = new Set(table.map(({ page }) => page));
  return ROUTE_ACCESS.filter(({ who, path }) => who.includes('office') && !path.startsWith('/api/'))
    .map(named)
    .filter((page) => !listed.has(page));
};

describe('what the office can do on the pages', () => {
  const table = covered();

  it('is in the table of docs/api.md, route by route: done by the API, or left out for a reason', () => {
    expect(missing(table)).toEqual([]);
    expect(missing(table.filter(({ page }) => page !== 'POST /plan/give'))).toEqual(['POST /plan/give']);
  });

  it('is there once, and only where there is such a page', () => {
    const pages = table.map(({ page }) => page);
    expect(pages.filter((page, index) => pages.indexOf(page) !== index)).toEqual([]);
    const known = new Set(ROUTE_ACCESS.map(named));
    expect(pages.filter((page) => !known.has(page))).toEqual([]);
    expect(pages.length).toBeGreaterThan(90);
  });

  it('is done by routes that the API has, or has a reason that says something', () => {
    const known = new Set(ROUTE_ACCESS.filter(({ path }) => path.startsWith('/api/')).map(named));
    const unknown = table.flatMap(({ instead }) => instead.map((route) => route.replace(' /', ' /api/v1/')));
    expect(unknown.filter((route) => !known.has(route))).toEqual([]);
    const unsaid = table.filter(
      ({ instead, words }) => instead.length === 0 && !(words.startsWith('none: ') && words.length > LEAST_REASON),
    );
    expect(unsaid.map(({ page }) => page)).toEqual([]);
  });
});
