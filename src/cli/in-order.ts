/** Many tasks at a time, and what they give one after the other. */

/**
 * Runs tasks 0 to `count` − 1 and hands over what they give in their order, whichever is done first. No more than `window` are
 * begun and not handed over yet, so that what waits for a slow one is bounded.
 */
export async function inOrder<T>(
  count: number,
  window: number,
  run: (at: number) => Promise<T>,
  take: (result: T, at: number) => Promise<void>,
): Promise<void> {
  const begun: Promise<T>[] = [];
  let next = 0;
  for (let at = 0; at < count; at += 1) {
    while (next < Math.min(count, at + window)) {
      const task = run(next);
      // Whoever waits for it hears of a failure; until then it is no unhandled one.
      task.catch(() => {});
      begun.push(task);
      next += 1;
    }
    const first = begun.shift();
    if (first !== undefined) await take(await first, at);
  }
}
