function editDistance(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const current = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const swap = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(swap, previous[j]! + 1, current[j - 1]! + 1));
    }
    previous = current;
  }
  return previous[b.length]!;
}

/** The known name that takes the fewest changed letters; null where even that one is nothing like it. */
export function nearestName(name: string, known: Iterable<string>): string | null {
  let best: string | null = null;
  let fewest = Math.max(2, Math.floor(name.length / 2)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - name.length) >= fewest) continue;
    const distance = editDistance(name.toLowerCase(), candidate.toLowerCase());
    if (distance < fewest) {
      fewest = distance;
      best = candidate;
    }
  }
  return best;
}
