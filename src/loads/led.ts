/**
 * LEDs, alone, in a string, or several side by side behind one resistor. In a string the drops add; side by side the one of
 * least forward voltage takes the most, and how much that is follows from the junction law.
 */
import { branchSteps } from './branch-working.js';
import type { Figures } from './figures.js';
import { junctionSpread } from './laws.js';
import { litLimits } from './lit-limits.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { rating } from './limits.js';
import type { AccountPlan, LimitPlan, Reading, Step } from './account-plan.js';
import type { JunctionSpread } from './branch-plan.js';
import { pulsesOf } from './pulses.js';
import { inARow, sideBySide, worstShare } from './led-groups.js';
import { lowerTwoTerminal } from './two-terminal.js';

/** A string is lit from this current on, amperes: an eye sees a tenth of a milliampere (common practice, no source). */
const LIT = 1e-4;

function lower(input: LoadInput): Lowered {
  const { figures } = input;
  const curve = figures.curve('forward-voltage', 'voltage', 'current');
  if (curve === undefined) {
    figures.problem(
      'forward-voltage',
      `\`${input.id}\` has no forward voltage to reckon with`,
      '`forward-voltage: 1.8 to 2.2 V`, or a `part:` from the catalogue',
    );
    return NOTHING;
  }
  const [row, beside] = [figures.count('in-series') ?? 1, figures.count('in-parallel') ?? 1];
  const string = inARow(junctionSpread(curve), row);
  const law = sideBySide(string, beside);
  const limits = limitsOf(figures);
  const lowered = lowerTwoTerminal(input, {
    members: (circuit) => [{ kind: 'junction', part: `${circuit}.led`, law, origin: curve.origin }],
    inductive: false,
    part: (circuit) => `${circuit}.led`,
    accounts: (circuit, path) => [
      carried(circuit, path, limits, string, beside),
      ...(row > 1 && !figures.says('needs') ? [lit(circuit, path, row)] : []),
    ],
    limitsItself: false,
  });
  if (beside === 1) return lowered;
  return {
    ...lowered,
    circuits: lowered.circuits.map((c) => ({ ...c, wiring: { ...c.wiring, sideBySide: beside } })),
  };
}

/** Name of the state in which firmware ends no pulse. */
const RUNAWAY = 'runaway';

/** What it bears: for ever, or pulsed as its maker rates it for pulses, and for ever should firmware end none of them. */
function limitsOf(figures: Figures): readonly LimitPlan[] {
  const limit = rating(figures, 'maximum-current', 'current');
  const pulses = figures.says('peak-current') ? pulsesOf(figures) : undefined;
  if (limit === undefined) return [];
  if (pulses === undefined || pulses.slow || pulses.duty.max >= 1) return [limit];
  const { duty, frequency } = pulses;
  const lit = litLimits(figures, { share: duty.max, seconds: duty.max / frequency.min });
  return [
    ...lit.map((each) => ({ ...each, holdsIn: (mode: string) => mode !== RUNAWAY })),
    { ...limit, holdsIn: (mode) => mode === RUNAWAY },
  ];
}

/** What one LED carries: all of the current, or of several side by side what the worst of them takes. */
function carried(
  circuit: string,
  path: AccountPlan['path'],
  limits: readonly LimitPlan[],
  string: JunctionSpread,
  beside: number,
): AccountPlan {
  const part = `${circuit}.led`;
  const worst = (s: Reading): number => (beside === 1 ? s.current(part) : worstShare(s, part, string, beside).amps);
  return {
    id: circuit,
    kind: 'input',
    title: `LED ${circuit}`,
    quantity: 'current',
    direction: 'at-most',
    circuits: [circuit],
    path,
    recipes: ['draw-most', 'draw-least'],
    read: worst,
    limits,
    ...(beside === 1 && { books: [{ circuit, part }] }),
    ...(limits.length === 0 && {
      missing: {
        figure: 'maximum-current',
        asks: `what current may the LED of ${circuit} carry (its \`maximum-current\`)?`,
      },
    }),
    steps: (s) =>
      beside === 1 ? branchSteps(s.branch(part), `current of the LED`) : shareSteps(s, part, string, beside),
  };
}

/** The sum behind the worst share: what all carry together, less what the others take at the same voltage. */
function shareSteps(s: Reading, part: string, string: JunctionSpread, beside: number): Step[] {
  const { amps, total, other } = worstShare(s, part, string, beside);
  return [
    ...branchSteps(s.branch(part), 'current of all of them, were they alike'),
    {
      name: 'I_worst',
      says: `what one of them takes, where the other ${beside - 1} have forward voltages at the far end of their spread`,
      formula: 'I_all - n * I_other',
      with: { I_all: [total, 'A'], n: [beside - 1, ''], I_other: [other, 'A'] },
      gives: [amps, 'A'],
    },
  ];
}

/** A string that its supply cannot light: the drops add up to more than there is. */
const lit = (circuit: string, path: AccountPlan['path'], row: number): AccountPlan => ({
  id: circuit,
  kind: 'input',
  title: `string of ${row} LEDs ${circuit}, current to be lit`,
  quantity: 'current',
  direction: 'at-least',
  circuits: [circuit],
  path,
  recipes: ['draw-least', 'draw-most'],
  read: (s) => s.current(`${circuit}.led`),
  limits: [
    {
      value: LIT,
      stated: '0.1 mA, at which an LED is seen to be lit',
      grade: 'practice',
      isFunction: true,
      margin: 'none',
      origin: { document: 'common practice, no source', basis: 'practice' },
    },
  ],
  steps: (s) => branchSteps(s.branch(`${circuit}.led`), 'current of the string'),
});

export const led: LoadType = { type: 'led', lower };
