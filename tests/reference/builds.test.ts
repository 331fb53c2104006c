/** Builds at random against the simulator: every figure by its name, somewhere in its range. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { drawnBuilds, uncertainFigures } from '../../src/ledger/builds.js';
import { TYPICAL } from '../../src/ledger/corner.js';
import { solver } from '../../src/ledger/solver.js';
import { projectOf, projects } from '../properties/projects.js';
import { sized } from '../sizes.js';
import { compare } from './against-simulator.js';
import { figuresAt } from './corner-figures.js';
import type { Simulator } from './simulator.js';
import { simulator } from './simulator.js';

/** Share of a figure by which the two may differ, and amperes or volts. */
const SHARE = 1e-4;
const TRACE = 1e-6;

let engine: Simulator;
beforeAll(async () => {
  engine = await simulator();
});

test('a circuit simulator comes to the same in builds at random', { timeout: sized(120_000, 3_600_000) }, async () => {
  let count = 0;
  await fc.assert(
    fc.asyncProperty(projects(), fc.infiniteStream(fc.boolean()), fc.nat(), async (data, states, seed) => {
      const project = projectOf(data);
      const bench = solver(project);
      for (const build of drawnBuilds(uncertainFigures(project), 3, seed)) {
        const on = Uint8Array.from(project.circuits, (c) => (c.always || states.next().value ? 1 : 0));
        const s = bench.solveBuild({ mode: 'any', on }, { ...TYPICAL, build });
        for (const { what, told, simulated } of await compare(engine, s, figuresAt(project, build.share))) {
          count++;
          if (!(Math.abs(told - simulated) <= SHARE * Math.abs(simulated) + TRACE))
            expect.fail(`${what}: ${told}, where the simulator has ${simulated}`);
        }
      }
    }),
    { numRuns: sized(25, 500) },
  );
  expect(count).toBeGreaterThan(sized(1000, 20_000));
});
