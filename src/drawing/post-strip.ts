import type { CheckedPost } from '../season/visit/check-list.ts';
import { CHART_FONT, CHART_PALETTE } from './chart-palette.ts';
import type { ChartLanguage } from './chart-words.ts';
import { svgElement } from './svg-element.ts';

const WIDTH_PX = 720;
const HEIGHT_PX = 76;
const MARGIN_PX = 16;
const TOP_PX = 10;
const GROUND_PX = 50;
const NUMBER_PX = 68;
/** Numbers of posts nearer than this to one that is written are left out. */
const NUMBER_ROOM_PX = 20;

interface DrawnPost {
  readonly post: CheckedPost;
  readonly x: number;
}

/** Posts whose numbers are written: those with works first, then the ends, then whatever has room. */
function numbered(posts: readonly DrawnPost[]): ReadonlySet<number> {
  const rank = ({ post }: DrawnPost, index: number): number =>
    post.todo.length > 0 ? 0 : index === 0 || index === posts.length - 1 ? 1 : 2;
  const inTurn = posts
    .map((drawn, index) => ({ drawn, rank: rank(drawn, index) }))
    .sort((a, b) => a.rank - b.rank || a.drawn.x - b.drawn.x);
  const taken: number[] = [];
  const chosen = new Set<number>();
  for (const { drawn } of inTurn) {
    if (taken.some((x) => Math.abs(x - drawn.x) < NUMBER_ROOM_PX)) continue;
    taken.push(drawn.x);
    chosen.add(drawn.post.number);
  }
  return chosen;
}

const isSetAnew = ({ todo }: CheckedPost): boolean => todo.includes('post-swap') || todo.includes('rebuild');

function postMarks({ post, x }: DrawnPost): readonly string[] {
  const { ink, muted, paper, snap } = CHART_PALETTE;
  const works = post.todo.length > 0;
  const anew = isSetAnew(post);
  const half = works ? 4.5 : 2.5;
  const foot = GROUND_PX + 6;
  const rect = (y: number, fill: string): string =>
    svgElement('rect', {
      x: x - half,
      y,
      width: 2 * half,
      height: foot - y,
      fill,
      stroke: works ? snap : muted,
      'stroke-width': 1.2,
    });
  const stroke = (width: number, colour: string): string =>
    svgElement('path', {
      d: `M${x - 8} ${TOP_PX + 8}l16 14m0 -14l-16 14`,
      stroke: colour,
      'stroke-width': width,
      fill: 'none',
    });
  return [
    rect(TOP_PX, anew ? snap : paper),
    ...(works && !anew ? [rect(GROUND_PX - 10, snap)] : []),
    ...(post.condition.broken ? [stroke(6, paper), stroke(2.4, ink)] : []),
  ];
}

const KEY = {
  en: {
    anew: 'Filled: set anew.',
    todo: 'Filled at the ground: something to do there.',
    added: 'Dashed: one post more.',
    broken: 'Crossed: broken.',
  },
  es: {
    anew: 'Lleno: se pone nuevo.',
    todo: 'Lleno a ras de suelo: ahí hay algo que hacer.',
    added: 'Punteado: un poste más.',
    broken: 'Tachado: roto.',
  },
} as const;

/** What the marks of a strip mean, as far as it has them. */
export function postStripKey(posts: readonly CheckedPost[], language: ChartLanguage = 'en'): string {
  const words = KEY[language];
  const some = (is: (post: CheckedPost) => boolean, text: string): readonly string[] => (posts.some(is) ? [text] : []);
  return [
    ...some(isSetAnew, words.anew),
    ...some((post) => post.todo.length > 0 && !isSetAnew(post), words.todo),
    ...some(({ newPostAfter }) => newPostAfter, words.added),
    ...some(({ condition }) => condition.broken, words.broken),
  ].join(' ');
}

/**
 * A fence seen from the side, its posts where they stand: filled where set anew, filled at the ground where something else is
 * done, crossed where broken, dashed where one more is set. As SVG.
 */
export function postStrip(posts: readonly CheckedPost[], label: string): string {
  const { ink, muted, paper, snap } = CHART_PALETTE;
  const ends = [posts[0]?.positionM ?? 0, posts.at(-1)?.positionM ?? 0] as const;
  const scale = (WIDTH_PX - 2 * MARGIN_PX) / Math.max(ends[1] - ends[0], 1e-6);
  const drawn = posts.map((post): DrawnPost => ({ post, x: MARGIN_PX + (post.positionM - ends[0]) * scale }));
  const shown = numbered(drawn);
  const line = (y: number, stroke: string, width: number): string =>
    svgElement('line', { x1: 0, x2: WIDTH_PX, y1: y, y2: y, stroke, 'stroke-width': width });
  const rail = (y: number): string =>
    svgElement('line', {
      x1: drawn[0]?.x ?? 0,
      x2: drawn.at(-1)?.x ?? 0,
      y1: y,
      y2: y,
      stroke: muted,
      'stroke-width': 1.2,
    });
  const added = drawn.flatMap(({ post, x }, index) => {
    const next = drawn[index + 1];
    if (!post.newPostAfter || !next) return [];
    const middle = (x + next.x) / 2;
    return [
      svgElement('rect', {
        x: middle - 4,
        y: TOP_PX,
        width: 8,
        height: GROUND_PX - TOP_PX + 6,
        fill: paper,
        stroke: snap,
        'stroke-width': 1.6,
        'stroke-dasharray': '3 2',
      }),
    ];
  });
  const numbers = drawn
    .filter(({ post }) => shown.has(post.number))
    .map(({ post, x }) =>
      svgElement(
        'text',
        {
          x,
          y: NUMBER_PX,
          'text-anchor': 'middle',
          'font-size': 13,
          'font-weight': post.todo.length > 0 ? 600 : 400,
          'font-family': CHART_FONT,
          fill: post.todo.length > 0 ? ink : muted,
        },
        [String(post.number)],
      ),
    );
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${WIDTH_PX} ${HEIGHT_PX}`,
      width: '100%',
      role: 'img',
      'aria-label': label,
    },
    [line(GROUND_PX, muted, 1), rail(20), rail(40), ...drawn.flatMap(postMarks), ...added, ...numbers],
  );
}
