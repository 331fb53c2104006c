/** More letters than this no key or name has; longer words are not compared, so that a huge one costs nothing. */
const longest = 64;

/**
 * The known word that is nearest to `word`, or undefined when none is near.
 * Near is: as many slips as a third of the longer word's letters, at least one. Upper and lower case are the same.
 */
export function nearestSpelling(word: string, known: Iterable<string>): string | undefined {
  if (word.length > longest) return undefined;
  const wanted = word.toLowerCase();
  let best: string | undefined;
  let fewest = Infinity;
  for (const candidate of known) {
    if (candidate.length > longest) continue;
    const slips = distance(wanted, candidate.toLowerCase());
    const allowed = Math.max(1, Math.floor(Math.max(word.length, candidate.length) / 3));
    // Of equally near words the one that holds what was typed: `13` is a slip for `D13` rather than for `D3`.
    const holds = candidate.toLowerCase().endsWith(wanted);
    if (slips <= allowed && (slips < fewest || (slips === fewest && holds))) [best, fewest] = [candidate, slips];
  }
  return best;
}

/**
 * Slips between two words: letters missing, added or changed, and neighbours swapped, each counted once
 * (the restricted edit distance of Damerau and Levenshtein).
 */
export function distance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, beforeLast[j - 2]! + 1);
      row.push(least);
    }
    [beforeLast, last] = [last, row];
  }
  return last[b.length]!;
}
