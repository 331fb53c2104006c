/** Before firmware runs, and while each supply is dead, every project comes to rest, and every circuit on a pin does something. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bootBooks } from '../../src/ledger/boot.js';
import { wrongStraps } from '../../src/ledger/straps.js';
import { waysIntoAll, whileDead } from '../../src/ledger/without.js';
import { sized } from '../sizes.js';
import { projectOf, projects, withLines } from './projects.js';

test('the states in which no firmware runs are solved, whatever the project', () => {
  fc.assert(
    fc.property(projects({}), fc.boolean(), (data, lined) => {
      const project = projectOf(lined ? withLines(data) : data);
      const { circuits, accounts } = bootBooks(project);
      expect(new Set(circuits.map((c) => c.circuit)).size).toBe(circuits.length);
      for (const { draw } of accounts) if (draw) expect(draw.max).toBeGreaterThanOrEqual(draw.min);
      for (const { dead } of whileDead(project)) expect(dead.length).toBeGreaterThan(0);
      const { lifted, pushed } = waysIntoAll(project);
      for (const { usual, most: highest, steps } of lifted) {
        expect(usual.max).toBeGreaterThanOrEqual(usual.min);
        expect(highest).toBeGreaterThanOrEqual(usual.max);
        // Nothing that lives stands higher, and what comes in goes out through what hangs there.
        const most = Math.max(...project.nodes.map((n) => n.volts?.max ?? 0));
        expect(highest).toBeLessThanOrEqual(most);
        expect(steps.at(-1)!.gives[0]).toBeCloseTo(highest, 9);
      }
      for (const { account } of pushed) expect(account.draw!.max).toBeGreaterThanOrEqual(account.draw!.min);
      for (const { stands } of wrongStraps(project)) if (stands) expect(Number.isFinite(stands.volts)).toBe(true);
    }),
    { numRuns: sized(40, 500), seed: 20261126 },
  );
});
