/**
 * The books balance: in every whole solution what flows into a node flows out of it, and what the sources give is what the
 * parts take. Currents and watts are summed here from each part's own law, with figures put in here, and not from the
 * solver's sums.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { copperFactor } from '../../src/circuit/copper.js';
import type { Junction } from '../../src/circuit/junction.js';
import { junctionAt, junctionVoltage } from '../../src/circuit/junction.js';
import { booksOf, total } from '../../src/ledger/bookings.js';
import type { Corner, Lean } from '../../src/ledger/corner.js';
import { celsiusOf, TYPICAL } from '../../src/ledger/corner.js';
import { placeOf } from '../../src/project/places.js';
import type { Moment } from '../../src/ledger/moment.js';
import type { Solution } from '../../src/ledger/solution.js';
import { solver } from '../../src/ledger/solver.js';
import type { BranchPlan, Member } from '../../src/loads/branch-plan.js';
import { GROUND, isFalling } from '../../src/loads/branch-plan.js';
import type { Project } from '../../src/project/project.js';
import type { Link } from '../../src/project/tree-plan.js';
import type { Interval } from '../../src/quantity/interval.js';
import { interpolate } from '../../src/quantity/points.js';
import { HAND_MADE } from '../properties/hand-made.js';
import type { Data } from '../properties/projects.js';
import { projectOf, projects } from '../properties/projects.js';
import { sized } from '../sizes.js';
import { curveAt } from '../curve.js';
import type { Ends } from './leans.js';
import { DRAW, END, LOAD, LOSS, drawn, leanOfBranch, lit } from './leans.js';

/** 1 part in 10^9. */
const PART = 1e-9;

/** Volts that a member takes at a current, amperes; a fixed current takes what is left. */
function voltsOf(
  m: Member,
  amps: number,
  lean: Lean,
  pins: Lean,
  celsius: number,
  losses: Readonly<Record<Lean, Ends>>,
): number {
  switch (m.kind) {
    case 'resistance':
      return (
        m.ohms[(m.load ? LOAD : losses)[lean]] * (m.copper === undefined ? 1 : copperFactor(celsius, m.copper)) * amps
      );
    case 'pin':
      return m.ohms[LOSS[pins]] * amps;
    case 'drop':
      return amps > 0 ? m.volts[losses[lean]] : 0;
    case 'junction':
      return law(m.law[LOSS[lean]], amps, celsius);
    case 'curve': {
      const points = m.points.map((p) => ({ at: p.amps, value: p.volts }));
      return amps > 0 ? interpolate(points, amps).value[losses[lean]] : 0;
    }
    case 'filament': {
      const { volts, amps: design } = lit(m, lean);
      // Hot it follows the rerating law, cold it is a resistance.
      return m.cold && lean === 'peak'
        ? (amps * volts) / design
        : Math.sign(amps) * volts * (Math.abs(amps) / design) ** (1 / 0.55);
    }
    case 'current':
    case 'power':
      return 0;
  }
}

const law = (j: Junction, amps: number, celsius: number): number => junctionVoltage(junctionAt(j, celsius), amps);

/** The largest of what failed to balance, as a share of what flows there. */
interface Imbalance {
  node: number;
  law: number;
  power: number;
}

