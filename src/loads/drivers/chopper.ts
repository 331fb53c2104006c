/**
 * A chopper: two bridges that hold the windings of a stepper motor at a current that it is set to. What it is held to is that
 * current, the window of its motor supply, and the heat of its switches; its logic may have a supply of its own.
 */
import { exactly } from '../../quantity/interval.js';
import type { Interval } from '../../quantity/interval.js';
import { closed } from '../../quantity/quantity.js';
import type { Figures } from '../figures.js';
import type { Bench, NetworkSketch } from '../lowering.js';
import { rating } from '../limits.js';
import { drawOf } from '../draw.js';
import type { AccountPlan, Reading } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import { supplyWindow } from '../terminals.js';
import { carries, phaseSteps } from '../winding-accounts.js';
import { bridgeDraw } from './h-bridge.js';
import { heatAccount, heatOf } from './junction-heat.js';
import { offVoltage } from './ratings.js';

export interface Chopper {
  readonly figures: Figures;
  /** Node that feeds its logic, where the file names one. */
  readonly logic: string | undefined;
}

/** Both switches in a winding's way, ohms; nothing where nobody states them. */
export const bridgeOf = (figures: Figures): Interval => {
  const figure = figures.figure('on-resistance', 'resistance');
  return figure ? closed(figure.quantity, { min: () => 0 }) : exactly(0);
};

/** @param supply node that feeds the motor */
export function chopperOf(figures: Figures, id: string, supply: string, bench: Bench): Chopper {
  const named = figures.word('logic-supply');
  const logic = named === undefined ? undefined : bench.node(named, figures.at('logic-supply'));
  if (named === undefined && figures.says('logic-current'))
    figures.assume(`something that the file does not name feeds the logic of the driver of ${id}`);
  // Without a logic supply of its own it makes one from the motor's.
  return { figures, logic: logic ?? (figures.says('logic-current') ? undefined : supply) };
}

/** Its own draws and accounts, for one motor. @param part the windings @param share see `windingAccounts` */
export function chopperParts(
  { figures, logic }: Chopper,
  circuit: string,
  path: AccountPlan['path'],
  { part, supply, share }: { readonly part: string; readonly supply: string; readonly share: number },
): { readonly networks: readonly NetworkSketch[]; readonly accounts: readonly AccountPlan[] } {
  const id = `${circuit}.driver`;
  const base = { id, kind: 'driver' as const, circuits: [circuit], path };
  const bears = rating(figures, 'maximum-voltage', 'voltage', { margin: 'none' });
  const amps = named(figures, 'logic-current') ? drawOf(figures, 'logic-current') : undefined;
  const logicPart = `${circuit}.logic`;
  const takes: Member | undefined = amps && { kind: 'current', part: logicPart, amps };
  // Without its logic it holds nothing: what feeds that belongs to the circuit.
  const branch = logic && takes && { from: logic, to: GROUND, members: [takes], circuit: logicPart };
  return {
    networks: [
      ...bridgeDraw(figures, id, supply),
      ...(branch
        ? [
            {
              ...{ id: logicPart, circuits: [circuit], side: 'load' as const, inner: [], hooks: [] },
              on: [branch],
              off: [branch],
            },
          ]
        : []),
    ],
    accounts: [
      setCurrent({ ...base, title: `driver of ${circuit}` }, figures, part, share),
      ...(bears ? [offVoltage(base, circuit, supply, bears)] : []),
      ...(logic && takes
        ? supplyWindow(
            figures,
            'logic-voltage',
            { ...base, kind: 'input', id: logicPart, title: `logic supply of the driver of ${circuit}` },
            [takes],
          )
        : []),
      heat({ ...base, title: `driver of ${circuit}, junction` }, figures, part, supply),
    ],
  };
}

const named = (figures: Figures, key: string): boolean => figures.says(key) && !figures.masked(key);

type Base = Pick<AccountPlan, 'id' | 'kind' | 'circuits' | 'path' | 'title'>;

/** What it is set to in a winding, which one of them carries whole when it carries alone. */
function setCurrent(base: Base, figures: Figures, part: string, share: number): AccountPlan {
  const limit = rating(figures, 'maximum-current', 'current');
  const set = (s: Reading): number => (s.held(part)?.amps ?? 0) / share;
  return {
    ...base,
    quantity: 'current',
    direction: 'at-most',
    recipes: ['draw-most', 'draw-least'],
    read: set,
    books: [{ circuit: base.circuits[0]!, part, share: carries(part, share) }],
    limits: limit ? [limit] : [],
    ...(!limit && {
      missing: {
        figure: 'maximum-current',
        asks: `what current may the ${base.title} hold (its \`maximum-current\`)?`,
      },
    }),
    steps: (s) => [
      ...phaseSteps(s, part, share),
      {
        name: 'I_set',
        says: 'what one winding carries when it carries alone',
        formula: 'I_phase / x',
        with: { I_phase: [s.held(part)?.amps ?? 0, 'A'], x: [share, ''] },
        gives: [set(s), 'A'],
      },
    ],
  };
}

/** The junction of its switches: they turn n · I² · R to heat, and the chip what it takes itself. Switching losses are not counted. */
function heat(base: Base, figures: Figures, part: string, supply: string): AccountPlan {
  const own = named(figures, 'quiescent') ? figures.interval('quiescent', 'current') : undefined;
  // It takes that whatever else leans: the most of it counts.
  const ownAmps = (s: Reading): number => (s.typical ? own?.typ : own?.max) ?? 0;
  const ownWatts = (s: Reading): number => ownAmps(s) * s.voltage(supply);
  const lost = (s: Reading): number => {
    const held = s.held(part);
    return held === undefined ? 0 : held.windings * held.amps ** 2 * held.bridge;
  };
  const warm = heatAccount(base, heatOf(figures, base.id), (s) => lost(s) + ownWatts(s), [
    'hottest',
    'draw-most',
    'draw-least',
  ]);
  if (!named(figures, 'on-resistance')) {
    const asks = `what resistance do both switches in a winding's way have in the ${base.title.replace(/, junction$/, '')} (its \`on-resistance\`)?`;
    return { ...warm, limits: [], read: () => undefined, missing: { figure: 'on-resistance', asks } };
  }
  return {
    ...warm,
    steps: (s) => {
      const held = s.held(part);
      return [
        ...(held
          ? [
              {
                name: 'P',
                says: 'what its switches turn to heat, and what it takes itself',
                formula: `n * I_phase^2 * R_bridge${own ? ' + V * I_own' : ''}`,
                with: {
                  n: [held.windings, ''] as const,
                  I_phase: [held.amps, 'A'] as const,
                  R_bridge: [held.bridge, 'Ω'] as const,
                  ...(own && { V: [s.voltage(supply), 'V'] as const, I_own: [ownAmps(s), 'A'] as const }),
                },
                gives: [lost(s) + ownWatts(s), 'W'] as const,
              },
            ]
          : []),
        ...warm.steps(s),
      ];
    },
  };
}
