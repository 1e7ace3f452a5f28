import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROUTE_ACCESS } from '../../../src/web/access/route-access.ts';
import { demoInSpanish, type SpanishReader } from './demo-in-spanish.ts';
import { englishLeft, ownWords, readOut } from './english-left.ts';

/** How many pages of one route are read; of a fence's page all, for each tells of something else. */
const MOST_OF_A_ROUTE = 5;
const MOST_FENCE_PAGES = 100;
/** Routes that give no page to read, or none while the register is in use. */
const NO_PAGE =
  /^\/$|^\/(icon|fonts|feed|crew-worker|crew-script|healthz|readyz|demo|setup|sign-in|api|owner\/:token\/unsubscribe)|\.(json|csv|pdf|css)|:file|photos/;

type Demo = Awaited<ReturnType<typeof demoInSpanish>>;

let demo: Demo;
let own: readonly string[];
beforeAll(async () => {
  demo = await demoInSpanish();
  own = await ownWords(demo.register);
}, 120_000);
afterAll(() => demo.close());

/** The route of the table that an address belongs to. */
const ROUTES = ROUTE_ACCESS.filter(({ method, path }) => method === 'GET' && !NO_PAGE.test(path)).map((route) => ({
  ...route,
  matches: new RegExp(`^${route.path.replace(/:\w+(?:\{[^/]*\})?/g, '[^/]+')}$`),
}));
const routeOf = (path: string): (typeof ROUTES)[number] | undefined =>
  ROUTES.find(({ matches }) => matches.test(path.split('?')[0] ?? ''));

const linksOf = (html: string): readonly string[] =>
  [...html.matchAll(/href="(\/[^"#]*)/g)]
    .map(([, href]) => (href ?? '').replaceAll('&amp;', '&'))
    .filter((href) => !/lang=en|\.(?:json|pdf|csv|css|svg)(?:$|\?)/.test(href));

/** Reads whatever a reader comes to from link to link, and tells what is English on it, by page. */
async function walk({ cookie, paths, who }: SpanishReader) {
  const queue = [...paths];
  const seen = new Set(queue);
  const readOf = new Map<string, number>();
  const english = new Map<string, string>();
  for (let path = queue.shift(); path !== undefined; path = queue.shift()) {
    const route = routeOf(path);
    const read = readOf.get(route?.path ?? '') ?? 0;
    // a crew reads the same of a fence as the board
    const most = route?.path === '/fences/:name' && who === 'board' ? MOST_FENCE_PAGES : MOST_OF_A_ROUTE;
    if (!route?.who.includes(who) || read >= most) continue;
    readOf.set(route.path, read + 1);
    const response = await demo.pages.request(path, { headers: cookie ? { cookie } : {} });
    expect(response.status, path).toBe(200);
    const html = await response.text();
    expect(html.slice(0, 200), path).toContain('<html lang="es">');
    for (const text of englishLeft(html, own)) if (!english.has(text)) english.set(text, path);
    for (const link of linksOf(html)) {
      if (seen.has(link)) continue;
      seen.add(link);
      queue.push(link);
    }
  }
  const unread = ROUTES.filter((route) => route.who.includes(who) && !readOf.has(route.path)).map(({ path }) => path);
  return { english: [...english].map(([text, path]) => `${path}: ${text}`), unread };
}

describe('whoever reads Spanish meets no English', { timeout: 300_000 }, () => {
  it.each(['board', 'crew', 'owner link'] as const)('as %s, on every page that links lead to', async (who) => {
    const unread: string[][] = [];
    for (const reader of demo.readers.filter((each) => each.who === who)) {
      const walked = await walk(reader);
      expect(walked.english).toEqual([]);
      unread.push(walked.unread);
    }
    const never = unread[0]!.filter((path) => unread.every((each) => each.includes(path)));
    expect(never).toEqual([]);
  });
});

describe('a page that says what went wrong', () => {
  it.each([
    ['board', '/fences/NOPE', 404],
    ['board', '/fences/CT-01/reasons?season=1900', 404],
    ['board', '/fences/NOPE/report', 404],
    ['board', '/fences/CT-01/evidence?on=tomorrow', 400],
    ['board', '/fences/CT-01/evidence?on=2099-01-01', 404],
    ['board', '/fences/CT-01/evidence?on=1950-01-01', 404],
    ['board', '/board/nowhere/years.csv', 404],
    ['board', '/brief', 403],
    ['board', '/nothing-here', 404],
    ['crew', '/today/visits/NOPE', 404],
    ['crew', '/sheets/gulf/2030-01-01', 404],
    ['crew', '/fences/CT-01/evidence', 403],
  ] as const)('speaks Spanish to a %s at %s', async (who, path, status) => {
    const { cookie } = demo.readers.find((each) => each.who === who)!;
    const response = await demo.pages.request(path, { headers: { cookie: cookie ?? '' } });
    expect(response.status).toBe(status);
    const html = await response.text();
    expect(html).toContain('<html lang="es">');
    expect(englishLeft(html, own)).toEqual([]);
  });
});

describe('what finds English', () => {
  it('finds it in text, in what is read out and in drawings', () => {
    const page =
      '<p>Cerca <b>and more</b></p><svg><desc>the years ahead</desc></svg><td data-label="Snap speed">1</td><img alt="a fence">';
    expect(englishLeft(page, [])).toEqual(['and more', 'the years ahead', 'Snap speed', 'a fence']);
  });

  it('lets words of the register’s own pass, as a whole and nowhere inside others', () => {
    expect(englishLeft('<p>Nota: Runs behind the shed</p>', ['Runs behind the shed'])).toEqual([]);
    expect(englishLeft('<p>with the shed, tratamiento</p>', ['en', 'shed'])).toEqual(['with the shed, tratamiento']);
  });

  it('passes over styles, scripts, code and what says that it is in English', () => {
    expect(readOut('<style>a the b</style><a lang="en" href="/">the same</a><code>stormpale sweep</code>Sí')).toEqual([
      'Sí',
    ]);
  });
});
