/**
 * A line of a two-wire bus: everybody pulls it low and nobody drives it high; resistors do. They must not be so strong that a
 * device cannot pull it down, nor so weak that it rises too slowly, and all of them count together.
 * Source: NXP, UM10204, I2C-bus specification and user manual, Rev. 5, section 7.1 and table 9.
 */
import type { Interval } from '../../quantity/interval.js';
import type { Bench } from '../lowering.js';
import { USUAL_PIN } from '../lowering.js';
import type { AccountPlan, LineEnds, Reading, Step } from '../account-plan.js';
import type { BranchPlan, Member, Origin } from '../branch-plan.js';
import { GROUND } from '../branch-plan.js';
import { injectionAccount } from './injection.js';
import { levelAccount } from './levels.js';
import type { LineEnd, LoweredLine } from './line.js';
import { pullsDown } from './line.js';
import { overdrivenAccount } from './overdriven.js';
import { PIN_CLAMP } from './pin-clamp.js';
import type { Signal } from './signal.js';

const SPECIFICATION: Origin = {
  document: 'I2C-bus specification and user manual, NXP, UM10204, Rev. 5',
  where: 'table 9 and section 7.1',
  basis: 'document',
};
/** What every device can pull down at least, amperes, and the voltage it then still stands at, volts. */
const SINK = 3e-3;
const LOW = 0.4;
/** Longest rise from 30 to 70 % at 100 kHz, seconds, and how many time constants that is: ln(0.7 / 0.3). */
const RISE = 1e-6;
const CONSTANTS = Math.log(0.7 / 0.3);
/** Farads: most of one pin (the specification), and the wires of a bus on a bench (common practice, no source). */
const PIN = 10e-12;
const WIRES = 50e-12;

/** A resistor that holds the line. */
interface Holder {
  readonly part: string;
  readonly to: string;
  readonly ohms: Interval;
  readonly origin: Origin;
}

/** @param signals all that share the line's pin, at least one */
export function lowerBus(signals: readonly Signal[], bench: Bench): LoweredLine {
  const [first] = signals;
  const { output, input: pin, path, role } = first!;
  const id = pin.account;
  const node = `${id}:bus`;
  const holders: Holder[] = [
    ...signals.flatMap((s): Holder[] =>
      s.pullUp && s.supply ? [{ part: `${s.by}.${s.role}-pull-up`, to: s.supply, ...s.pullUp }] : [],
    ),
    ...pin.pulls.map((p) => ({ ...p, to: p.to === 'rail' ? pin.rail : GROUND })),
  ];
  const ups = holders.filter((h) => h.to !== GROUND);
  const title = `bus line ${role} at pin ${pin.label}`;
  const shape = { id, circuits: [id], path };
  if (ups.length === 0) return { ...bare(id, path, pin.account), accounts: [unheld(shape, title, signals)] };

  const ends: LineEnds = { from: ups.map((h) => h.to), at: pin.rail };
  const member = (h: Holder): Member => ({ kind: 'resistance', part: h.part, ohms: h.ohms, origin: h.origin });
  const held = holders.map((h): BranchPlan => ({
    ...{ from: h.to, to: node, members: [member(h)], circuit: id, line: 'pull' },
    ...(h.to !== GROUND && pullsDown(bench.nominal, h.to, ends.from) && { lowers: true as const }),
  }));
  const low: BranchPlan = {
    from: node,
    to: GROUND,
    members: [{ kind: 'pin', part: pin.account, ohms: output.low?.ohms ?? USUAL_PIN }],
    circuit: id,
    pin: { pin: pin.account, level: 'low', outward: -1 },
  };
  const foreign = ups.some((h) => h.to !== pin.rail);
  const above = foreign && ups.some((h) => bench.window(h.to).max > 0.8 * bench.window(pin.rail).min);
  const clamp: BranchPlan[] =
    above && pin.clamped
      ? [
          {
            from: node,
            to: pin.rail,
            members: [{ kind: 'junction', part: `${id}.clamp`, law: PIN_CLAMP }],
            circuit: id,
            line: 'clamp',
          },
        ]
      : [];
  const parts = [...holders.map((h) => h.part), ...clamp.map((c) => c.members[0]!.part)];
  const readers = foreign || signals.some((s) => s.supply !== undefined && s.supply !== pin.rail);
  const accounts: AccountPlan[] = [
    pulledLow(shape, title, ups, ends),
    risesSlowly(shape, title, holders, ends, signals.length + 1),
  ];
  bench.assume(
    id,
    `${title}: ${Math.round((PIN * (signals.length + 1) + WIRES) * 1e12)} pF, 10 pF a device and 50 pF for its wires`,
    path,
  );
  if (readers) {
    const base = { circuit: id, node, parts, path };
    const own = { ...base, id, title, rail: pin.rail, ...(pin.thresholds && { thresholds: pin.thresholds }) };
    accounts.push(levelAccount(own, 'high', { off: true, ends }));
    for (const s of signals) {
      if (s.supply === undefined) continue;
      const theirs = {
        from: [...new Set([pin.rail, ...ups.map((h) => h.to)])].filter((n) => n !== s.supply),
        at: s.supply,
      };
      const receiver = {
        ...base,
        id: `${s.by}.${s.role}`,
        title: `${s.role} of ${s.by}`,
        rail: s.supply,
        path: s.path,
        ...(s.thresholds && { thresholds: s.thresholds }),
        ...(s.bears && { bears: s.bears }),
      };
      // What holds the line to its own supply reads it there as it likes.
      if (ups.some((h) => h.to !== s.supply)) {
        accounts.push(levelAccount(receiver, 'high', { off: true, ends: theirs }));
        if (ups.some((h) => bench.window(h.to).max > bench.window(s.supply!).min * 1.1))
          accounts.push(overdrivenAccount({ ...receiver, off: true, ends: theirs }));
      }
    }
  }
  if (clamp.length > 0)
    accounts.push(
      injectionAccount({
        ...{ circuit: id, path, pin, ends, off: true, node },
        clamps: clamp.map((c) => c.members[0]!.part),
        parts: holders.map((h) => h.part),
      }),
    );
  return {
    ...bare(id, path, pin.account),
    networks: [
      { id, circuits: [id], side: 'load', inner: [node], hooks: [], on: [...held, low], off: [...held, ...clamp] },
    ],
    accounts,
    ends: endsOf(signals, node),
  };
}

