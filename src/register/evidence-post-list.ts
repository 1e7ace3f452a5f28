/** Numbers in ascending order, with runs of three and more as ranges: `1-4, 6, 9, 10`. */
function postList(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const runs: number[][] = [];
  for (const number of sorted) {
    const run = runs.at(-1);
    if (run && run.at(-1) === number - 1) run.push(number);
    else runs.push([number]);
  }
  return runs.map((run) => (run.length < 3 ? run.join(', ') : `${run[0]}-${run.at(-1)}`)).join(', ');
}

/** The posts of those numbers: `post 5`, `posts 2-4, 7`. */
export const namedPosts = (numbers: readonly number[]): string =>
  `${numbers.length === 1 ? 'post' : 'posts'} ${postList(numbers)}`;

/** The numbers that a fence's posts have: `post 1`, `posts 1 to 11`. */
export const numberedTo = (last: number): string => (last === 1 ? 'post 1' : `posts 1 to ${last}`);