/** Checks a whole solution; what is off is given as shares of the largest current, voltage and power. */
function imbalanceOf(project: Project, s: Solution, focus: ReadonlySet<number>): Imbalance {
  const { corner, circuitry } = s;
  const celsius = (name: string): number => celsiusOf(project, corner, placeOf(project, name));
  const worst: Imbalance = { node: 0, law: 0, power: 0 };
  const sums = new Map<string, { sum: number; largest: number }>();
  const into = (node: string, amps: number): void => {
    const known = sums.get(node) ?? { sum: 0, largest: 0 };
    sums.set(node, { sum: known.sum + amps, largest: Math.max(known.largest, Math.abs(amps)) });
  };
  let watts = 0;
  circuitry.networks.forEach((index, n) => {
    const inQuestion = focus.has(n);
    const asked = inQuestion ? corner[index.plan.side] : corner.rest;
    const lit =
      index.plan.circuits.length === 0 ||
      index.plan.circuits.some((id) => s.moment.on[circuitry.circuitIndex.get(id)!] === 1);
    const plans: readonly BranchPlan[] = index.plan[lit ? 'on' : 'off'];
    const { currents, volts, fitted } = s.network(n);
    expect(currents.length).toBe(plans.length);
    plans.forEach((plan, b) => {
      const amps = currents[b]!;
      const lean = leanOfBranch(asked, plan, index.plan);
      const pins = leanOfBranch(inQuestion ? corner.control : corner.rest, plan, index.plan);
      into(plan.from, -amps);
      into(plan.to, amps);
      const { from, to } = fitted.edges[b]!;
      const across = volts[from]! - volts[to]!;
      // The tree's nodes in a network are those of the solution.
      if (circuitry.nodeIndex.has(plan.from)) expect(volts[from]).toBe(s.voltage(plan.from));
      if (circuitry.nodeIndex.has(plan.to)) expect(volts[to]).toBe(s.voltage(plan.to));
      const losses = isFalling(plan) ? DRAW : LOSS;
      const taken = plan.members.reduce(
        (sum, m) => sum + voltsOf(m, amps, lean, pins, celsius(plan.circuit), losses),
        0,
      );
      watts += taken * amps;
      const power = plan.members.find((m) => m.kind === 'power');
      const fixed = plan.members.find((m) => m.kind === 'current');
      if (fixed) {
        const wanted = drawn(fixed, lean);
        expect(amps).toBe(across > 0 ? wanted : 0);
        watts += (across - taken) * amps;
      } else if (power) {
        // Where its supply holds up, it gets its watts.
        const given = (across - taken) * amps;
        watts += given;
        if (across > 2.5) worst.law = Math.max(worst.law, Math.abs(given / power.watts[DRAW[lean]] - 1));
      } else if (amps === 0) {
        const drop = plan.members.reduce((sum, m) => sum + (m.kind === 'drop' ? m.volts[LOSS[lean]] : 0), 0);
        expect(across).toBeLessThanOrEqual(drop + 1e-12);
      } else worst.law = Math.max(worst.law, Math.abs(taken - across) / Math.max(Math.abs(across), 1));
    });
  });

  const at = (i: Interval | undefined, end: Ends): number => (i === undefined ? 0 : i[end]);
  const loss = END[corner.losses];
  // In a whole solution that is about something, regulators are part of it.
  const appetite = focus.size > 0 ? corner.load : corner.rest;
  const own = (l: Link): number => at(l.quiescent, DRAW[appetite as Lean]);
  const out = new Map<string, number>();
  const lossAcross = (l: Link, amps: number): number => {
    if (l.kind === 'diode') return law(l.law![loss], amps, celsius(l.id));
    if (l.kind === 'cable') return (l.ohms![loss] * ((234.5 + celsius(l.id)) / 254.5) + at(l.contact, loss)) * amps;
    return l.ohms ? l.ohms[loss] * amps : 0;
  };
  for (const link of project.links.toReversed()) {
    const amps = -(sums.get(link.to)?.sum ?? 0);
    out.set(link.id, amps);
    const [input, output] = [s.voltage(link.from), s.voltage(link.to)];
    const set = at(link.volts, END[corner.outputs]);
    let taken = amps;
    let expected = input - lossAcross(link, amps);
    if (link.kind === 'linear-regulator') {
      taken += own(link);
      expected = Math.min(set, Math.max(input - curveAt(link.dropout, amps)[loss], 0));
    } else if (link.kind === 'switching-regulator') {
      const efficiency = curveAt(link.efficiency, amps)[
        appetite === 'typ' ? 'typ' : appetite === 'low' ? 'max' : 'min'
      ];
      taken = (output * amps) / (efficiency * input) + own(link);
      expected = set;
    }
    watts += input * taken - output * amps;
    worst.law = Math.max(worst.law, Math.abs(expected - output) / Math.max(Math.abs(input), 1));
    into(link.to, amps);
    into(link.from, -taken);
    // The solver's own sum along the tree is the sum of the parts.
    const number = circuitry.links.findIndex((l) => l.link === link);
    const largest = sums.get(link.to)!.largest;
    if (number >= 0)
      worst.node = Math.max(worst.node, Math.abs(s.linkCurrents[number]! - amps) / Math.max(largest, 1e-6));
  }
  const books = booksOf(s);
  let given = 0;
  for (const node of project.nodes) {
    const { sum, largest } = sums.get(node.id) ?? { sum: 0, largest: 0 };
    if (node.volts === undefined) continue;
    given += s.voltage(node.id) * -sum;
    worst.node = Math.max(worst.node, Math.abs(total(books.nodes.get(node.id)) + sum) / Math.max(largest, 1e-6));
  }
  for (const link of project.links)
    worst.node = Math.max(
      worst.node,
      Math.abs(total(books.links.get(link.id)) - out.get(link.id)!) / Math.max(Math.abs(out.get(link.id)!), 1e-6),
    );
  const sources = new Set(project.nodes.flatMap((n) => (n.volts ? [n.id] : [])));
  for (const [node, { sum, largest }] of sums)
    if (node !== GROUND && !sources.has(node))
      worst.node = Math.max(worst.node, Math.abs(sum) / Math.max(largest, 1e-6));
  worst.power = Math.abs(given - watts) / Math.max(given, 1e-6);
  return worst;
}