/** Who reads the line: the chip, and what hangs on it. What nothing but a resistor pulls up pushes little into any of them. */
const endsOf = (signals: readonly Signal[], node: string): LineEnd[] => {
  const { input, path } = signals[0]!;
  const base = { node, about: input.account, injected: [] };
  return [
    ...(input.clamped ? [{ ...base, rail: input.rail, told: `pin ${input.label}`, owner: input.owner, path }] : []),
    ...signals.flatMap((s): LineEnd[] =>
      s.supply === undefined || s.bears !== undefined
        ? []
        : [{ ...base, rail: s.supply, told: `${s.role} of ${s.by}`, owner: s.by, path: s.path, assumed: true }],
    ),
  ];
};

/** The line's circuit; it is on while somebody pulls it low. */
const bare = (id: string, path: Signal['path'], pin: string): LoweredLine => ({
  circuits: [
    {
      ...{ id, owner: id, path, type: 'bus', always: false, signal: true },
      wiring: { by: 'nothing', inductive: false, clamp: 'not-needed', pin },
    },
  ],
  networks: [],
  accounts: [],
  ends: [],
  facts: [],
});

type Shape = Pick<AccountPlan, 'id' | 'circuits' | 'path'>;

/** What a device has to carry that pulls the line down to the voltage at which its current is specified. */
function pulledLow(shape: Shape, title: string, ups: readonly Holder[], line: LineEnds): AccountPlan {
  const share = (h: Holder, s: Reading): number => (s.voltage(h.to) - LOW) / s.ohms(h.part);
  const sum = (s: Reading): number => ups.reduce((amps, h) => amps + share(h, s), 0);
  return {
    ...shape,
    kind: 'level',
    title: `${title}, pulled low`,
    quantity: 'current',
    direction: 'at-most',
    recipes: ['loaded', 'lowered'],
    line,
    read: sum,
    limits: [{ value: SINK, stated: '3 mA', grade: 'characterised', margin: 'none', origin: SPECIFICATION }],
    steps: (s) => {
      const values: Record<string, readonly [number, string]> = { V_low: [LOW, 'V'] };
      const terms = ups.map((h, k) => {
        values[`V_${k + 1}`] = [s.voltage(h.to), 'V'];
        values[`R_${k + 1}`] = [s.ohms(h.part), 'Ω'];
        return `(V_${k + 1} - V_low) / R_${k + 1}`;
      });
      const sources = ups.map((h, k) => `R_${k + 1}: ${h.part}, ${h.origin.document}`);
      const step: Step = {
        name: 'I',
        says: 'what all pull-ups together give while the line stands at 0.4 V, which a device has to carry away',
        formula: terms.join(' + '),
        with: values,
        gives: [sum(s), 'A'],
        sources,
      };
      return ups.length < 2 ? [step] : [togetherStep(ups, s), step];
    },
  };
}

const parallel = (holders: readonly Holder[], s: Reading): number =>
  1 / holders.reduce((siemens, h) => siemens + 1 / s.ohms(h.part), 0);

const togetherStep = (holders: readonly Holder[], s: Reading): Step => ({
  name: 'R',
  says: 'all that hold the line, side by side',
  formula: `1 / (${holders.map((_, k) => `1 / R_${k + 1}`).join(' + ')})`,
  with: Object.fromEntries(holders.map((h, k) => [`R_${k + 1}`, [s.ohms(h.part), 'Ω'] as const])),
  gives: [parallel(holders, s), 'Ω'],
});

/** How long the line takes to rise once it is let go. */
function risesSlowly(
  shape: Shape,
  title: string,
  holders: readonly Holder[],
  line: LineEnds,
  devices: number,
): AccountPlan {
  const farads = PIN * devices + WIRES;
  return {
    ...shape,
    kind: 'level',
    title: `${title}, let go`,
    quantity: 'time',
    direction: 'at-most',
    recipes: ['pressed', 'loaded'],
    line,
    off: true,
    read: (s) => CONSTANTS * parallel(holders, s) * farads,
    limits: [{ value: RISE, stated: '1 µs', grade: 'characterised', margin: 'none', origin: SPECIFICATION }],
    steps: (s) => [
      togetherStep(holders, s),
      {
        name: 't_rise',
        says: 'from 30 to 70 % of the way',
        formula: 'constants * R * C',
        with: { constants: [CONSTANTS, ''], R: [parallel(holders, s), 'Ω'], C: [farads, 'F'] },
        gives: [CONSTANTS * parallel(holders, s) * farads, 's'],
        sources: [`${SPECIFICATION.document}, section 7.1`],
      },
    ],
  };
}

/** Nobody states a resistor that would pull the line up: it could never be high. */
const unheld = (shape: Shape, title: string, signals: readonly Signal[]): AccountPlan => ({
  ...shape,
  kind: 'level',
  title,
  quantity: 'time',
  direction: 'at-most',
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing: {
    figure: 'pull-up',
    asks: `what pulls the ${title} up: resistors on ${signals.map((s) => s.by).join(' or ')} (\`pull-up\`), or at the pin (\`pins: { … pull-up }\`)?`,
  },
  steps: () => [],
});
