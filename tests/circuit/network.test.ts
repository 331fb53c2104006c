import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Branch, type Flow, branchFlow } from '../../src/circuit/branch.js';
import { type Junction, fitJunction } from '../../src/circuit/junction.js';
import { type Edge, solveNetwork } from '../../src/circuit/network.js';

const led = fitJunction([{ current: 0.02, voltage: 2 }]);
const silicon = fitJunction([{ current: 0.01, voltage: 0.7 }], { ideality: 1 });

const ohms = fc.double({ min: -1, max: 5, noNaN: true }).map((exponent) => 10 ** exponent);
const junction: fc.Arbitrary<Junction> = fc
  .record({
    voltage: fc.double({ min: 0.2, max: 3.4, noNaN: true }),
    ideality: fc.double({ min: 1, max: 2, noNaN: true }),
  })
  .map(({ voltage, ideality }) => fitJunction([{ current: 0.02, voltage }], { ideality }));
const resistor: fc.Arbitrary<Branch> = ohms.map((resistance) => ({ resistance, drop: 0, junctions: [] }));
const branch: fc.Arbitrary<Branch> = fc.oneof(
  resistor,
  fc.record({ resistance: ohms, drop: fc.constant(0), junctions: fc.array(junction, { minLength: 1, maxLength: 2 }) }),
  fc.record({
    resistance: ohms,
    drop: fc.double({ min: 0.1, max: 1, noNaN: true }),
    junctions: fc.constant<Junction[]>([]),
  }),
);
/** Tenths of a volt: a network that stands at the last digits of a double has nothing to balance. */
const tenths = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min, max }).map((n) => n / 10);
const volts = tenths(0, 240);

interface Network {
  readonly inner: number;
  readonly edges: readonly Edge[];
  /** Volts of the given nodes. */
  readonly given: readonly number[];
}

/** Up to five inner nodes on three given ones: every inner node hangs on an earlier one, and some more branches close meshes. */
const network: fc.Arbitrary<Network> = fc.integer({ min: 1, max: 5 }).chain((inner) => {
  const nodes = inner + 3;
  const hung = fc.tuple(
    ...Array.from({ length: inner }, (_, k) =>
      fc
        .record({ to: fc.integer({ min: k + 1, max: nodes - 1 }), branch, turned: fc.boolean() })
        .map(({ to, branch: b, turned }): Edge => ({ from: turned ? to : k, to: turned ? k : to, branch: b })),
    ),
  );
  const more = fc.array(
    fc
      .record({ a: fc.nat(nodes - 1), b: fc.nat(nodes - 1), branch })
      .filter(({ a, b }) => a !== b)
      .map(({ a, b, branch: content }): Edge => ({ from: a, to: b, branch: content })),
    { minLength: 1, maxLength: 6 },
  );
  return fc
    .tuple(hung, more, fc.tuple(volts, volts, volts))
    .map(([tree, meshes, given]) => ({ inner, edges: [...tree, ...meshes], given }));
});

const guesses = fc.array(tenths(-500, 500), { minLength: 5, maxLength: 5 });

function solved({ inner, edges, given }: Network, guess: readonly number[]): { flows: Flow[]; volts: number[] } {
  const all = [...guess.slice(0, inner), ...given];
  return { flows: solveNetwork(inner, edges, all), volts: all };
}

/** What flows out of a node in all, and the sum of the conductances there. */
function balance({ edges }: Network, flows: readonly Flow[], node: number): { sum: number; slope: number } {
  let [sum, slope] = [0, 0];
  edges.forEach((e, k) => {
    if (e.from !== node && e.to !== node) return;
    const { current, conductance } = flows[k]!;
    sum += e.from === node ? current : -current;
    slope += conductance;
  });
  return { sum: Math.abs(sum), slope };
}

const largest = (flows: readonly Flow[]): number => Math.max(...flows.map((f) => Math.abs(f.current)));

