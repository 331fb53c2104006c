/** The search for the worst moment, against trying every state. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { heaviest } from '../../src/ledger/moments.js';
import type { Moment } from '../../src/ledger/moment.js';
import { sized } from '../sizes.js';
import type { InterlockPlan, Project } from '../../src/project/project.js';

interface Case {
  readonly circuits: number;
  /** Circuits that are always on. */
  readonly always: readonly number[];
  /** Circuits that hang on one pin. */
  readonly pairs: readonly (readonly number[])[];
  readonly interlocks: readonly InterlockPlan[];
  readonly weights: readonly number[];
  readonly must: readonly number[];
}

const name = (k: number): string => `c${k}`;

/** What the search reads of a project. */
const projectOf = ({ circuits, always, pairs }: Case): Project =>
  ({
    circuits: Array.from({ length: circuits }, (_, k) => ({ id: name(k), always: always.includes(k) })),
    networks: pairs.map((pair) => ({ circuits: pair.map(name) })),
  }) as unknown as Project;

const casesOf = (least: number, most: number): fc.Arbitrary<Case> =>
  fc.integer({ min: least, max: most }).chain((circuits) => {
    const some = (most: number) => fc.uniqueArray(fc.nat(circuits - 1), { minLength: 1, maxLength: most });
    const names = (most: number) => some(most).map((list) => list.map(name));
    const rule = { by: fc.constantFrom<'wiring' | 'firmware'>('wiring', 'firmware'), path: fc.constant([]) };
    const interlock: fc.Arbitrary<InterlockPlan> = fc.oneof(
      fc.record({ kind: fc.constant('at-most' as const), most: fc.nat(3), of: names(6), ...rule }),
      fc.record({ kind: fc.constant('needs' as const), of: names(2), when: names(2), ...rule }),
      fc.record({ kind: fc.constant('excludes' as const), of: names(2), when: names(2), ...rule }),
    );
    return fc.record({
      circuits: fc.constant(circuits),
      always: fc.option(some(2), { nil: [], freq: 4 }),
      pairs: fc.array(some(3), { maxLength: 2 }),
      interlocks: fc.array(interlock, { maxLength: 5 }),
      weights: fc.array(fc.integer({ min: -50, max: 100 }), { minLength: circuits, maxLength: circuits }),
      must: fc.option(some(2), { nil: [], freq: 2 }),
    });
  });

/** The interlocks in the words of the format. */
function keeps(on: readonly boolean[], interlocks: readonly InterlockPlan[]): boolean {
  const lit = (ids: readonly string[] = []): string[] => ids.filter((id) => on[Number(id.slice(1))]);
  return interlocks.every((i) => {
    if (i.kind === 'at-most') return lit(i.of).length <= i.most!;
    if (lit(i.when).length === 0) return true;
    return i.kind === 'needs' ? lit(i.of).length === i.of.length : lit(i.of).length === 0;
  });
}

const weightOf = (on: readonly boolean[], { weights }: Case): number =>
  weights.reduce((sum, w, k) => sum + (on[k] ? w : 0), 0);

/** Every state that the pins, what is always on and the interlocks allow. */
function* states(c: Case): Generator<boolean[]> {
  for (let bits = 0; bits < 2 ** c.circuits; bits++) {
    const on = Array.from({ length: c.circuits }, (_, k) => ((bits >> k) & 1) === 1);
    if (!c.always.every((k) => on[k]) || !c.must.every((k) => on[k])) continue;
    if (!c.pairs.every((pair) => pair.every((k) => on[k] === on[pair[0]!]))) continue;
    if (keeps(on, c.interlocks)) yield on;
  }
}

const found = (c: Case): Moment[] =>
  heaviest(projectOf(c), { name: 'free', interlocks: c.interlocks }, c.weights, new Set(c.must));
const lights = (m: Moment): boolean[] => Array.from(m.on, (s) => s === 1);

describe('the heaviest allowed state', () => {
  test.each([
    [[1, 12], 600],
    [[13, 16], sized(6, 100)],
  ] as const)(
    'of %j circuits weighs as much as the heaviest of all that are allowed, what stands beside it nearly so',
    (range, numRuns) => {
      fc.assert(
        fc.property(casesOf(range[0], range[1]), (c) => {
          const best = Math.max(...[...states(c)].map((on) => weightOf(on, c)));
          fc.pre(best > -Infinity);
          const moments = found(c);
          expect(weightOf(lights(moments[0]!), c)).toBe(best);
          for (const m of moments) {
            expect(m.bound).toBeUndefined();
            expect(keeps(lights(m), c.interlocks)).toBe(true);
            expect(c.must.every((k) => m.on[k] === 1)).toBe(true);
            expect(c.pairs.every((pair) => pair.every((k) => m.on[k] === m.on[pair[0]!]))).toBe(true);
            expect(weightOf(lights(m), c)).toBeGreaterThanOrEqual(best - 0.05 * Math.abs(best));
          }
          expect(new Set(moments.map((m) => m.on.join(''))).size).toBe(moments.length);
        }),
        { numRuns },
      );
    },
  );

  test('is none when what has to be on can never be, and a bound when what is always on keeps no interlock', () => {
    const c: Case = {
      circuits: 3,
      always: [],
      pairs: [],
      interlocks: [{ kind: 'at-most', most: 0, of: ['c1'], by: 'wiring', path: [] }],
      weights: [1, 2, 3],
      must: [1],
    };
    expect(found(c)).toEqual([]);
    const stuck = found({ ...c, must: [], always: [1] });
    expect(stuck.map((m) => [m.on.join(''), m.bound])).toEqual([['111', true]]);
  });

  test('is exact with sixteen circuits of which half may be on together, whatever they weigh', () => {
    const sixteen = (weight: (k: number) => number): Case => ({
      circuits: 16,
      always: [],
      pairs: [],
      interlocks: [
        { kind: 'at-most', most: 8, of: Array.from({ length: 16 }, (_, k) => name(k)), by: 'firmware', path: [] },
      ],
      weights: Array.from({ length: 16 }, (_, k) => weight(k)),
      must: [],
    });
    for (const weight of [
      () => 1,
      (k: number) => 1 + k / 16,
      (k: number) => 2 ** (k / 2),
      (k: number) => 1 + ((k * 7) % 16) / 1e3,
    ]) {
      const c = sixteen(weight);
      const [first] = found(c);
      expect(first!.bound).toBeUndefined();
      expect(weightOf(lights(first!), c)).toBeCloseTo(
        c.weights
          .toSorted((a, b) => b - a)
          .slice(0, 8)
          .reduce((sum, w) => sum + w, 0),
        12,
      );
    }
  });

  test('that cannot be searched for is told by a state that outweighs every allowed one', () => {
    const many: Case = {
      circuits: 40,
      always: [],
      pairs: [],
      interlocks: Array.from({ length: 12 }, (_, r): InterlockPlan => ({
        kind: 'at-most',
        most: 7,
        of: Array.from({ length: 20 }, (_, k) => name((7 * r + 3 * k) % 40)),
        by: 'firmware',
        path: [],
      })),
      weights: Array.from({ length: 40 }, (_, k) => 10 + ((k * 13) % 7)),
      must: [],
    };
    const moments = found(many);
    if (moments[0]!.bound) expect(moments[0]!.on.join('')).toBe('1'.repeat(40));
    else expect(keeps(lights(moments[0]!), many.interlocks)).toBe(true);
  });
});
