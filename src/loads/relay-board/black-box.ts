/**
 * An input of which only its levels and its current are known. What drives it is the voltage across it: from the input to
 * ground when it is active high, from what feeds the inputs to the input when it is active low. Whether that is enough to
 * switch it on, and little enough to switch it off, is asked at the pin's real level.
 */
import { exactly } from '../../quantity/interval.js';
import { closed } from '../../quantity/quantity.js';
import { leftSteps } from '../branch-working.js';
import { USUAL_EXCESS } from '../draw.js';
import type { Figure } from '../figures.js';
import type { NetworkSketch } from '../lowering.js';
import type { AccountPlan, LimitPlan, Reading, Step } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import type { Board, Channel } from './board.js';
import { farEnd } from './input-path.js';

/** Keys that only a black box has. */
export const BLACK_BOX_KEYS = ['on-above', 'off-below', 'current'] as const;

export function blackBoxInput(channel: Channel): {
  readonly networks: readonly NetworkSketch[];
  readonly accounts: readonly AccountPlan[];
} {
  const { board, circuit, path, pin, fitted } = channel;
  const end = farEnd(channel);
  const part = `${circuit}.input`;
  const draw = board.inside.figure('current', 'current');
  const amps = draw ? closed(draw.quantity, { max: (typ) => USUAL_EXCESS * typ, min: () => 0 }) : exactly(0);
  const own: Member = { kind: 'current', part, amps, ...(draw && { origin: draw.origin }) };
  const hook = (member: Member): readonly Member[] =>
    board.active === 'high' ? [...fitted.between, member] : [member, ...fitted.between.toReversed()];
  const network: NetworkSketch = {
    id: part,
    circuits: [circuit],
    side: 'control',
    inner: [],
    hooks: [
      {
        pin,
        active: board.active,
        flows: board.active === 'high' ? 'out' : 'in',
        to: end,
        members: hook(own),
        // Nobody knows what it takes when it is off: with nothing, all that the pin leaves stands across it.
        off: hook({ ...own, amps: exactly(0) }),
        circuit,
      },
      ...fitted.hooks,
    ],
    on: [],
    off: [],
  };
  const volts = (s: Reading): number => s.across(part);
  const steps = (s: Reading): readonly Step[] => leftSteps(s.branch(part), part, 'V_input', 'voltage across the input');
  const { on, off } = levelsOf(board);
  const base = { id: `${circuit}.input`, kind: 'input', quantity: 'voltage', circuits: [circuit], path } as const;
  const ask = (figure: 'on-above' | 'off-below', surely: string): Pick<AccountPlan, 'missing'> => ({
    missing: {
      figure: `input.${figure}`,
      asks: `at what input voltage is ${circuit} surely ${surely} (its \`input: { ${figure} }\`)?`,
    },
  });
  const accounts: AccountPlan[] = [
    {
      ...base,
      title: `input of ${circuit}, switched on`,
      direction: 'at-least',
      recipes: ['drive-worst', 'drive-best'],
      read: volts,
      limits: on ? [on] : [],
      ...(!on && ask('on-above', 'on')),
      steps,
    },
    {
      ...base,
      title: `input of ${circuit}, switched off`,
      direction: 'at-most',
      recipes: ['let-go-worst', 'let-go-best'],
      read: volts,
      limits: off ? [off] : [],
      ...(!off && ask('off-below', 'off')),
      steps,
    },
  ];
  return { networks: [network], accounts: draw ? accounts : [...accounts, drawsUnknown(circuit, path)] };
}

/** The levels as limits of functions. Where only bounds are stated, a typical input switches midway between them. */
function levelsOf({ inside }: Board): { readonly on?: LimitPlan; readonly off?: LimitPlan } {
  const [above, below] = [inside.figure('on-above', 'voltage'), inside.figure('off-below', 'voltage')];
  const bound = (figure: Figure | undefined, end: 'min' | 'max'): number | undefined =>
    figure && closed(figure.quantity)[end];
  const [on, off] = [bound(above, 'max'), bound(below, 'min')];
  if (on !== undefined && off !== undefined && off > on)
    inside.problem(
      'off-below',
      `the inputs of \`${inside.about}\` cannot be surely off at a voltage at which they are surely on`,
      '`off-below` no higher than `on-above`',
    );
  // A bound alone says nothing of a typical input: then the worst corner decides.
  const typical = ({ quantity: { typ, exact } }: Figure, alone: number): number =>
    typ !== undefined && !exact ? typ : on !== undefined && off !== undefined ? (on + off) / 2 : alone;
  const limit = (figure: Figure, own: number, alone: number): LimitPlan => ({
    value: (s) => (s.typical ? typical(figure, alone) : own),
    stated: figure.quantity.stated,
    grade: 'operating',
    isFunction: true,
    margin: 'function-voltage',
    origin: figure.origin,
  });
  return {
    ...(above && on !== undefined && { on: limit(above, on, 0) }),
    ...(below && off !== undefined && { off: limit(below, off, Infinity) }),
  };
}

/** Without its current nobody knows what an input takes from its pin. */
const drawsUnknown = (circuit: string, path: readonly (string | number)[]): AccountPlan => ({
  id: `${circuit}.input`,
  kind: 'input',
  title: `input of ${circuit}, current`,
  quantity: 'current',
  direction: 'at-most',
  circuits: [circuit],
  path,
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing: { figure: 'input.current', asks: `what does the input of ${circuit} draw (its \`input: { current }\`)?` },
  steps: () => [],
});
