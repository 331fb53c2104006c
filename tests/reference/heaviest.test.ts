/**
 * The heaviest allowed state of many circuits, against HiGHS, an open-source solver of integer programs (University of
 * Edinburgh): as many circuits and interlocks as a house has, where trying every state would take longer than the house stands.
 */
import highs, { type Highs } from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { heaviest } from '../../src/ledger/moments.js';
import type { InterlockPlan, Project } from '../../src/project/project.js';
import { dice } from '../properties/reckoning.js';
import { sized } from '../sizes.js';

// Its types are those of its CommonJS half.
const load = highs as unknown as typeof highs.default;
let solver: Highs;
beforeAll(async () => {
  solver = await load();
});

const name = (k: number): string => `c${k}`;
const projectOf = (circuits: number): Project =>
  ({
    circuits: Array.from({ length: circuits }, (_, k) => ({ id: name(k), always: false })),
    networks: [],
  }) as unknown as Project;

interface House {
  readonly weights: readonly number[];
  readonly interlocks: readonly InterlockPlan[];
}

/** Interlocks of every kind at random, and weights as currents have them: many small ones, a few large. */
function houseOf(circuits: number, locks: number, seed: number): House {
  const random = dice(seed);
  const whole = (below: number): number => Math.floor(random() * below);
  const some = (most: number): string[] => [
    ...new Set(Array.from({ length: 1 + whole(most) }, () => name(whole(circuits)))),
  ];
  const rule = { by: 'wiring' as const, path: [] };
  const interlocks = Array.from({ length: locks }, (): InterlockPlan => {
    const kind = (['at-most', 'at-most', 'excludes', 'needs'] as const)[whole(4)]!;
    if (kind === 'at-most') {
      const of = some(8);
      return { kind, of, most: 1 + whole(Math.max(of.length - 1, 1)), ...rule };
    }
    const [when, ...of] = some(3);
    return { kind, of: of.length > 0 ? of : some(1).filter((id) => id !== when), when: [when!], ...rule };
  });
  // A few cost something: circuits that draw less when they are on.
  const weights = Array.from({ length: circuits }, () => (random() < 0.1 ? -1 : 1) * 10 ** (3 * random()));
  return { weights, interlocks };
}

/** The program in the words of CPLEX's LP files. */
function programOf({ weights, interlocks }: House): string {
  const rows = interlocks.flatMap(({ kind, of, when = [], most = 0 }) => {
    if (kind === 'at-most') return [`${of.join(' + ')} <= ${most}`];
    const pairs = when.flatMap((w) => of.map((o) => [w, o] as const));
    return pairs.map(([w, o]) => (kind === 'needs' ? `${w} - ${o} <= 0` : `${w} + ${o} <= 1`));
  });
  const terms = weights.map((w, k) => `${w < 0 ? '-' : '+'} ${Math.abs(w)} ${name(k)}`);
  return [
    'Maximize',
    ` obj: ${terms.join('\n ')}`,
    'Subject To',
    ...rows.map((row, k) => ` r${k}: ${row}`),
    'Binary',
    ` ${weights.map((_, k) => name(k)).join(' ')}`,
    'End',
  ].join('\n');
}

const HOUSES = [
  [20, 12],
  [40, 30],
  [60, 40],
  [60, 60],
] as const;

describe.each(HOUSES)('%d circuits under %d interlocks', (circuits, locks) => {
  test('weigh as much as the integer program has it', () => {
    for (let seed = 1; seed <= sized(6, 100); seed++) {
      const house = houseOf(circuits, locks, 1000 * circuits + seed);
      const { ObjectiveValue: best, Status } = solver.solve(programOf(house));
      expect(Status).toBe('Optimal');
      const [first] = heaviest(
        projectOf(circuits),
        { name: 'free', interlocks: house.interlocks },
        house.weights,
        new Set(),
      );
      const where = `seed ${seed}`;
      expect(first!.bound, where).toBeUndefined();
      const weight = house.weights.reduce((sum, w, k) => sum + (first!.on[k] === 1 ? w : 0), 0);
      expect(Math.abs(weight - best), where).toBeLessThan(1e-6 * Math.max(Math.abs(best), 1));
    }
  });
});
