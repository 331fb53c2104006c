/**
 * The junction from the logic input of a driver to its supply: of no account while that lives, and the way into it while it is
 * dead and the controller drives the input. Where its maker says what the input bears whatever its supply there is none.
 */
import type { Figures } from '../figures.js';
import { rating } from '../limits.js';
import { UNPUBLISHED_DEAD, unpublished } from '../lines/injection.js';
import type { LineEnd } from '../lines/line.js';
import { clampOf } from '../lines/line.js';
import { PIN_CLAMP } from '../lines/pin-clamp.js';
import type { AccountPlan } from '../account-plan.js';
import type { DeadWay } from '../branch-plan.js';
import type { Bench } from '../lowering.js';

interface Clamped {
  readonly figures: Figures;
  readonly circuit: string;
  readonly path: LineEnd['path'];
  /** The driver, and its input, as sentences say it: 'the bridge of fan', 'the input of the bridge of fan'. */
  readonly owner: string;
  readonly told: string;
  /** Node that feeds the logic, and the one that feeds the pin. */
  readonly rail: string;
  readonly pinRail: string;
  /** The pin that drives it, and where its input lies. */
  readonly pin: string;
  readonly from: DeadWay['from'];
}

/** The way into a dead driver through one of its inputs, and that input as one that reads a line. */
export function inputClamp(c: Clamped): { readonly whenDead: readonly DeadWay[]; readonly ends: readonly LineEnd[] } {
  const { figures, circuit, path, told, rail, pin, from, owner } = c;
  if (rail === c.pinRail || figures.says('input-maximum')) return { whenDead: [], ends: [] };
  const published = rating(figures, 'injected-current', 'current', { margin: 'none' });
  const end: LineEnd = {
    ...{ node: `${told}:input`, rail, about: circuit, told, owner, path, source: pin },
    injected: [published ?? unpublished(UNPUBLISHED_DEAD, '20 mA')],
    ...(!published && { assumed: true as const }),
  };
  return {
    whenDead: [{ from, to: rail, circuit, members: [{ kind: 'junction', part: clampOf(end), law: PIN_CLAMP }] }],
    ends: [end],
  };
}

/** What a driver's input bears, where the pin may stand above it: with next to nothing drawn it stands at its rail. */
export function inputBears(
  { figures, circuit, path, told, pinRail }: Omit<Clamped, 'rail' | 'pin' | 'from'>,
  id: string,
  bench: Bench,
): AccountPlan[] {
  const limit = rating(figures, 'input-maximum', 'voltage', { margin: 'none' });
  if (limit === undefined || typeof limit.value !== 'number' || bench.window(pinRail).max <= limit.value) return [];
  return [
    {
      ...{ id, kind: 'level', title: `${told}, above what it bears`, quantity: 'voltage', direction: 'injected' },
      ...{ circuits: [circuit], path, recipes: ['lightest', 'starved'], limits: [limit] },
      read: (s) => s.voltage(pinRail),
      steps: (s) => [
        {
          name: 'V',
          says: 'the rail of the pin that drives it',
          formula: 'V_rail',
          with: { V_rail: [s.voltage(pinRail), 'V'] },
          gives: [s.voltage(pinRail), 'V'],
        },
      ],
    },
  ];
}
