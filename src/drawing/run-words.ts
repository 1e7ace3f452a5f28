import type { PostOutlook } from '../forecast/post-outlook.ts';
import type { ChartLanguage } from './chart-words.ts';
import { lengthText } from './quantity-text.ts';
import type { DisplayUnits } from './speed-text.ts';
import { postNumbersText } from './what-if-words.ts';

/** A fence as a run of posts, with what its forecast says of them. Speeds [m/s]. */
export interface RunView {
  readonly fenceRef: string;
  readonly runLengthM: number;
  readonly designGustMps: number;
  /** In the order of their positions; each with the moment of season 1. */
  readonly posts: readonly PostOutlook[];
  /** Numbers of the posts that decide the speed it is judged by. */
  readonly decidingPosts: readonly number[];
}

/** What is marked at a post, the most pressing first. */
export const RUN_MARKS = ['closed off', 'broken', 'leaning', 'cracked collar', 'hollow', 'short', 'decides'] as const;
export type RunMark = (typeof RUN_MARKS)[number];

/** Every word that the drawing of a run shows. */
export interface RunWords {
  readonly title: (ref: string) => string;
  /** After the numbers of the posts, for one post and for several. */
  readonly marks: Readonly<Record<RunMark, readonly [one: string, several: string]>>;
  readonly key: Readonly<Record<RunMark, string>>;
  readonly note: string;
  readonly nothing: string;
  readonly run: (length: string, posts: number) => string;
}

const EN: RunWords = {
  title: (ref) => `The posts of fence ${ref} where they stand along its run`,
  marks: {
    'closed off': ['closed off', 'closed off'],
    broken: ['broken', 'broken'],
    leaning: ['leaning', 'leaning'],
    'cracked collar': ['collar cracked', 'collars cracked'],
    hollow: ['hollow', 'hollow'],
    short: ['short', 'short'],
    decides: ['decides', 'decide'],
  },
  key: {
    'closed off': 'Barred: closed off, keep away.',
    broken: 'Snapped and crossed: broken.',
    leaning: 'Slanting: found leaning.',
    'cracked collar': 'Jagged line in the ground: its collar is cracked.',
    hollow: 'Ring at the ground: hollow.',
    short: 'Filled: snaps below the design gust.',
    decides: 'Wedge below the ground: its snap speed is the one the fence is judged by.',
  },
  note: 'Along the run to scale, the named end on the left; heights and posts are drawn larger than they are.',
  nothing: 'Nothing was found at its posts, and none is short.',
  run: (length, posts) => `${posts} posts on ${length}.`,
};

const ES: RunWords = {
  title: (ref) => `Los postes de la cerca ${ref} donde están a lo largo del tramo`,
  marks: {
    'closed off': ['acordonado', 'acordonados'],
    broken: ['roto', 'rotos'],
    leaning: ['inclinado', 'inclinados'],
    'cracked collar': ['collar agrietado', 'collares agrietados'],
    hollow: ['hueco', 'huecos'],
    short: ['insuficiente', 'insuficientes'],
    decides: ['decide', 'deciden'],
  },
  key: {
    'closed off': 'Con barras: acordonado, no acercarse.',
    broken: 'Partido y tachado: roto.',
    leaning: 'Ladeado: se encontró inclinado.',
    'cracked collar': 'Línea quebrada en el suelo: su collar está agrietado.',
    hollow: 'Anillo a ras de suelo: hueco.',
    short: 'Relleno: se rompe por debajo de la ráfaga de diseño.',
    decides: 'Cuña bajo el suelo: por su velocidad de rotura se juzga la cerca.',
  },
  note: 'A escala a lo largo del tramo, el extremo con nombre a la izquierda; las alturas y los postes se dibujan más grandes de lo que son.',
  nothing: 'No se encontró nada en sus postes y ninguno es insuficiente.',
  run: (length, posts) => `${posts} postes en ${length}.`,
};

const WORDS: Readonly<Record<ChartLanguage, RunWords>> = { en: EN, es: ES };

/** The words of the drawing of a run in one language. */
export const runWords = (language: ChartLanguage): RunWords => WORDS[language];

/** What is marked at one post of a run, the most pressing first; a broken post is not called short as well. */
export function marksOf(post: PostOutlook, view: Pick<RunView, 'designGustMps' | 'decidingPosts'>): readonly RunMark[] {
  const { broken, leaning, closedOff, collarCracked } = post.condition;
  const first = post.moments.find(({ season }) => season === 1);
  const is: Readonly<Record<RunMark, boolean>> = {
    'closed off': closedOff,
    broken,
    leaning,
    'cracked collar': collarCracked,
    hollow: post.condition.cavityDiameterMm > 0,
    short: !broken && first !== undefined && first.snapMps.p50 < view.designGustMps,
    decides: view.decidingPosts.includes(post.number),
  };
  return RUN_MARKS.filter((mark) => is[mark]);
}

/** A mark with the posts that have it next to one another, as they stand along the run. */
export interface MarkedStretch {
  readonly mark: RunMark;
  readonly posts: readonly PostOutlook[];
  readonly text: string;
}

/** The marks of posts that stand in a row, posts side by side with the same mark told together. */
export function markedStretches(
  posts: readonly PostOutlook[],
  view: Pick<RunView, 'designGustMps' | 'decidingPosts'>,
  language: ChartLanguage,
): readonly MarkedStretch[] {
  const words = WORDS[language];
  const marks = posts.map((post) => marksOf(post, view));
  return RUN_MARKS.flatMap((mark) => {
    const stretches: PostOutlook[][] = [];
    for (const [index, post] of posts.entries()) {
      if (!marks[index]!.includes(mark)) continue;
      const goesOn = index > 0 && marks[index - 1]!.includes(mark);
      if (goesOn) stretches.at(-1)!.push(post);
      else stretches.push([post]);
    }
    return stretches.map((stretch): MarkedStretch => {
      const numbers = stretch.map(({ number }) => number).sort((a, b) => a - b);
      const [one, several] = words.marks[mark];
      return { mark, posts: stretch, text: `${postNumbersText(numbers)} ${numbers.length === 1 ? one : several}` };
    });
  });
}

/** The text alternative of the drawing of a run: its posts, and everything that is marked. */
export function runSummary(
  view: RunView,
  options: { readonly units: DisplayUnits; readonly language: ChartLanguage },
): string {
  const words = WORDS[options.language];
  const marked = markedStretches(view.posts, view, options.language);
  const found = marked.some(({ mark }) => mark !== 'decides') ? [] : [words.nothing];
  return [
    words.run(lengthText(view.runLengthM, options.units), view.posts.length),
    ...found,
    ...(marked.length === 0 ? [] : [`${marked.map(({ text }) => text).join('; ')}.`]),
  ].join(' ');
}
