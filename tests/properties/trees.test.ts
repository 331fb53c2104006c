/**
 * Supply trees: no build that is drawn at random, or has every figure at an end of its range, falls outside what the ledger
 * says of an account, sources joined by diodes included; and the ends come near what was sampled.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawnBuilds, uncertainFigures } from '../../src/ledger/builds.js';
import type { Build } from '../../src/ledger/builds.js';
import { TYPICAL } from '../../src/ledger/corner.js';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { sized } from '../sizes.js';
import { projectOf } from './projects.js';
import { trees } from './trees.js';

const BUILDS = sized(40, 400);
/** Share of a figure: what the drop of somebody else's diode does to a shared source's own resistance. */
const ROOM = 1e-5;
const TRACE = 1e-7;
/** Kelvins that are nothing: what the rest of a project takes moves the input of an idle regulator by millivolts. */
const WARMTH = 5e-3;

/** The same figures pushed to the nearer end of their range. */
const pushed = ({ share }: Build): Build => ({ share: (figure) => Math.round(share(figure)) });

test('builds of supply trees stay inside the bounds', { timeout: sized(120_000, 3_600_000) }, () => {
  let compared = 0;
  fc.assert(
    fc.property(trees(14), (data) => {
      const project = projectOf(data);
      const { accounts, solver } = ledgerOf(project);
      const builds = [...drawnBuilds(uncertainFigures(project), BUILDS, 7)].flatMap((b) => [b, pushed(b)]);
      const moment = { mode: 'all', on: solver.resting };
      const solutions = builds.map((build) => solver.solveBuild(moment, { ...TYPICAL, build }));
      for (const a of accounts) {
        const sampling = a.sampling();
        if (sampling === undefined || sampling.peak || a.draw === undefined) continue;
        for (const s of solutions) {
          const got = sampling.read(s);
          if (got === undefined) continue;
          compared++;
          const room = ROOM * Math.max(Math.abs(got), 1e-3) + (a.quantity === 'temperature' ? WARMTH : TRACE);
          if (got < a.draw.min - room || got > a.draw.max + room)
            expect.fail(`${a.id}, ${a.quantity}, ${a.direction}: ${got} is outside ${a.draw.min} to ${a.draw.max}`);
        }
      }
    }),
    { numRuns: sized(60, 2000), seed: 3 },
  );
  expect(compared).toBeGreaterThan(20_000);
});
