/**
 * Sampled builds against the bounds: each build is reckoned a second time, by a solver of the tests' own, and no account may
 * fall outside what the ledger says of it.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Account } from '../../src/ledger/account.js';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { together } from '../../src/ledger/moments.js';
import type { Project } from '../../src/project/project.js';
import { sized } from '../sizes.js';
import type { Data } from './projects.js';
import { projectOf, projects, withLines, withPlaces, withPulses, withWideResistors, withWires } from './projects.js';
import { readersOf } from './readers.js';
import type { Build } from './reckoning.js';
import { buildAtRandom, dice, reckon } from './reckoning.js';

const PROJECTS = sized(16, 400);
const BUILDS = sized(60, 200);
/** Share of a figure that the two solvers may differ by, and what the tangents of circuits not in question leave out. */
const ROOM = 2e-5;
/**
 * The same for what a coil gets and what its driver has to turn into heat: what an undriven transistor loses rises with the current it is asked for, and that falls with
 * the drop in the branch, so that the corner at either end of the drop is off by a little.
 */
const THROUGH = new Set(['coil', 'driver']);
const COIL_ROOM = 2e-3;
/** LEDs side by side are alike to the rails, and one beside others of another voltage only to their own pin. */
const SIDE_BY_SIDE_ROOM = 1e-3;
/**
 * Where a rail stands: with everything leaning one way, fuses and cables behind it lose least where they should lose most, and what feeds a
 * coupler that is off pushes microamperes into the rail of its pin, so that a diode that carries hardly any keeps millivolts less.
 */
const VOLTAGE_ROOM = 1e-3;
/** The same of what is pushed into a pin that has let go by tenths of a volt. */
const PUSHED_ROOM = 1e-3;
/** The least of a sum is judged by nothing: what hangs on a pin beside something of another rail leans with its own there. */
const LEAST_ROOM = 1e-3;
/** Amperes, volts, watts or kelvins below which nothing is compared. */
const TRACE = 1e-6;
/** Kelvins that are nothing: what the rest of a project takes moves the input of an idle regulator by millivolts. */
const WARMTH = 5e-3;
/** Of what flows in a coil that is let go, amperes: it rises tenfold with 60 mV at a diode, and no coil is held by so little. */
const LET_GO_TRACE = 1e-5;

/** Whose circuits an account is about; none where it is a sum of many. */
const ownOf = (project: Project, a: Account): readonly string[] =>
  project.accounts.find((p) => p.id === a.id && p.title === a.title && p.quantity === a.quantity)?.circuits ?? [];

/** What is over at a moment between pulses, for an account that is about other circuits; a regulator's heat is that of all moments. */
const overFor = (project: Project, a: Account, over: readonly (readonly string[])[]): readonly string[] => {
  if (a.kind === 'regulator' && a.quantity === 'temperature') return [];
  const own = ownOf(project, a);
  return over.filter((set) => !set.some((c) => own.includes(c))).flat();
};

/**
 * Reads every account in its own worst moment from one build.
 *
 * @param over circuits whose pulses are over at that moment, those of one pin together
 */
function readAll(
  project: Project,
  accounts: readonly Account[],
  build: Build,
  over: readonly (readonly string[])[],
): (number | undefined)[] {
  const always = project.circuits.flatMap((c) => (c.always ? [c.id] : []));
  const known = new Map<string, ReturnType<typeof reckon>>();
  return readersOf(project, accounts).map(({ account, off, peaks, read }) => {
    const gone = [...off, ...overFor(project, account, over)];
    const on = new Set([...always, ...account.moment].filter((c) => !gone.includes(c)));
    const peak = build.peak === true ? peaks : false;
    const key = `${[...on].sort().join()} ${peak}`;
    const reckoned = known.get(key) ?? reckon(project, on, { ...build, peak });
    known.set(key, reckoned);
    return read(reckoned);
  });
}

/** The circuits of each train of pulses. */
const trainsOf = (project: Project): readonly (readonly string[])[] => {
  const sets = together(project);
  return project.circuits.flatMap((c, k) => (c.pulses ? [sets[k]!.map((n) => project.circuits[n]!.id)] : []));
};

const SUMS = new Set(['group', 'total', 'rail', 'inlet', 'supply', 'fuse', 'wire', 'regulator']);
const isSum = (a: Account): boolean => a.quantity === 'current' && SUMS.has(a.kind);
/** What is pushed into a line, and what that heats: held at both ends. */
const isPushed = (a: Account): boolean =>
  (a.kind === 'series' && a.quantity === 'power') || (a.kind === 'pin' && a.direction === 'injected');

/** A load that cannot be let go of: its own resistance is all that limits it then, and how much no longer matters. */
const isStuck = (a: Account): boolean => lets(a) && a.quantity === 'current' && a.limits.some((l) => l.left < 0);

const TREE = new Set(['rail', 'inlet', 'supply', 'regulator']);

/** Share of a figure that it may lie beyond the bounds. */
function roomOf(project: Project, a: Account): number {
  if (THROUGH.has(a.kind)) return COIL_ROOM;
  if (TREE.has(a.kind) && a.quantity === 'voltage') return VOLTAGE_ROOM;
  if (a.kind === 'pin' && a.direction === 'injected') return PUSHED_ROOM;
  const beside = project.circuits.find((c) => c.id === a.id)?.wiring.sideBySide;
  return a.kind === 'input' && beside !== undefined ? SIDE_BY_SIDE_ROOM : ROOM;
}

