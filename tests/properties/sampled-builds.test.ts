/** Thousands of random builds of a few projects made by hand: none of their currents may lie outside the bounds. */
import { describe, expect, test } from 'vitest';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { sized } from '../sizes.js';
import { HAND_MADE } from './hand-made.js';
import { projectOf } from './projects.js';
import { readersOf } from './readers.js';
import { buildAtRandom, dice, reckon } from './reckoning.js';

const BUILDS = sized(1000, 20_000);
/** Share of the upper bound that solvers may differ by. */
const ROOM = 1e-6;
/** Amperes that are those of junctions that are off. */
const TRACE = 1e-7;

describe.each(Object.entries(HAND_MADE))('of %s', (_, data) => {
  test(`no build among ${BUILDS} has a current outside its account’s bounds`, () => {
    const project = projectOf({ ...data, modes: { working: { active: Object.keys(data['loads'] as object) } } });
    const on = new Set(project.circuits.map((c) => c.id));
    const accounts = ledgerOf(project, 'working').accounts.filter(
      (a) => a.draw && a.quantity === 'current' && a.entries.length > 0,
    );
    const readers = readersOf(project, accounts);
    expect(readers.length).toBeGreaterThan(10);
    const random = dice(20261125);
    const highest = readers.map(() => 0);
    for (let n = 0; n < BUILDS; n++) {
      const reckoned = reckon(project, on, buildAtRandom(random));
      readers.forEach(({ account, read }, k) => {
        const { min, max } = account.draw!;
        const amps = read(reckoned)!;
        highest[k] = Math.max(highest[k]!, amps / max);
        if (!(amps <= max * (1 + ROOM) + TRACE && amps >= min - ROOM * max - TRACE))
          expect.fail(
            `${account.id}, ${account.direction}: ${amps} A in build ${n}, where the ledger has ${min} to ${max} A`,
          );
      });
    }
    // Half of the figures of a build stand at an end, so that some of so many come near the bound.
    readers.forEach(({ account }, k) => {
      if (account.draw!.max > 1e-4) expect(highest[k], account.id).toBeGreaterThan(0.85);
    });
  });
});
