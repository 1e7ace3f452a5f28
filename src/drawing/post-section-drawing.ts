import { postBreadthMm } from '../capacity/post-section.ts';
import { NO_LOSS } from '../capacity/section-properties.ts';
import type { PostMoment, PostOutlook } from '../forecast/post-outlook.ts';
import { CHART_FONT, CHART_PALETTE } from './chart-palette.ts';
import type { ChartLanguage } from './chart-words.ts';
import { lossAt, momentLines, type PostSectionWords, postSectionWords } from './post-section-words.ts';
import { type SoundCore, soundCore } from './sound-core.ts';
import type { DisplayUnits } from './speed-text.ts';
import { escapeXml, svgElement } from './svg-element.ts';
import { wrapText } from './text-width.ts';

/** How a post's section is drawn. */
export interface PostSectionOptions {
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
  /** Width of the picture [px], 300 or more. */
  readonly widthPx: number;
  /** Prefix of the ids inside, where one page holds several drawings. */
  readonly idPrefix?: string;
}

const SIDE_PX = 8;
const GAP_PX = 14;
const TOP_PX = 16;
const LINE_PX = 16;
/** The wider side of a post is drawn no wider than this [px]. */
const LARGEST_PX = 150;
/** Room around the post as set for a sleeve [px]. */
const SLEEVE_PX = 7;

/** One panel of the drawing: a moment with its middle and the scale all panels share. */
interface Panel {
  readonly post: PostOutlook;
  readonly moment: PostMoment;
  readonly x: number;
  readonly y: number;
  readonly pxPerMm: number;
}

type Paint = Readonly<Record<string, string | number>>;

/** A core as an SVG element at the panel's scale; empty where nothing is left. */
function coreShape(panel: Panel, core: SoundCore, paint: Paint): readonly string[] {
  const { x, y, pxPerMm } = panel;
  if (core.kind === 'nothing') return [];
  if (core.kind === 'circle') {
    return [
      svgElement('circle', {
        cx: x + core.x * pxPerMm,
        cy: y + core.y * pxPerMm,
        r: core.radius * pxPerMm,
        ...paint,
      }),
    ];
  }
  return [
    svgElement('rect', {
      x: x + core.x * pxPerMm,
      y: y + core.y * pxPerMm,
      width: core.width * pxPerMm,
      height: core.height * pxPerMm,
      ...paint,
    }),
  ];
}

const middleOf = (core: SoundCore): { readonly x: number; readonly y: number } =>
  core.kind === 'rectangle' ? { x: core.x + core.width / 2, y: core.y + core.height / 2 } : { x: 0, y: 0, ...core };

function sleeve(panel: Panel): readonly string[] {
  const { post, x, y, pxPerMm } = panel;
  if (!post.sleeved) return [];
  const paint = { class: 'ps-sleeve', fill: 'none', stroke: CHART_PALETTE.ink, 'stroke-width': 2 };
  if (post.section.kind === 'round') {
    const r = (post.section.diameterMm / 2) * pxPerMm + SLEEVE_PX - 2;
    return [svgElement('circle', { cx: x, cy: y, r, ...paint })];
  }
  const width = post.section.widthMm * pxPerMm + 2 * SLEEVE_PX - 4;
  const height = post.section.depthMm * pxPerMm + 2 * SLEEVE_PX - 4;
  return [svgElement('rect', { x: x - width / 2, y: y - height / 2, width, height, ...paint })];
}

function cavity(panel: Panel, core: SoundCore): readonly string[] {
  const { moment, x, y, pxPerMm } = panel;
  if (moment.cavityDiameterMm === 0 || core.kind === 'nothing') return [];
  const middle = middleOf(core);
  const halfMm = core.kind === 'circle' ? core.radius : Math.min(core.width, core.height) / 2;
  return [
    svgElement('circle', {
      class: 'ps-cavity',
      cx: x + middle.x * pxPerMm,
      cy: y + middle.y * pxPerMm,
      r: Math.min(moment.cavityDiameterMm / 2, halfMm) * pxPerMm,
      fill: CHART_PALETTE.paper,
      stroke: CHART_PALETTE.ink,
      'stroke-dasharray': '3 2',
    }),
  ];
}

