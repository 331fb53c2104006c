/** Parts of a page of bounded length: what matters most gets its room first, and what has none is counted. */

export interface Part {
  /** Parts of a smaller rank get room first. */
  readonly rank: number;
  /** What stands before its lines and after them; none of it without any. */
  readonly open: string;
  readonly lines: readonly string[];
  readonly close: string;
  /** What a line is: 'accounts'. */
  readonly what: string;
}

/** A comment on a change holds some 65 000 characters. */
export const MOST_CHARACTERS = 60_000;

/** Kept free for what is said of that which is left out. */
const RESERVE = 600;

export function sheet(head: string, parts: readonly Part[], most = MOST_CHARACTERS): string {
  let room = most - RESERVE - head.length;
  const shown = new Map<Part, number>();
  const left = new Map<string, number>();
  for (const part of [...parts].sort((a, b) => a.rank - b.rank)) {
    if (part.lines.length === 0) continue;
    let rest = room - part.open.length - part.close.length - 6;
    let count = 0;
    for (const line of part.lines) {
      if (line.length + 1 > rest) break;
      rest -= line.length + 1;
      count += 1;
    }
    // Whatever weighs less waits behind what was cut, so that nothing stands without its heading.
    room = count < part.lines.length ? 0 : rest;
    shown.set(part, count);
    const missing = part.lines.length - count;
    if (missing > 0) left.set(part.what, (left.get(part.what) ?? 0) + missing);
  }
  const told = parts.flatMap((part) => {
    const count = shown.get(part) ?? 0;
    return count === 0
      ? []
      : [`${part.open}\n${part.lines.slice(0, count).join('\n')}${part.close === '' ? '' : `\n${part.close}`}`];
  });
  const missing = [...left].map(([what, count]) => `${count} ${what}`).join(', ');
  const cut =
    missing === ''
      ? []
      : [`_Left out, since a comment holds no more: ${missing}. The command in a terminal shows them with \`--all\`._`];
  return [head, ...told, ...cut].map((each) => each.trimEnd()).join('\n\n') + '\n';
}
