/** Dead supplies against the simulator: rails that float on what finds its way into them, and the same held at 0 V. */
import { beforeAll, expect, test } from 'vitest';
import { drawnBuilds, uncertainFigures } from '../../src/ledger/builds.js';
import { TYPICAL } from '../../src/ledger/corner.js';
import { solver } from '../../src/ledger/solver.js';
import { afloat } from '../../src/project/afloat.js';
import { resolve } from '../../src/project/resolve.js';
import { builtIn, read } from '../../src/index.js';
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

/** A strip, a sensor on a bus, a register and a link between chips, each half of them on the one supply, half on the other. */
const BESIDE = `ampledger: 1
title: t
supplies: { bench: { voltage: 5 V ±5 %, current: 5 A }, brick: { voltage: 5 V ±10 %, current: 2 A } }
controllers:
  main: { chip: atmega328p, supply: bench, draws: { active: 5 to 15 mA }, pins: { PC4: { pull-up: 4.7 kΩ ±5 % }, PC5: { pull-up: 10 kΩ ±5 % } } }
  other: { chip: atmega328p, supply: brick, draws: { active: 5 to 15 mA } }
expanders: { bar: { chip: 74hc595, supply: brick, control: { data: main.PB1, clock: main.PB2, latch: main.PB3 } } }
loads:
  strip: { type: pixels, count: 30, pin: main.PD6, supply: brick, full-each: 20 mA, idle-each: 0.5 to 1 mA, series: 330 Ω ±5 % }
  climate: { type: module, idle: 1 to 2 mA, active: 3 mA, supply: brick, signals: { sda: main.PC4, scl: main.PC5 } }
  lamp: { type: resistor, resistance: 220 Ω ±5 %, active: low, pin: main.PD5, supply: brick }
incoming: { link: { from: other.PD1, pin: main.PD2, series: 470 Ω ±5 % } }
`;

test.each(['bench', 'brick'])('a circuit simulator comes to the same where %s is dead', async (dead) => {
  const { document } = read(BESIDE, 't.yaml');
  const resolved = resolve(document!.data, 't.yaml', builtIn);
  if ('problems' in resolved) throw new Error(JSON.stringify(resolved.problems));
  const found = afloat(resolved.project, [dead])!;
  let count = 0;
  for (const project of [found.project, found.held]) {
    const bench = solver(project);
    for (const build of drawnBuilds(uncertainFigures(project), sized(1, 100), 7)) {
      const on = Uint8Array.from(project.circuits, (c) => (c.always || c.signal ? 1 : 0));
      const s = bench.solveBuild({ mode: 'dead', on }, { ...TYPICAL, build });
      for (const { what, told, simulated } of await compare(engine, s, figuresAt(project, build.share))) {
        count++;
        if (!(Math.abs(told - simulated) <= SHARE * Math.abs(simulated) + TRACE))
          expect.fail(`${what}: ${told}, where the simulator has ${simulated}`);
      }
    }
  }
  expect(count).toBeGreaterThan(50);
});
