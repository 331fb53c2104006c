/**
 * Builds that each figure pushes outwards, against the bounds: for every account the figures are tried one by one at both
 * ends, and all put where they push it furthest. What random builds hardly ever reach, these do: they must not fall outside
 * the bounds, and they have to come up to them.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Account } from '../../src/ledger/account.js';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { sized } from '../sizes.js';
import { projectOf, projects } from './projects.js';
import { extremesOf } from './pushed.js';
import { readersOf } from './readers.js';

/**
 * Shares of the upper bound that an extreme build may lie beyond the bounds. A corner leans what is in question one way and
 * all the rest the other: what of the rest moves a rail by millivolts the same way is left out, and so is what hangs beside a
 * part on its own pin, a pull-up or a pull-down. The most seen is a thousandth at the upper end. The lower end is judged by
 * nothing.
 */
const BEYOND = { upper: 2e-3, lower: 5e-3 };
/** Share of a bound that extreme builds may fall short of it: in them one figure holds for all pins of a chip, asked about or not. */
const SHORT = 1e-2;
/** Amperes below which nothing is compared. */
const TRACE = 1e-5;

/** Sums of currents and the currents of circuits, without peaks. */
const isCurrent = (a: Account): boolean =>
  a.quantity === 'current' && a.direction !== 'at-least' && a.entries.length > 0;

describe('the bounds of a current', () => {
  // A pin that circuits of two rails share answers to both: such a build pulls them apart, which no corner does.
  const files = fc.oneof(
    projects({
      most: 4,
      without: ['motor', 'switched', 'starting', 'shown', 'shared'],
      boards: ['usb', 'soft usb', 'barrel'],
    }),
    projects({
      most: 4,
      without: ['motor', 'switched', 'starting', 'shown', 'shared', 'lit'],
      boards: ['rp2040'],
    }),
  );
  test('are not passed by builds that each figure pushes outwards, and nearly reached by them', () => {
    let compared = 0;
    fc.assert(
      fc.property(files, (data) => {
        const project = projectOf({ ...data, modes: { working: { active: Object.keys(data['loads'] as object) } } });
        const on = new Set(project.circuits.map((c) => c.id));
        const accounts = ledgerOf(project, 'working').accounts.filter((a) => a.draw !== undefined && isCurrent(a));
        // A stage that conducts while its load is off is asked in that state, which no build with all on has.
        const readers = readersOf(project, accounts).filter((r) => r.off.length === 0);
        extremesOf(project, readers, on, 1 - SHORT).forEach(({ low, high }, k) => {
          const { id, draw } = readers[k]!.account;
          if (draw!.max < TRACE) return;
          compared++;
          expect(high, `${id}, highest`).toBeLessThanOrEqual(draw!.max * (1 + BEYOND.upper));
          expect(low, `${id}, lowest`).toBeGreaterThanOrEqual(draw!.min - BEYOND.lower * draw!.max);
          expect(high, `${id}, highest`).toBeGreaterThanOrEqual(draw!.max * (1 - SHORT));
        });
      }),
      { numRuns: sized(25, 400) },
    );
    expect(compared).toBeGreaterThan(sized(150, 2400));
  });
});