const LEANS: readonly Lean[] = ['low', 'typ', 'high', 'peak', 'second'];
const corners: fc.Arbitrary<Corner> = fc.oneof(
  { weight: 1, arbitrary: fc.constant(TYPICAL) },
  {
    weight: 6,
    arbitrary: fc
      .record({
        ambient: fc.constantFrom('cold', 'typ', 'hot'),
        sources: fc.constantFrom('low', 'typ', 'high'),
        outputs: fc.constantFrom('low', 'typ', 'high'),
        losses: fc.constantFrom('low', 'typ', 'high'),
        rest: fc.constantFrom(...LEANS),
      })
      .map((c) => ({ ...c, load: c.rest, control: c.rest }) as Corner),
  },
);

/** States in which each circuit is on or off; what is always on is on. */
const moments = (project: Project): fc.Arbitrary<Moment> =>
  fc
    .array(fc.boolean(), { minLength: project.circuits.length, maxLength: project.circuits.length })
    .map((on) => ({ mode: 'any', on: Uint8Array.from(project.circuits, (c, k) => (c.always || on[k] ? 1 : 0)) }));

const balances = ({ node, law, power }: Imbalance): void => {
  expect(node).toBeLessThan(PART);
  expect(law).toBeLessThan(PART);
  expect(power).toBeLessThan(PART);
};

const NOBODY: ReadonlySet<number> = new Set();

const inAnyCorner = (
  data: Data,
): fc.Arbitrary<{ readonly data: Data; readonly moment: Moment; readonly corner: Corner }> =>
  fc.record({ data: fc.constant(data), moment: moments(projectOf(data)), corner: corners });

describe('every whole solution balances at each node and in power', () => {
  test('in any corner of any state of generated projects', () => {
    fc.assert(
      fc.property(projects().chain(inAnyCorner), ({ data, moment, corner }) => {
        const project = projectOf(data);
        const bench = solver(project);
        balances(imbalanceOf(project, bench.solve({ moment, corner, focus: bench.nobody }), NOBODY));
      }),
      { numRuns: sized(200, 5000) },
    );
  });

  test.each(Object.entries(HAND_MADE))('of %s', (_, data) => {
    fc.assert(
      fc.property(inAnyCorner(data), ({ moment, corner }) => {
        const project = projectOf(data);
        const bench = solver(project);
        balances(imbalanceOf(project, bench.solve({ moment, corner, focus: bench.nobody }), NOBODY));
      }),
      { numRuns: sized(40, 1000) },
    );
  });

  test('with some networks leaning one way and the others the other', () => {
    fc.assert(
      fc.property(
        projects().chain(inAnyCorner),
        fc.infiniteStream(fc.boolean()),
        ({ data, moment, corner }, stream) => {
          const project = projectOf(data);
          const bench = solver(project);
          const all = project.networks.map((_, n) => n);
          // Networks that are written alike are solved once, and so lean together.
          const { networks } = bench.circuitry;
          const leans = all.map(() => stream.next().value === true);
          const others = all.filter((n) => !leans[networks[n]!.like]);
          fc.pre(others.length < all.length);
          const torn: Corner = { ...corner, load: 'high', control: 'high', rest: 'low' };
          const solution = bench.solve({ moment, corner: torn, focus: bench.wholeBut(others) });
          balances(imbalanceOf(project, solution, new Set(all.filter((n) => leans[networks[n]!.like]))));
        },
      ),
      { numRuns: sized(100, 2500) },
    );
  });
});
