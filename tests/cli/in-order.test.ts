import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inOrder } from '../../src/cli/in-order.js';

/** Runs tasks that end in the order in which `ranks` sorts them, as far as the window lets them begin. */
async function run(ranks: readonly number[], window: number) {
  const waiting = new Map<number, () => void>();
  const taken: number[] = [];
  const ended: number[] = [];
  let most = 0;
  const all = inOrder(
    ranks.length,
    window,
    (at) => new Promise<number>((done) => waiting.set(at, () => done(at))),
    (result, at) => {
      expect(result).toBe(at);
      taken.push(result);
      return Promise.resolve();
    },
  );
  // Each turn ends one task; wrong code must not keep it turning.
  for (let turns = 0; taken.length < ranks.length && turns < 3 * ranks.length; turns += 1) {
    most = Math.max(most, waiting.size + ended.length - taken.length);
    const [next] = [...waiting.keys()].sort((a, b) => ranks[a]! - ranks[b]!);
    if (next !== undefined) {
      waiting.get(next)!();
      waiting.delete(next);
      ended.push(next);
    }
    for (let turn = 0; turn < 5; turn += 1) await Promise.resolve();
  }
  if (taken.length === ranks.length) await all;
  return { taken, ended, most };
}

describe('many tasks at a time', () => {
  it('hand over in their order whichever ends first, and no more wait than the window has', async () => {
    const mixed = fc.record({
      ranks: fc.array(fc.double({ noNaN: true }), { maxLength: 40 }),
      window: fc.integer({ min: 1, max: 12 }),
    });
    await fc.assert(
      fc.asyncProperty(mixed, async ({ ranks, window }) => {
        const { taken, most } = await run(ranks, window);
        expect(taken).toEqual(ranks.map((_, at) => at));
        expect(most).toBeLessThanOrEqual(window);
      }),
      { seed: 20261126, numRuns: 60 },
    );
  });

  it('do end out of order', async () => {
    expect((await run([9, 8, 7, 6, 5, 4], 3)).ended.slice(0, 3)).toEqual([2, 1, 0]);
  });

  it('stop with the first that fails in their order, however many failed before it', async () => {
    const taken: number[] = [];
    const failing = inOrder(
      5,
      5,
      (at) => (at >= 2 ? Promise.reject(new Error(`task ${at}`)) : Promise.resolve(at)),
      async (at) => void taken.push(at),
    );
    await expect(failing).rejects.toThrow('task 2');
    expect(taken).toEqual([0, 1]);
  });
});