const traceOf = (a: Account): number =>
  a.quantity === 'temperature' ? WARMTH : a.quantity === 'current' && lets(a) ? LET_GO_TRACE : TRACE;

/** What still flows in a load that is switched off. */
const lets = (a: Account): boolean => a.kind === 'coil' || a.id.endsWith('.off');

/**
 * A driver that is not driven all the way gets hottest somewhere between its ends, where it keeps half of the supply; that it
 * is not driven is a failure of its own.
 */
const isHalfDriven = (a: Account, accounts: readonly Account[]): boolean =>
  a.kind === 'driver' &&
  a.quantity === 'temperature' &&
  accounts.some((o) => o.id === a.id && o.direction === 'at-least' && o.limits.some((l) => l.left < 0));

const described = (a: Account): string => `${a.id}, ${a.quantity}, ${a.direction}`;

/** Pulses, every second time in a stated mode. */
const inOneMode = (data: Data): Data => {
  const active = Object.keys(data['loads'] as object);
  return { ...withPulses(data), ...(active.length % 2 === 1 && { modes: { working: { active } } }) };
};

const SAMPLES = {
  'loads of every kind': {
    files: projects({ most: 5, without: ['shared', 'staged'] }),
    number: PROJECTS,
    least: 13_000,
  },
  'signal lines': {
    files: projects({ most: 2, only: ['led', 'resistor', 'drivenCoil', 'relays', 'lit'] }).map(withLines),
    number: sized(11, 12),
    least: 10_000,
  },
  pulses: {
    files: projects({
      most: 4,
      only: ['led', 'resistor', 'drivenCoil', 'motor', 'arrayLoad', 'staged', 'switched'],
    }).map(inOneMode),
    number: 5,
    least: 4000,
  },
  'rails that are fed backwards': {
    files: projects({ most: 3, only: ['arrayLoad', 'led', 'relays'] }).filter((data) =>
      JSON.stringify(data['loads']).includes('lower.'),
    ),
    number: 6,
    least: 5_000,
  },
  'rows of stages': { files: projects({ most: 2, only: ['staged'] }), number: 18, least: 9_000 },
} as const;

test.each(Object.entries(SAMPLES))(
  'no sampled build of %s falls outside the bounds, and they come near what is sampled',
  (_, sample) => {
    let compared = 0;
    const reached = { most: 0, of: 0 };
    const files: Data[] = fc.sample(sample.files, { numRuns: sample.number, seed: 20261 });
    for (const [number, file] of files.entries()) {
      const plain = file['incoming'] === undefined;
      const wired = number % 3 === 2 && plain ? withWires(file) : file;
      const placed = number % 4 === 1 && plain ? withPlaces(wired) : wired;
      const data = number % 5 === 4 && plain ? withWideResistors(placed) : placed;
      const project = projectOf(data);
      const accounts = ledgerOf(project).accounts.filter((a) => a.draw !== undefined);
      // In a stated mode pulses come and go; with none the worst combination of all is asked anyhow.
      const pulses = project.circuits.some((c) => c.pulses);
      const trains = data['modes'] === undefined ? [] : trainsOf(project);
      const skipped = accounts.map((a) => isStuck(a) || isHalfDriven(a, accounts));
      const highest = accounts.map(() => -Infinity);
      const random = dice(number + 1);
      for (let n = 0; n < BUILDS; n++) {
        // The pulses of every second build begin when they like.
        const build: Build = { ...buildAtRandom(random), ...(n % 2 === 1 && { adrift: true as const }) };
        const over = trains.filter(() => random() < 0.5);
        readAll(project, accounts, build, over).forEach((value, k) => {
          if (value === undefined || skipped[k]) return;
          const { min, max } = accounts[k]!.draw!;
          const size = Math.max(Math.abs(min), Math.abs(max));
          const room = roomOf(project, accounts[k]!) * size + traceOf(accounts[k]!);
          const where = `${described(accounts[k]!)} in build ${n} of ${JSON.stringify(data)}`;
          const { direction } = accounts[k]!;
          // The end that is judged, of every account; both ends of the sums of currents and of what is pushed in.
          if (direction === 'at-least' || isPushed(accounts[k]!))
            expect(value, where).toBeGreaterThanOrEqual(min - room);
          // The least of a sum is that of pulses that begin together.
          else if (isSum(accounts[k]!) && over.length === 0 && !(build.adrift && pulses))
            expect(value, where).toBeGreaterThanOrEqual(min - LEAST_ROOM * size - traceOf(accounts[k]!));
          if (direction !== 'at-least' || isSum(accounts[k]!)) expect(value, where).toBeLessThanOrEqual(max + room);
          highest[k] = Math.max(highest[k]!, value);
          compared++;
        });
      }
      accounts.forEach((a, k) => {
        if (a.quantity !== 'current' || a.draw!.max < 1e-4) return;
        reached.of++;
        if (highest[k]! > a.draw!.max - 0.1 * (a.draw!.max - a.draw!.min)) reached.most++;
      });
    }
    // With half of the figures at an end, nearly half of the accounts come within a tenth of their range of the upper bound.
    expect(compared).toBeGreaterThan(sample.least);
    expect(reached.most / reached.of).toBeGreaterThan(0.4);
  },
);
