/**
 * A signal that a pin of ours drives: what the pin comes to under all that hangs on it, against what the other end reads.
 * Where both ends live from one rail and nothing else hangs on the pin there is nothing to prove.
 */
import type { Interval } from '../../quantity/interval.js';
import { formatInterval } from '../../quantity/print.js';
import type { Bench, NetworkSketch } from '../lowering.js';
import type { AccountPlan, LineEnds, Reading, Step } from '../account-plan.js';
import type { BranchPlan } from '../branch-plan.js';
import { injectionAccount } from './injection.js';
import { levelAccount } from './levels.js';
import type { LoweredLine } from './line.js';
import { NO_LINE } from './line.js';
import { overdrivenAccount } from './overdriven.js';
import { PIN_CLAMP } from './pin-clamp.js';
import type { Signal } from './signal.js';

/** The wire to the other end, ohms. */
const LEADS = 1e-3;
const NO_RESISTOR: Interval = { min: 0, typ: 0, max: 0 };

/** @param loaded something else hangs on the pin */
export function lowerDriven(signal: Signal, bench: Bench, loaded: boolean): LoweredLine {
  const { output, by, role, path, reader, series = NO_RESISTOR } = signal;
  const id = `${by}.${role}`;
  const rail = signal.supply ?? unnamedSupply(signal, bench, id) ?? output.rail;
  const fixed = signal.highFrom !== undefined;
  if (rail === output.rail && !loaded && !fixed) return NO_LINE;
  const node = `${id}:line`;
  const ends: LineEnds = { from: [output.rail], at: rail };
  const title = `${role} of ${by} at pin ${signal.input.label}`;
  const thresholds = reader?.thresholds ?? signal.thresholds;
  const receiver = {
    ...{ id, title, circuit: id, path, node, rail, parts: [] },
    ...(thresholds && { thresholds }),
    ...(signal.highFrom !== undefined && { highFrom: signal.highFrom }),
  };
  if (thresholds === undefined && !fixed)
    bench.assume(by, 'its inputs read by 30 / 50 / 70 % of its supply, since nobody publishes their levels', path);
  const levels = (['high', 'low'] as const)
    .map((level) => levelAccount(receiver, level, { off: level === 'low', ends }))
    .filter((a) => a.limits.length > 0)
    .map((a): AccountPlan => ({
      ...a,
      steps: (s) => [...pinSteps(output.account, node, a.off === true, s), ...a.steps(s)],
    }));
  const over = rail !== output.rail && bench.window(output.rail).max > bench.window(rail).min * 1.1;
  // Where its maker states what may be pushed in, that decides; else nobody knows what it bears.
  const clamps: BranchPlan[] =
    over && reader?.clamped && reader.injected.length > 0
      ? [
          {
            ...{ from: node, to: rail, circuit: id, line: 'clamp' },
            members: [{ kind: 'junction', part: `${id}.clamp`, law: PIN_CLAMP }],
          },
        ]
      : [];
  const beyond: AccountPlan[] = !over
    ? []
    : clamps.length > 0
      ? [
          injectionAccount({
            ...{ circuit: id, path, pin: reader!, ends, off: false, node },
            clamps: [`${id}.clamp`],
            parts: [`${id}.wire`],
          }),
        ]
      : [overdrivenAccount({ ...receiver, off: false, ends, ...(signal.bears && { bears: signal.bears }) })];
  const sketch: NetworkSketch = {
    id,
    circuits: [id],
    side: 'load',
    inner: [node],
    hooks: [
      {
        pin: output,
        active: 'high',
        flows: 'out',
        to: node,
        members: [
          {
            kind: 'resistance',
            part: `${id}.wire`,
            ohms: { min: series.min + LEADS, typ: series.typ + LEADS, max: series.max + LEADS },
          },
        ],
        circuit: id,
      },
    ],
    on: clamps,
    off: clamps,
  };
  return {
    circuits: [
      {
        ...{ id, owner: id, path, type: 'signal', always: false, signal: true },
        wiring: { by: 'nothing', inductive: false, clamp: 'not-needed', pin: output.account },
      },
    ],
    networks: [sketch],
    accounts: [...levels, ...beyond],
    ends:
      (reader?.clamped ?? signal.bears === undefined) && rail !== output.rail
        ? [
            {
              ...{ node, rail, about: id, told: `${role} of ${by}`, owner: by, path, source: output.account },
              injected: reader?.injected ?? [],
              ...(reader === undefined && { assumed: true as const }),
            },
          ]
        : [],
    facts: [],
  };
}

/** What feeds a reader when nobody says so: the pin's own rail where it works on that, else a supply on which it does. */
function unnamedSupply({ works, output, by, path }: Signal, bench: Bench, id: string): string | undefined {
  if (works === undefined) return undefined;
  const { typ } = bench.window(output.rail);
  if (typ >= works.min && typ <= works.max) {
    bench.assume(by, 'its logic is fed from the rail of the pins that steer it, since the file does not say', path);
    return undefined;
  }
  bench.assume(
    by,
    `its logic is fed with ${formatInterval(works, 'voltage')}, on which it works, since the file does not say`,
    path,
  );
  return bench.outside(`${id}:supply`, `what feeds the logic of ${by}`, works, path);
}

/** What the pin loses of its rail, or keeps above ground, under its load. */
function pinSteps(pin: string, node: string, low: boolean, s: Reading): Step[] {
  const branch = s.branch(pin);
  const own = branch?.members.find(({ member }) => member.kind === 'pin');
  if (branch === undefined || own?.ohms === undefined) return [];
  // Towards the rail where current is sourced, towards ground where it is sunk.
  const [near, far] =
    branch.from.node === node || branch.to.node === node ? [branch.from, branch.to] : [branch.from, branch.to];
  const supply = low ? (near.volts < far.volts ? near : far) : near.volts > far.volts ? near : far;
  const amps = Math.abs(branch.amps);
  const shared = { I: [amps, 'A'] as const, R_pin: [own.ohms, 'Ω'] as const };
  const volts = s.voltage(node);
  if (Math.abs((low ? amps * own.ohms : supply.volts - amps * own.ohms) - volts) > 1e-6) return [];
  return [
    low
      ? {
          name: 'V',
          says: 'what the pin keeps above ground under its load',
          formula: 'I * R_pin',
          with: shared,
          gives: [volts, 'V'],
        }
      : {
          name: 'V',
          says: 'what is left of the pin’s rail under its load',
          formula: 'V_supply - I * R_pin',
          with: { V_supply: [supply.volts, 'V'], ...shared },
          gives: [volts, 'V'],
        },
  ];
}
