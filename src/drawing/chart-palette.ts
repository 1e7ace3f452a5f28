/**
 * Ink of the charts on paper. Snap and lean differ in lightness, weight and dash as well as in hue, so that they stay
 * apart in grey print and for every kind of colour sight. Pages override these by class for a dark ground.
 */
export const CHART_PALETTE = {
  paper: '#ffffff',
  ink: '#1f2a33',
  muted: '#56626c',
  grid: '#e3e6e8',
  snap: '#26476a',
  ends: '#5d7690',
  lean: '#8a5a1c',
  leanBand: '#c99a52',
} as const;

/** Font stack of the charts: the open font that ships with the program, then the system's. */
export const CHART_FONT = "'Source Sans 3', 'Source Sans Pro', 'Segoe UI', Roboto, sans-serif";
