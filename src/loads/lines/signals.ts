/** All signals of a project, each lowered by the way it goes. */
import type { Bench } from '../lowering.js';
import type { AccountPlan } from '../account-plan.js';
import { lowerBus } from './bus.js';
import { lowerDriven } from './driven-signal.js';
import type { LoweredLine } from './line.js';
import { NO_LINE } from './line.js';
import type { Signal } from './signal.js';
import { wayOfSignal } from './signal.js';

/**
 * @param told pins of which an entry under `incoming` says what drives them @param loaded pins on which something else hangs
 */
export function lowerSignals(
  signals: readonly Signal[],
  bench: Bench,
  told: ReadonlySet<string>,
  loaded: ReadonlySet<string>,
): LoweredLine[] {
  const buses = new Map<string, Signal[]>();
  const others: LoweredLine[] = [];
  for (const signal of signals) {
    const { account } = signal.input;
    switch (wayOfSignal(signal.role)) {
      case 'bus':
        buses.set(account, [...(buses.get(account) ?? []), signal]);
        break;
      case 'ours':
        others.push(lowerDriven(signal, bench, loaded.has(account)));
        break;
      case 'theirs':
        if (!told.has(account)) others.push(lowerTheirs(signal, bench));
        break;
      default:
    }
  }
  return [...[...buses.values()].map((shared) => lowerBus(shared, bench)), ...others];
}

/** What a load on a higher supply drives onto our pin nobody knows before it is said. */
function lowerTheirs({ by, role, path, input, supply }: Signal, bench: Bench): LoweredLine {
  if (supply === undefined || bench.window(supply).typ < 1.1 * bench.window(input.rail).typ) return NO_LINE;
  const id = `${by}.${role}`;
  const account: AccountPlan = {
    id,
    kind: 'level',
    title: `${role} of ${by} at pin ${input.label}`,
    quantity: 'voltage',
    direction: 'injected',
    circuits: [],
    path,
    recipes: ['draw-most'],
    read: () => undefined,
    limits: [],
    missing: {
      figure: 'incoming',
      asks: `how high does ${by}, which lives from ${supply}, drive its line ${role} at pin ${input.label} (an entry under \`incoming\` with its \`voltage\`, \`resistance\` and \`pin\`)?`,
    },
    steps: () => [],
  };
  return { ...NO_LINE, accounts: [account] };
}
