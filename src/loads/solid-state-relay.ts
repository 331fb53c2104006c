/**
 * Solid-state relays, as their input: a coupler's LED behind a resistor, an impedance as its maker states it, or electronics that
 * take a current of their own over a window of voltages. What counts is that it turns on with what the pin gives, and off with what it leaves.
 */
import { closed } from '../quantity/quantity.js';
import { branchSteps } from './branch-working.js';
import type { Figures } from './figures.js';
import { junctionSpread } from './laws.js';
import { functionOf, rating } from './limits.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import type { AccountPlan, Reading } from './account-plan.js';
import type { Member } from './branch-plan.js';
import { lowerTwoTerminal } from './two-terminal.js';

/** It is surely off with this share of the current that turns it on, when nobody says so (common practice, no source). */
const SURELY_OFF = 0.1;

function lower(input: LoadInput): Lowered {
  const inside = input.figures.within('input');
  const chain = chainOf(inside, input.id);
  if (chain === undefined) return NOTHING;
  return lowerTwoTerminal(input, {
    members: chain.members,
    inductive: false,
    part: (circuit) => `${circuit}.input`,
    accounts: (circuit, path) => inputAccounts(inside, circuit, path, chain.members(circuit)),
    limitsItself: chain.limitsItself,
  });
}

/** From the positive terminal of the input to the negative one. */
function chainOf(inside: Figures, id: string) {
  const drop = inside.curve('led-drop', 'voltage', 'current');
  const resistor = inside.figure('series', 'resistance');
  const most = inside.figure('maximum-current', 'current');
  if (drop) {
    const law = junctionSpread(drop);
    return {
      limitsItself: resistor !== undefined,
      members: (circuit: string): Member[] => [
        ...(resistor
          ? [
              {
                kind: 'resistance' as const,
                part: `${circuit}.input-resistor`,
                ohms: closed(resistor.quantity),
                origin: resistor.origin,
              },
            ]
          : []),
        { kind: 'junction', part: `${circuit}.input`, law, origin: drop.origin },
      ],
    };
  }
  if (resistor)
    return {
      limitsItself: true,
      members: (circuit: string): Member[] => [
        { kind: 'resistance', part: `${circuit}.input`, ohms: closed(resistor.quantity), origin: resistor.origin },
      ],
    };
  if (most) {
    const least = inside.interval('on-current', 'current')?.min ?? 0;
    const { max } = closed(most.quantity);
    const amps = { min: Math.min(least, max), typ: (Math.min(least, max) + max) / 2, max };
    return {
      limitsItself: true,
      members: (circuit: string): Member[] => [
        { kind: 'current', part: `${circuit}.input`, amps, origin: most.origin },
      ],
    };
  }
  inside.problem(
    'led-drop',
    `nothing says what the input of \`${id}\` takes`,
    '`input: { led-drop: 1.2 V, series: 300 Ω, on-current: 5 mA }`, or `input: { window: 3 to 32 V, maximum-current: 20 mA }`',
  );
  return undefined;
}

function inputAccounts(
  inside: Figures,
  circuit: string,
  path: AccountPlan['path'],
  members: readonly Member[],
): AccountPlan[] {
  const part = `${circuit}.input`;
  const base = { kind: 'input' as const, circuits: [circuit], path };
  const amps = (s: Reading): number => s.current(part);
  const steps = (s: Reading) => branchSteps(s.branch(part), 'current of its input');
  const books = [{ circuit, part }];
  const electronics = members.some((m) => m.kind === 'current');
  const onCurrent = inside.figure('on-current', 'current');
  const needed = onCurrent && closed(onCurrent.quantity);
  const window = inside.figure('window', 'voltage');
  const accounts: AccountPlan[] = [];
  // Electronics take what they need by themselves, as long as their voltage is there.
  if (onCurrent && needed && !electronics)
    accounts.push({
      ...base,
      id: part,
      title: `input of ${circuit}, turning on`,
      quantity: 'current',
      direction: 'at-least',
      recipes: ['draw-least', 'draw-most'],
      read: amps,
      limits: [functionOf(onCurrent, (s) => (s.typical ? needed.typ : needed.max), 'drive')],
      books,
      steps,
    });
  if (window) accounts.push(...windowAccounts(base, circuit, members, window));
  if (!window && (electronics || onCurrent === undefined))
    accounts.push({
      ...base,
      id: part,
      title: `input of ${circuit}, turning on`,
      quantity: 'voltage',
      direction: 'at-least',
      recipes: ['starved'],
      read: () => undefined,
      limits: [],
      missing: {
        figure: 'window',
        asks: `from what current or voltage on is the input of ${circuit} sure to turn on (its \`on-current\` or \`window\`)?`,
      },
      steps: () => [],
    });
  accounts.push(release(inside, circuit, base, needed?.typ));
  const limit = electronics ? undefined : rating(inside, 'maximum-current', 'current');
  if (limit)
    accounts.push({
      ...base,
      id: part,
      title: `input of ${circuit}`,
      quantity: 'current',
      direction: 'at-most',
      recipes: ['draw-most', 'draw-least'],
      read: amps,
      limits: [limit],
      books,
      steps,
    });
  return accounts;
}