/** A broken post is crossed out. */
function crossed(panel: Panel): readonly string[] {
  const { post, moment, x, y, pxPerMm } = panel;
  if (!post.condition.broken || moment.season !== 1) return [];
  const half = (postBreadthMm(post.section) / 2) * pxPerMm;
  return [
    svgElement('path', {
      class: 'ps-crossed',
      d: `M${(x - half).toFixed(2)} ${(y - half).toFixed(2)}l${(2 * half).toFixed(2)} ${(2 * half).toFixed(2)}m0 ${(-2 * half).toFixed(2)}l${(-2 * half).toFixed(2)} ${(2 * half).toFixed(2)}`,
      stroke: CHART_PALETTE.ink,
      'stroke-width': 2.5,
      fill: 'none',
    }),
  ];
}

function panelShapes(panel: Panel, rotFill: string): readonly string[] {
  const { post, moment } = panel;
  const core = (end: 'p10' | 'p50' | 'p90'): SoundCore => soundCore(post.section, lossAt(moment, end));
  const asSet = soundCore(post.section, NO_LOSS);
  const { snap, ink, muted, paper } = CHART_PALETTE;
  const outline = { class: 'ps-built', fill: 'none', stroke: muted, 'stroke-width': 1.2 };
  if (!post.rots) return coreShape(panel, asSet, { class: 'ps-solid', fill: snap, stroke: ink });
  return [
    ...coreShape(panel, asSet, { class: 'ps-clear', fill: paper }),
    ...coreShape(panel, asSet, { class: 'ps-rot', fill: rotFill }),
    ...coreShape(panel, asSet, outline),
    ...coreShape(panel, core('p10'), { class: 'ps-clear', fill: paper }),
    ...coreShape(panel, core('p10'), { class: 'ps-likely', fill: snap, 'fill-opacity': '0.2' }),
    ...coreShape(panel, core('p50'), { class: 'ps-likely', fill: snap, 'fill-opacity': '0.3' }),
    ...coreShape(panel, core('p90'), { class: 'ps-sound', fill: snap, 'fill-opacity': '0.75' }),
    ...coreShape(panel, core('p50'), { class: 'ps-middle', fill: 'none', stroke: ink, 'stroke-width': 2.2 }),
    ...cavity(panel, core('p50')),
    ...sleeve(panel),
    ...crossed(panel),
  ];
}

const headingOf = (moment: PostMoment, words: PostSectionWords): string =>
  `${moment.label}, ${moment.season === 1 ? words.now : words.inSeasons(moment.season - 1)}`;

/** What the drawing's marks mean, as far as it has them. */
function noteOf(post: PostOutlook, words: PostSectionWords): string {
  const has = (is: boolean, text: string): readonly string[] => (is ? [text] : []);
  if (!post.rots) return words.doesNotRot;
  return [
    words.note,
    ...has(
      post.moments.some(({ oneFaceMm }) => oneFaceMm > 0),
      words.cut,
    ),
    ...has(
      post.moments.some(({ cavityDiameterMm }) => cavityDiameterMm > 0),
      words.hollow,
    ),
    ...has(post.sleeved, words.sleeved),
  ].join(' ');
}

/** The text alternative of the drawing: every moment in words. */
export function postSectionSummary(post: PostOutlook, options: Pick<PostSectionOptions, 'units' | 'language'>): string {
  const words = postSectionWords(options.language);
  return post.moments
    .map((moment) => `${headingOf(moment, words)}: ${momentLines(post, moment, options).join(', ')}.`)
    .join(' ');
}

/**
 * A post cut through at the groundline, to scale, at each of its moments side by side: the post as set, the sound wood as wide as
 * it is in 1, 5 and 9 cases of 10, the rotted shell around it, a cut into one face, a cavity, a sleeve. As a complete SVG
 * document; the same post and options give the same bytes. Empty where the post has no moments.
 */
