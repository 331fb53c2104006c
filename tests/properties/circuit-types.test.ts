/**
 * Each type of circuit by itself: builds at random do not fall outside the bounds of any account, and the builds that each
 * figure pushes outwards come up to them. Both are reckoned by the tests' own solver.
 */
import { describe, expect, test } from 'vitest';
import type { Account } from '../../src/ledger/account.js';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { hasPeaks } from '../../src/loads/branch-plan.js';
import { sized } from '../sizes.js';
import { CIRCUIT_TYPES } from './circuit-types.js';
import { projectOf } from './projects.js';
import { extremesOf } from './pushed.js';
import { readersOf } from './readers.js';
import { buildAtRandom, dice, reckon } from './reckoning.js';

const BUILDS = sized(200, 20_000);
/** Share of a bound that solvers may differ by, and what is nothing to any account: amperes, volts, watts, kelvins. */
const ROOM = 1e-6;
/**
 * The same for heat and volts: a corner leans all of a circuit one way, and what its own other side takes from the rail that
 * feeds both moves that by a tenth of a millivolt.
 */
const RAIL_ROOM = 2e-4;
const TRACE = 1e-7;
/** Share of a bound that the builds pushed outwards may fall short of it or go beyond. */
const NEAR = 1e-3;

const isAtLeast = (a: Account): boolean => a.direction === 'at-least';
/** Currents that are sums of what circuits take. */
const isCurrent = (a: Account): boolean => a.quantity === 'current' && !isAtLeast(a) && a.entries.length > 0;

describe.each(Object.entries(CIRCUIT_TYPES))('%s', (_, data) => {
  const project = projectOf({ modes: { working: { active: Object.keys(data['loads'] as object) } }, ...data });
  const all = project.modes[0]!.active;
  const readers = readersOf(
    project,
    ledgerOf(project, 'working').accounts.filter((a) => a.draw !== undefined),
  );

  test(`has no build among ${BUILDS} outside a bound that is judged`, () => {
    expect(readers.length).toBeGreaterThan(4);
    const random = dice(20261126);
    // What flows when something is off is read with it off.
    const states = [...new Set(readers.map(({ off }) => off.join()))];
    for (let n = 0; n < BUILDS; n++) {
      const build = buildAtRandom(random);
      for (const state of states) {
        const on = new Set([...all].filter((c) => !state.split(',').includes(c)));
        const reckoned = reckon(project, on, build);
        for (const { account, off, read } of readers) {
          if (off.join() !== state) continue;
          const { min, max } = account.draw!;
          const value = read(reckoned)!;
          const room = (isCurrent(account) ? ROOM : RAIL_ROOM) * Math.max(Math.abs(min), Math.abs(max)) + TRACE;
          if (isAtLeast(account) ? value < min - room : value > max + room)
            expect.fail(
              `${account.title}, ${account.quantity}: ${value} in build ${n}, where the ledger has ${min} to ${max}`,
            );
        }
      }
    }
  });

  test('has bounds of its currents that extreme builds reach', () => {
    // These builds have no peaks.
    const bursts = project.networks.some((n) => [...n.on, ...n.off].some((b) => b.members.some(hasPeaks)));
    const asked = readers.filter(
      ({ account, off, peaks }) => off.length === 0 && isCurrent(account) && !(bursts && peaks !== false),
    );
    const far = extremesOf(project, asked, all, 1 - NEAR).flatMap(({ high }, k) => {
      const { title, draw } = asked[k]!.account;
      return draw!.max < 1e-5 || Math.abs(high - draw!.max) <= NEAR * draw!.max ? [] : [{ title, high, draw }];
    });
    expect(far).toEqual([]);
  });
});
