/** Clamps across coils and motors: what they carry when the switch opens, and the voltage they bear while it is closed. */
import { rating } from './limits.js';
import type { LoadInput } from './lowering.js';
import type { Figures } from './figures.js';
import type { AccountPlan, LimitPlan } from './plan.js';

export interface Clamp {
  readonly fitted: 'fitted' | 'reversed';
  readonly accounts: readonly AccountPlan[];
}

/** The clamp of a load, if the file names one. */
export function clampOf(
  input: LoadInput,
  circuit: string,
  part: string,
  supply: string | undefined,
): Clamp | undefined {
  const { entry, bench, path } = input;
  if (entry['clamp'] === undefined) return undefined;
  const at = [...path, 'clamp'];
  const found = bench.part('clamp', entry['clamp'], at, `${circuit}.clamp`);
  if (found === undefined) return { fitted: 'fitted', accounts: [] };
  const fitted = found.figures.word('fitted') === 'reversed' ? 'reversed' : 'fitted';
  return { fitted, accounts: clampAccounts(found.figures, circuit, part, supply, at) };
}

/** Accounts of a diode across a winding: it takes over the winding's whole current. */
export function clampAccounts(
  figures: Figures,
  circuit: string,
  part: string,
  supply: string | undefined,
  path: readonly (string | number)[],
): AccountPlan[] {
  const base = {
    id: `${circuit}.clamp`,
    kind: 'clamp' as const,
    direction: 'at-most' as const,
    circuits: [circuit],
    path,
  };
  const peak = rating(figures, 'peak-current', 'current') ?? rating(figures, 'current', 'current');
  const reverse = supply === undefined ? undefined : rating(figures, 'reverse-voltage', 'voltage', { margin: 'none' });
  const current: AccountPlan = {
    ...base,
    title: `clamp of ${circuit}`,
    quantity: 'current',
    recipes: ['draw-most', 'draw-least'],
    peaks: true,
    read: (s) => s.current(part),
    limits: peak ? [peak] : [],
    books: [{ circuit, part }],
    ...(!peak && {
      missing: { figure: 'current', asks: `what current may the clamp of ${circuit} carry (its \`current\`)?` },
    }),
    steps: (s) => [
      {
        name: 'I_clamp',
        says: 'at switching off the clamp takes over what the winding carries',
        formula: 'I_winding',
        with: { I_winding: [s.current(part), 'A'] },
        gives: [s.current(part), 'A'],
      },
    ],
  };
  return reverse === undefined ? [current] : [current, withstands(base, reverse, supply!, circuit)];
}

const withstands = (
  base: Pick<AccountPlan, 'id' | 'kind' | 'direction' | 'circuits' | 'path'>,
  limit: LimitPlan,
  supply: string,
  circuit: string,
): AccountPlan => ({
  ...base,
  title: `clamp of ${circuit}, reverse voltage`,
  quantity: 'voltage',
  recipes: ['lightest', 'starved'],
  read: (s) => s.voltage(supply),
  limits: [limit],
  steps: (s) => [
    {
      name: 'V_reverse',
      says: 'the supply stands across the clamp',
      formula: 'V',
      with: { V: [s.voltage(supply), 'V'] },
      gives: [s.voltage(supply), 'V'],
    },
  ],
});
