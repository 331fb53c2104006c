/**
 * The ledger's solutions against a circuit simulator, on which nobody here has any influence: of every account of a project
 * the solutions that its least, typical and most rest on.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { ledgerOf } from '../../src/ledger/ledger.js';
import type { Solution } from '../../src/ledger/solution.js';
import type { Project } from '../../src/project/project.js';
import { resolve } from '../../src/project/resolve.js';
import { readDocument } from '../../src/source/read.js';
import { projectOf, projects, withPlaces, withWires } from '../properties/projects.js';
import { sized } from '../sizes.js';
import { compare } from './against-simulator.js';
import type { Simulator } from './simulator.js';
import { simulator } from './simulator.js';

/** Share of a figure by which the two may differ, and amperes or volts. */
const SHARE = 1e-4;
const TRACE = 1e-6;

let engine: Simulator;
beforeAll(async () => {
  engine = await simulator();
});

/** The solutions behind a project's accounts, each once. */
function solutionsOf(project: Project): readonly Solution[] {
  const { accounts, runaway } = ledgerOf(project);
  return [
    ...new Set(
      [...accounts, ...runaway].flatMap((a) => {
        const { least, typical, most } = a.solutions();
        return [least, typical, most, ...a.limits.map((l) => l.solution)].flatMap((s) => s ?? []);
      }),
    ),
  ];
}

/** Holds every solution of a project against the simulator. @returns how many figures were compared */
async function hold(project: Project): Promise<number> {
  let count = 0;
  for (const s of solutionsOf(project))
    for (const { what, told, simulated } of await compare(engine, s)) {
      count++;
      if (!(Math.abs(told - simulated) <= SHARE * Math.abs(simulated) + TRACE))
        expect.fail(`${what}: ${told}, where the simulator has ${simulated}, ${JSON.stringify(s.corner)}`);
    }
  return count;
}

const SAMPLES = new URL('../../samples/', import.meta.url);
const names = readdirSync(SAMPLES).filter((f) => f.endsWith('.yaml'));

describe('a circuit simulator comes to the same', () => {
  test.each(names)('in every corner of the sample %s', async (name) => {
    const { document } = readDocument(readFileSync(new URL(name, SAMPLES), 'utf8'), name);
    const resolved = resolve(document!.data, name, builtIn);
    if ('problems' in resolved) throw new Error(JSON.stringify(resolved.problems));
    expect(await hold(resolved.project)).toBeGreaterThan(50);
  });

  test('in every corner of generated projects', { timeout: sized(120_000, 3_600_000) }, async () => {
    let count = 0;
    await fc.assert(
      fc.asyncProperty(projects({ without: ['staged'] }), fc.boolean(), fc.boolean(), async (data, wired, placed) => {
        const spread = placed ? withPlaces(data) : data;
        count += await hold(projectOf(wired ? withWires(spread) : spread));
      }),
      { numRuns: sized(10, 200) },
    );
    expect(count).toBeGreaterThan(6_000);
  });

  // Behind converters and cables the simulator does not find the rest of a base that is held to its emitter.
  test('in every corner of generated rows of stages', { timeout: sized(120_000, 3_600_000) }, async () => {
    let count = 0;
    const rows = projects({ only: ['staged'], most: 2, boards: ['usb', 'soft usb', 'barrel'] });
    await fc.assert(
      fc.asyncProperty(rows, async (data) => {
        count += await hold(projectOf(data));
      }),
      { numRuns: sized(6, 80) },
    );
    expect(count).toBeGreaterThan(1_300);
  });
});
