/** Which file of a repository is which when its name changed: the one whose lines are for the most part the same. */

interface File {
  readonly file: string;
  readonly text: string;
}

/** Of two texts at least so much is the same, as a share of both. */
const LIKE = 0.5;

/** Pairs that are looked at; where more files come and go, only those are found that are the same in all. */
const MOST_PAIRS = 10_000;

/** Former names by those of now: those that are likest first, of equals the first by name. */
export function movedFiles(gone: readonly File[], fresh: readonly File[]): ReadonlyMap<string, string> {
  const isMany = gone.length * fresh.length > MOST_PAIRS;
  const [was, is] = [gone, fresh].map((files) => files.map((each) => ({ ...each, lines: linesOf(each.text) })));
  const likest = is!
    .flatMap((now) =>
      was!.map((old) => ({
        file: now.file,
        from: old.file,
        likeness: old.text === now.text ? 1 : isMany ? 0 : likeness(old.lines, now.lines),
      })),
    )
    .filter((each) => each.likeness >= LIKE)
    .sort((a, b) => b.likeness - a.likeness || (a.file + a.from < b.file + b.from ? -1 : 1));
  const moved = new Map<string, string>();
  const taken = new Set<string>();
  for (const { file, from } of likest) {
    if (moved.has(file) || taken.has(from)) continue;
    moved.set(file, from);
    taken.add(from);
  }
  return moved;
}

/** How often each line stands there; blank ones say nothing. */
function linesOf(text: string): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const line of text.split(/\r?\n/)) {
    const words = line.trim();
    if (words !== '') counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  return counts;
}

/** Twice the lines that both have, of the lines of both. */
function likeness(one: ReadonlyMap<string, number>, other: ReadonlyMap<string, number>): number {
  const size = (lines: ReadonlyMap<string, number>): number =>
    [...lines.values()].reduce((sum, count) => sum + count, 0);
  const common = [...one].reduce((sum, [line, count]) => sum + Math.min(count, other.get(line) ?? 0), 0);
  return (2 * common) / Math.max(1, size(one) + size(other));
}
