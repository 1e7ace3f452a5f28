import type { PostOutlook } from '../forecast/post-outlook.ts';

/** A part of a run that is drawn in one row. Positions from end A [m]. */
export interface RunRow {
  readonly fromM: number;
  readonly toM: number;
  readonly posts: readonly PostOutlook[];
  /** True where the run goes on beyond that side of the row. */
  readonly openLeft: boolean;
  readonly openRight: boolean;
}

/** Posts nearer than this cannot be told apart [px]; rows are made so that the usual bay is wider. */
const LEAST_BAY_PX = 12;

/**
 * A run laid out in as few rows as leave its usual bay 12 px, broken in the middle of bays, all at one scale.
 * @param posts in the order of their positions, at least one
 * @param roomPx width of a row [px]
 * @returns the rows from end A on, and their scale [px/m]
 */
export function runRows(
  posts: readonly PostOutlook[],
  roomPx: number,
): { readonly rows: readonly RunRow[]; readonly pxPerM: number } {
  const first = posts[0]?.positionM ?? 0;
  const last = posts.at(-1)?.positionM ?? first;
  const lengthM = Math.max(last - first, 1e-3);
  const bayM = lengthM / Math.max(1, posts.length - 1);
  const perRow = Math.max(1, Math.floor(roomPx / LEAST_BAY_PX));
  const count = Math.max(1, Math.ceil((posts.length - 1) / perRow));
  const rows: RunRow[] = [];
  let start = 0;
  for (let row = 0; row < count && start < posts.length; row += 1) {
    const end = row === count - 1 ? posts.length : Math.max(start + 1, Math.round(((row + 1) * posts.length) / count));
    const members = posts.slice(start, end);
    const [before, after] = [posts[start - 1], posts[end]];
    const fromM = before ? (before.positionM + members[0]!.positionM) / 2 : first;
    const toM = after ? (members.at(-1)!.positionM + after.positionM) / 2 : last;
    rows.push({ fromM, toM, posts: members, openLeft: before !== undefined, openRight: after !== undefined });
    start = end;
  }
  const widest = Math.max(...rows.map(({ fromM, toM }) => toM - fromM), bayM / 2);
  return { rows, pxPerM: roomPx / widest };
}