describe('a network', () => {
  test('of resistors, junctions and drops balances at every inner node to 1e-11 of its largest current, from any guess', () => {
    fc.assert(
      fc.property(network, guesses, (net, guess) => {
        const { flows, volts: at } = solved(net, guess);
        for (let node = 0; node < net.inner; node++) {
          const { sum, slope } = balance(net, flows, node);
          // The last bits of a voltage on a small resistance are a current, too.
          const bits = 1e-15 * slope * (1 + Math.max(...at.map(Math.abs)));
          expect(sum).toBeLessThanOrEqual(1e-11 * largest(flows) + bits + 1e-15);
        }
      }),
      { numRuns: 3000, endOnFailure: true },
    );
  });

  test('has the same currents whatever the guess was', () => {
    fc.assert(
      fc.property(network, guesses, guesses, (net, one, two) => {
        const [a, b] = [solved(net, one).flows, solved(net, two).flows];
        const scale = Math.max(...a.map((f) => Math.abs(f.current)));
        a.forEach((flow, k) =>
          expect(Math.abs(flow.current - b[k]!.current)).toBeLessThanOrEqual(1e-9 * scale + 1e-12),
        );
      }),
      { numRuns: 1000, endOnFailure: true },
    );
  });

  test('takes out of its given nodes what it turns into heat', () => {
    fc.assert(
      fc.property(network, guesses, (net, guess) => {
        const { flows, volts: at } = solved(net, guess);
        const heat = net.edges.reduce((sum, e, k) => sum + (at[e.from]! - at[e.to]!) * flows[k]!.current, 0);
        const given = net.given.reduce((sum, v, k) => {
          const node = net.inner + k;
          const out = net.edges.reduce(
            (amps, e, n) => amps + ((e.from === node ? 1 : 0) - (e.to === node ? 1 : 0)) * flows[n]!.current,
            0,
          );
          return sum + v * out;
        }, 0);
        expect(Math.abs(heat - given)).toBeLessThanOrEqual(1e-9 * heat + 1e-11);
        expect(heat).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 1000, endOnFailure: true },
    );
  });

  test('with one inner node has it where halving the range finds it', () => {
    const star = fc.record({
      edges: fc.array(fc.record({ branch, turned: fc.boolean() }), { minLength: 2, maxLength: 5 }),
      given: fc.tuple(volts, volts, volts),
    });
    fc.assert(
      fc.property(star, tenths(-500, 500), ({ edges, given }, guess) => {
        const arms = edges.map(({ branch: b, turned }, k): Edge => {
          const end = 1 + (k % 3);
          return turned ? { from: end, to: 0, branch: b } : { from: 0, to: end, branch: b };
        });
        /** Current out of the node; it only rises with the node's voltage. */
        const out = (v: number): number =>
          arms.reduce((sum, e) => {
            const at = (node: number): number => (node === 0 ? v : given[node - 1]!);
            const { current } = branchFlow(e.branch, at(e.from) - at(e.to));
            return sum + (e.from === 0 ? current : -current);
          }, 0);
        const at = [guess, ...given];
        solveNetwork(1, arms, at);
        /** The end of the range in which nothing more than a trace flows: where blocked junctions hold the node, it is wide. */
        const end = (above: (amps: number) => boolean): number => {
          let [low, high] = [-60, 60];
          for (let k = 0; k < 100; k++) {
            const middle = (low + high) / 2;
            if (above(out(middle))) high = middle;
            else low = middle;
          }
          return (low + high) / 2;
        };
        expect(at[0]).toBeGreaterThanOrEqual(end((amps) => amps > -1e-13) - 1e-9);
        expect(at[0]).toBeLessThanOrEqual(end((amps) => amps > 1e-13) + 1e-9);
      }),
      { numRuns: 1000, endOnFailure: true },
    );
  });

  test('without inner nodes is its branches', () => {
    const b: Branch = { resistance: 220, drop: 0, junctions: [led] };
    expect(solveNetwork(0, [{ from: 0, to: 1, branch: b }], [5, 0])).toEqual([branchFlow(b, 5)]);
  });

  test('divides a voltage between two resistors, and a third one loads it', () => {
    const r = (resistance: number): Branch => ({ resistance, drop: 0, junctions: [] });
    const at = [0, 12, 0];
    const flows = solveNetwork(
      1,
      [
        { from: 1, to: 0, branch: r(1000) },
        { from: 0, to: 2, branch: r(2000) },
      ],
      at,
    );
    expect(at[0]).toBeCloseTo(8, 12);
    expect(flows[0]!.current).toBeCloseTo(0.004, 15);
    solveNetwork(
      1,
      [
        { from: 1, to: 0, branch: r(1000) },
        { from: 0, to: 2, branch: r(2000) },
        { from: 0, to: 2, branch: r(2000) },
      ],
      at,
    );
    expect(at[0]).toBeCloseTo(6, 12);
  });

  test('feeds a fixed current that its resistance can give', () => {
    const at = [5, 5, 0];
    const flows = solveNetwork(
      1,
      [
        { from: 1, to: 0, branch: { resistance: 10, drop: 0, junctions: [] } },
        { from: 0, to: 2, branch: { resistance: 0, drop: 0, junctions: [], current: 0.1 } },
      ],
      at,
    );
    expect(at[0]).toBeCloseTo(4, 12);
    expect(flows.map((f) => f.current)).toEqual([expect.closeTo(0.1, 12), 0.1]);
  });
});

test('comes to rest where the first step is far too long and half of it just misses the bend', () => {
  const diode: Junction = { ...fitJunction([{ current: 0.02, voltage: 0.46 }]), slope: 0.0448, logSaturation: -14.15 };
  const at = [5.4, 5.6, 13.4];
  const [flow] = solveNetwork(
    1,
    [
      { from: 0, to: 1, branch: { resistance: 1, drop: 0, junctions: [diode] } },
      { from: 2, to: 0, branch: { resistance: 100e3, drop: 0.53, junctions: [] } },
    ],
    at,
  );
  expect(flow!.current).toBeCloseTo((13.4 - 0.53 - at[0]!) / 100e3, 15);
  expect(at[0]).toBeGreaterThan(5.6);
});

describe('a node that blocked junctions hold', () => {
  const through = (j: Junction): Branch => ({ resistance: 100, drop: 0, junctions: [j] });

  test.each([
    ['an LED', led],
    ['a silicon diode', silicon],
    [
      'a white LED with the slope of an ideal junction',
      fitJunction([{ current: 0.02, voltage: 3.4 }], { ideality: 1 }),
    ],
  ])('runs empty through %s, however full the guess was', (_, j) => {
    for (const guess of [0.3, 5, 24, 400]) {
      const at = [guess, 0];
      const [flow] = solveNetwork(1, [{ from: 0, to: 1, branch: through(j) }], at);
      expect(Math.abs(flow!.current)).toBeLessThan(1e-18);
    }
  });

  test('stays where the guess was, without a current', () => {
    const at = [3, 5, 5];
    const flows = solveNetwork(
      1,
      [
        { from: 0, to: 1, branch: through(led) },
        { from: 0, to: 2, branch: through(silicon) },
      ],
      at,
    );
    expect(flows).toEqual([
      { current: 0, conductance: 0 },
      { current: 0, conductance: 0 },
    ]);
    expect(at[0]).toBe(3);
  });

  test('and its neighbours on small resistances come to one voltage without a current', () => {
    for (const resistance of [0.001, 0.01, 1, 1000]) {
      const at = [-5, -4, -3, 0, 0];
      const wire: Branch = { resistance, drop: 0, junctions: [] };
      const flows = solveNetwork(
        3,
        [
          { from: 0, to: 1, branch: wire },
          { from: 1, to: 2, branch: wire },
          { from: 0, to: 3, branch: through(led) },
          { from: 2, to: 4, branch: through(silicon) },
        ],
        at,
      );
      for (const { current } of flows) expect(Math.abs(current)).toBeLessThan(1e-11);
      expect(at[0]).toBeCloseTo(at[2]!, 12);
    }
  });

  test('and its neighbours run empty together', () => {
    const at = [5, 4, 0, 0];
    const flows = solveNetwork(
      2,
      [
        { from: 0, to: 1, branch: { resistance: 0.01, drop: 0, junctions: [] } },
        { from: 0, to: 2, branch: through(led) },
        { from: 1, to: 3, branch: through(led) },
      ],
      at,
    );
    for (const { current } of flows) expect(Math.abs(current)).toBeLessThan(1e-12);
  });

  test('and into which a fixed current flows is an error, not a wrong answer', () => {
    expect(() =>
      solveNetwork(
        1,
        [
          { from: 0, to: 1, branch: through(led) },
          { from: 0, to: 2, branch: { resistance: 0, drop: 0, junctions: [], current: 0.01 } },
        ],
        [4, 5, 0],
      ),
    ).toThrow('no solution');
  });
});

test('a node that next to nothing holds stays between what surrounds it', () => {
  // A line of two inputs that floats: a leak of 1 µA at most, which hardly answers to more volts, and clamps that block.
  const leak: Branch = {
    resistance: 1000,
    drop: 1e-9,
    junctions: [],
    beyond: { upTo: 1e-6, next: { resistance: 1e11, drop: -99_999.999, junctions: [] } },
  };
  const wire: Branch = { resistance: 0.001, drop: 0, junctions: [] };
  for (const start of [5, 2, 0.5]) {
    const at = [start, start, start, 0, 5.25];
    const flows = solveNetwork(
      3,
      [
        { from: 0, to: 3, branch: leak },
        { from: 0, to: 1, branch: wire },
        { from: 0, to: 2, branch: wire },
        { from: 0, to: 4, branch: { resistance: 0, drop: 0, junctions: [silicon] } },
      ],
      at,
    );
    for (const { current } of flows) expect(Math.abs(current)).toBeLessThan(1e-10);
    for (const node of [0, 1, 2]) {
      expect(at[node]).toBeGreaterThanOrEqual(0);
      expect(at[node]).toBeLessThanOrEqual(0.001);
    }
  }
});

test('a branch that is no number is an error, not a wrong answer', () => {
  const broken: Branch = { resistance: NaN, drop: 0, junctions: [] };
  expect(() => solveNetwork(1, [{ from: 1, to: 0, branch: broken }], [2, 5])).toThrow('no solution');
});
