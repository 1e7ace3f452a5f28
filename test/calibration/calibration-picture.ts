import { RANKS, type RankCounts, UNKNOWNS } from './calibration-ranks.ts';
import { chiSquareTail, evenChiSquare } from './chi-square.ts';

const WIDTH = 860;
const PANEL = { width: 396, height: 190, left: 34, top: 40 } as const;
const BAND = 2.576;

const text = (x: number, y: number, words: string, size: number, anchor = 'start'): string =>
  `<text x="${x}" y="${y}" font-size="${size}" text-anchor="${anchor}" fill="#22303c">${words}</text>`;

/** Probability with which even ranks would be as uneven as these, as printed under each histogram. */
export const pText = (counts: readonly number[]): string =>
  `chi-square ${evenChiSquare(counts).toFixed(1)}, p = ${chiSquareTail(evenChiSquare(counts), RANKS - 1).toFixed(3)}`;

function panel(name: string, counts: readonly number[], x: number, y: number): string {
  const total = counts.reduce((a, b) => a + b);
  const even = total / RANKS;
  const spread = BAND * Math.sqrt(even * (1 - 1 / RANKS));
  const plotWidth = PANEL.width - PANEL.left - 10;
  const plotHeight = PANEL.height - PANEL.top - 26;
  const highest = Math.max(...counts, even + spread) * 1.08;
  const at = (count: number): number => y + PANEL.top + plotHeight * (1 - count / highest);
  const step = plotWidth / RANKS;
  const bars = counts.map((count, rank) => {
    const left = x + PANEL.left + rank * step;
    return `<rect x="${(left + 1).toFixed(1)}" y="${at(count).toFixed(1)}" width="${(step - 2).toFixed(1)}" height="${(y + PANEL.top + plotHeight - at(count)).toFixed(1)}" fill="#5b7f95"/>`;
  });
  const [low, high] = [at(even - spread), at(even + spread)];
  const right = x + PANEL.left + plotWidth;
  return [
    text(x + PANEL.left, y + 18, name, 15),
    text(right, y + 18, pText(counts), 12, 'end'),
    `<rect x="${x + PANEL.left}" y="${high.toFixed(1)}" width="${plotWidth}" height="${(low - high).toFixed(1)}" fill="#d9c9a3" opacity="0.55"/>`,
    ...bars,
    `<line x1="${x + PANEL.left}" x2="${right}" y1="${at(even).toFixed(1)}" y2="${at(even).toFixed(1)}" stroke="#22303c" stroke-width="1.2" stroke-dasharray="5 4"/>`,
    text(x + PANEL.left - 6, at(even) + 4, even.toFixed(0), 11, 'end'),
    text(x + PANEL.left, y + PANEL.height - 10, 'truth lowest', 11),
    text(right, y + PANEL.height - 10, 'truth highest', 11, 'end'),
  ].join('');
}

/** Rank histograms of the four unknowns as SVG: bars, the even count, and the band that holds 99 bars in 100. */
export function calibrationPicture(counts: RankCounts): string {
  const panels = UNKNOWNS.map((unknown, index) =>
    panel(
      unknown,
      counts[unknown],
      14 + (index % 2) * (PANEL.width + 28),
      44 + Math.floor(index / 2) * (PANEL.height + 14),
    ),
  );
  const height = 44 + 2 * (PANEL.height + 14) + 8;
  const total = counts.pace.reduce((a, b) => a + b);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" font-family="Source Sans 3, sans-serif" role="img">`,
    `<title>Rank of the true value among 19 draws from the belief, ${total} made-up fences</title>`,
    `<rect width="${WIDTH}" height="${height}" fill="#fbfaf6"/>`,
    text(
      14,
      26,
      `Rank of the true value among 19 draws from the belief, ${total.toLocaleString('en-US')} made-up fences`,
      16,
    ),
    ...panels,
    '</svg>',
  ].join('\n');
}
