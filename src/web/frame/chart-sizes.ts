/** The chart is drawn for wide, middling (paper too) and narrow pages, so that its letters keep their size; the style sheet shows one. */
export const CHART_SIZES = [
  { name: 'wide', widthPx: 1080, heightPx: 460 },
  { name: 'middle', widthPx: 680, heightPx: 420 },
  { name: 'narrow', widthPx: 358, heightPx: 360 },
] as const;