export function drawPostSections(post: PostOutlook, options: PostSectionOptions): string {
  const { widthPx, language } = options;
  const { moments } = post;
  if (moments.length === 0) return '';
  const words = postSectionWords(language);
  const prefix = options.idPrefix ?? 'post-section';
  const fontPx = widthPx < 520 ? 12.5 : 14;
  const panelPx = (widthPx - 2 * SIDE_PX - GAP_PX * (moments.length - 1)) / moments.length;
  const breadthMm = postBreadthMm(post.section);
  const breadthPx = Math.min(LARGEST_PX, panelPx - 2 * SLEEVE_PX);
  const pxPerMm = breadthPx / breadthMm;
  const tallPx = (post.section.kind === 'round' ? post.section.diameterMm : post.section.depthMm) * pxPerMm;
  const labels = moments.map((moment) => [
    ...wrapText(headingOf(moment, words), fontPx, panelPx * 0.96).map((text) => ({ text, heavy: true })),
    ...momentLines(post, moment, options).flatMap((line) =>
      wrapText(line, fontPx, panelPx).map((text) => ({ text, heavy: false })),
    ),
  ]);
  const labelTop = TOP_PX + SLEEVE_PX * 2 + tallPx + 20;
  const labelLines = Math.max(...labels.map(({ length }) => length));
  const note = wrapText(noteOf(post, words), fontPx - 1, widthPx - 2 * SIDE_PX);
  const noteTop = labelTop + labelLines * LINE_PX + 10;
  const heightPx = Math.ceil(noteTop + note.length * LINE_PX);
  const panels = moments.map(
    (moment, index): Panel => ({
      post,
      moment,
      x: SIDE_PX + index * (panelPx + GAP_PX) + panelPx / 2,
      y: TOP_PX + SLEEVE_PX + tallPx / 2,
      pxPerMm,
    }),
  );
  const text = (content: string, x: number, y: number, heavy: boolean, anchor: 'middle' | 'start'): string =>
    svgElement(
      'text',
      {
        class: heavy ? 'fy-ink-text' : 'fy-muted-text',
        x,
        y,
        'text-anchor': anchor,
        'font-size': anchor === 'start' ? fontPx - 1 : fontPx,
        'font-weight': heavy ? 600 : 400,
        fill: heavy ? CHART_PALETTE.ink : CHART_PALETTE.muted,
      },
      [escapeXml(content)],
    );
  const rotId = `${prefix}-rot`;
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'post-sections',
      viewBox: `0 0 ${widthPx} ${heightPx}`,
      width: widthPx,
      height: heightPx,
      role: 'img',
      'aria-labelledby': `${prefix}-title ${prefix}-desc`,
      'font-family': CHART_FONT,
    },
    [
      svgElement('title', { id: `${prefix}-title` }, [escapeXml(words.title(post.number))]),
      svgElement('desc', { id: `${prefix}-desc` }, [escapeXml(postSectionSummary(post, options))]),
      svgElement('defs', {}, [
        svgElement('pattern', { id: rotId, width: 5, height: 5, patternUnits: 'userSpaceOnUse' }, [
          svgElement('circle', { class: 'ps-dot', cx: 1.5, cy: 1.5, r: 1.1, fill: CHART_PALETTE.lean }),
        ]),
      ]),
      svgElement('rect', { class: 'fy-paper', width: widthPx, height: heightPx, fill: CHART_PALETTE.paper }),
      ...panels.flatMap((panel) => panelShapes(panel, `url(#${rotId})`)),
      ...panels.flatMap(({ x }, index) =>
        (labels[index] ?? []).map((label, line) =>
          text(label.text, x, labelTop + line * LINE_PX, label.heavy, 'middle'),
        ),
      ),
      ...note.map((content, line) => text(content, SIDE_PX, noteTop + line * LINE_PX, false, 'start')),
    ],
  );
}
