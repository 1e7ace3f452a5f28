/** Post numbers with their runs joined: `1, 3–5`. */
export function numberRanges(numbers: readonly number[]): string {
  const parts: string[] = [];
  const sorted = numbers.toSorted((a, b) => a - b);
  for (let start = 0; start < sorted.length; ) {
    let end = start;
    while (sorted[end + 1] === (sorted[end] ?? 0) + 1) end += 1;
    parts.push(end - start > 1 ? `${sorted[start]}–${sorted[end]}` : sorted.slice(start, end + 1).join(', '));
    start = end + 1;
  }
  return parts.join(', ');
}
