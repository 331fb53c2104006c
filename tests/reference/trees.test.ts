/** Supply trees of up to 60 nodes against a circuit simulator: every link's current and every node's voltage. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { TYPICAL } from '../../src/ledger/corner.js';
import type { Corner } from '../../src/ledger/corner.js';
import { solver } from '../../src/ledger/solver.js';
import { projectOf } from '../properties/projects.js';
import { trees } from '../properties/trees.js';
import { sized } from '../sizes.js';
import { compare } from './against-simulator.js';
import type { Simulator } from './simulator.js';
import { simulator } from './simulator.js';

/** Share of a figure by which the two may differ, and amperes or volts. */
const SHARE = 1e-4;
const TRACE = 1e-6;

const CORNERS: readonly Corner[] = [
  TYPICAL,
  {
    ...TYPICAL,
    ambient: 'cold',
    sources: 'high',
    outputs: 'high',
    losses: 'low',
    load: 'high',
    control: 'high',
    rest: 'high',
  },
  {
    ...TYPICAL,
    ambient: 'hot',
    sources: 'low',
    outputs: 'low',
    losses: 'high',
    load: 'high',
    control: 'high',
    rest: 'high',
  },
  {
    ...TYPICAL,
    ambient: 'hot',
    sources: 'high',
    outputs: 'low',
    losses: 'low',
    load: 'low',
    control: 'low',
    rest: 'low',
  },
];

let engine: Simulator;
beforeAll(async () => {
  engine = await simulator();
});

test(
  'trees of up to 60 nodes come to rest where a circuit simulator has them',
  { timeout: sized(120_000, 3_600_000) },
  async () => {
    let count = 0;
    let largest = 0;
    await fc.assert(
      fc.asyncProperty(trees(57), async (data) => {
        const project = projectOf(data);
        const bench = solver(project);
        const moment = { mode: 'all', on: bench.resting };
        largest = Math.max(largest, project.nodes.length);
        for (const corner of CORNERS) {
          const s = bench.solve({ moment, corner, focus: bench.nobody });
          for (const { what, told, simulated } of await compare(engine, s)) {
            count++;
            if (!(Math.abs(told - simulated) <= SHARE * Math.abs(simulated) + TRACE))
              expect.fail(`${what}: ${told}, where the simulator has ${simulated}, ${JSON.stringify(corner)}`);
          }
        }
      }),
      { numRuns: sized(30, 600), seed: 60 },
    );
    expect(count).toBeGreaterThan(3000);
    expect(largest).toBeGreaterThan(30);
  },
);