type Base = Pick<AccountPlan, 'kind' | 'circuits' | 'path'>;
type Stated = NonNullable<ReturnType<Figures['figure']>>;

/** The window of voltages at its terminals: from the lower end on it is sure to be on, above the upper one it takes harm. */
function windowAccounts(base: Base, circuit: string, members: readonly Member[], window: Stated): AccountPlan[] {
  const { min, max } = window.quantity;
  const read = (s: Reading): number => members.reduce((volts, m) => volts + s.across(m.part), 0);
  const voltage = {
    ...base,
    id: `${circuit}.input`,
    quantity: 'voltage' as const,
    read,
    steps: (s: Reading) => {
      const branch = s.branch(`${circuit}.input`);
      const feed = branch === undefined ? 0 : branch.from.volts - branch.to.volts;
      return [
        {
          name: 'V_input',
          says: 'what reaches the input, less what the pin and what is before it keep',
          formula: 'V_supply - V_losses',
          with: { V_supply: [feed, 'V'], V_losses: [feed - read(s), 'V'] } as const,
          gives: [read(s), 'V'] as const,
        },
      ];
    },
  };
  return [
    ...(min === undefined
      ? []
      : [
          {
            ...voltage,
            title: `input of ${circuit}, turning on`,
            direction: 'at-least' as const,
            recipes: ['drive-worst', 'drive-best'] as const,
            limits: [functionOf(window, min, 'function-voltage')],
          },
        ]),
    ...(max === undefined
      ? []
      : [
          {
            ...voltage,
            title: `input of ${circuit}`,
            direction: 'at-most' as const,
            // The less its input takes, the less the pin keeps.
            recipes: ['drive-best', 'drive-worst'] as const,
            limits: [
              {
                value: max,
                stated: window.quantity.stated,
                grade: 'operating' as const,
                margin: 'none' as const,
                origin: window.origin,
              },
            ],
          },
        ]),
  ];
}

/** Whether it turns off with what still flows. */
function release(inside: Figures, circuit: string, base: Base, on: number | undefined): AccountPlan {
  const part = `${circuit}.input`;
  const stated = inside.figure('off-current', 'current');
  const off = stated && closed(stated.quantity);
  const account: AccountPlan = {
    ...base,
    id: `${circuit}.release`,
    title: `input of ${circuit}, switched off`,
    quantity: 'current',
    direction: 'at-most',
    recipes: ['let-go-worst', 'let-go-best'],
    read: (s) => s.current(part),
    limits: [],
    steps: (s) => branchSteps(s.branch(part), 'current that its input keeps'),
  };
  if (stated && off)
    return { ...account, limits: [functionOf(stated, (s) => (s.typical ? off.typ : off.min), 'none')] };
  if (on === undefined)
    return {
      ...account,
      missing: {
        figure: 'off-current',
        asks: `with what current is the input of ${circuit} sure to be off (its \`off-current\`)?`,
      },
    };
  inside.assume(`the input of ${circuit} is off with a tenth of the current that turns it on, since nobody states it`);
  return {
    ...account,
    limits: [
      {
        value: SURELY_OFF * on,
        stated: 'a tenth of the current that turns it on, assumed',
        grade: 'practice',
        isFunction: true,
        margin: 'none',
        origin: { document: 'common practice, no source', basis: 'practice' },
      },
    ],
  };
}

export const solidStateRelay: LoadType = { type: 'solid-state-relay', lower };
