/**
 * Charlieplexed displays: between each two of a few pins lie two LEDs, one either way, so that n pins light n·(n − 1) of them. In
 * each turn one pin is high and one or more are low; the others float. An LED's current passes two pins and the two resistors at
 * them.
 *
 * Each turn is a circuit of its own with the same pins in it, and never two of them are on together. A turn with all its LEDs is
 * the most for the pin that is high, one with a single LED for a pin that is low and for the LED. Both are among the turns.
 */
import { junctionAt, junctionVoltage } from '../circuit/junction.js';
import type { Curve } from './figures.js';
import { junctionSpread } from './laws.js';
import type { BoundPin, Hook, LoadInput, Lowered, NetworkSketch } from './lowering.js';
import { NOTHING } from './lowering.js';
import { leadMember, ledAccount, resistorHeat, resistorMember, stuckLed, stuckResistor } from './lit-in-turns.js';
import type { Lit } from './lit-limits.js';
import { asksRefresh, flickerAccount, refreshOf } from './refresh.js';
import type { AccountPlan, Reading, Step } from './account-plan.js';
import type { JunctionSpread } from './branch-plan.js';
import type { CircuitPlan } from './circuit-plan.js';
import { seriesFigure } from './series.js';

export const isCharlieplexed = ({ entry }: LoadInput): boolean => entry['charlieplexed-pins'] !== undefined;

/** Amperes at which an LED is seen in a dark room (common practice, no source). */
const SEEN = 10e-6;

interface Display {
  readonly input: LoadInput;
  readonly pins: readonly BoundPin[];
  /** LEDs that are lit together. */
  readonly together: number;
  readonly law: JunctionSpread;
  readonly curve: Curve;
}

export function lowerCharlieplexed(input: LoadInput): Lowered {
  const display = displayOf(input);
  if (display === undefined) return NOTHING;
  const { pins, together } = display;
  const { id, path } = input;
  const turns = pins.map((_, k) => ({ circuit: `${id}.${k + 1}`, source: k, lit: together }));
  // With one LED at a time these are the turns themselves.
  const singles = together === 1 ? [] : pins.map((_, k) => ({ circuit: `${id}.single-${k + 1}`, source: k, lit: 1 }));
  const all = [...turns, ...singles].map((turn) => turnOf(display, turn));
  const [first] = turns;
  const one = singles[0] ?? first!;
  return {
    circuits: all.map((t) => t.plan),
    networks: all.map((t) => t.network),
    accounts: accountsOf(display, first!.circuit, one.circuit),
    interlocks: [{ most: 1, of: [...turns, ...singles].map((t) => t.circuit), path, by: 'wiring', turns: true }],
  };
}

function displayOf(input: LoadInput): Display | undefined {
  const { figures, entry, bench, path, id } = input;
  const curve = figures.curve('forward-voltage', 'voltage', 'current');
  if (curve === undefined) {
    figures.problem(
      'forward-voltage',
      `the LEDs of \`${id}\` have no forward voltage`,
      '`forward-voltage: 1.8 to 2.2 V`',
    );
    return undefined;
  }
  const key = 'charlieplexed-pins';
  const names = bench.pinNames(entry[key], [...path, key]);
  const pins = names.flatMap((p) => bench.outputPin(p.name, p.path, id, 'high') ?? []);
  if (pins.length < names.length) return undefined;
  const problem = (at: string, says: string, expected: string): undefined => {
    figures.problem(at, says, expected);
    return undefined;
  };
  if (new Set(pins.map((p) => p.account)).size < pins.length)
    return problem(key, `a pin of \`${id}\` is named twice`, 'each pin once');
  if (pins.length < 2)
    return problem(key, `\`${id}\` has LEDs between pins, and one pin is not enough`, '`[D2, D3, D4]`');
  if (pins.some((p) => p.rail !== pins[0]!.rail))
    return problem(key, `the pins of \`${id}\` are of chips with different supplies`, 'pins of one chip');
  const together = figures.count('lit-together') ?? 1;
  if (together > pins.length - 1)
    return problem(
      'lit-together',
      `from one pin of \`${id}\` that is high at most ${pins.length - 1} LEDs lead to the others, and ${together} are to be lit together`,
      String(pins.length - 1),
    );
  return { input, pins, together, law: junctionSpread(curve), curve };
}

interface Turn {
  readonly circuit: string;
  /** The pin that is high. */
  readonly source: number;
  readonly lit: number;
}

const ledOf = (circuit: string, k: number): string => `${circuit}.led-${k + 1}`;

function turnOf(
  { input, pins, law, curve }: Display,
  { circuit, source, lit }: Turn,
): { readonly plan: CircuitPlan; readonly network: NetworkSketch } {
  const { path, id, type } = input;
  const node = `${circuit}:anodes`;
  const from = pins[source]!;
  const hooks: Hook[] = [
    {
      pin: from,
      active: 'high',
      flows: 'out',
      to: node,
      members: [resistorMember(input, `${circuit}.source`) ?? leadMember(`${circuit}.source`)],
      circuit,
    },
    ...Array.from({ length: lit }, (_, k): Hook => {
      const resistor = resistorMember(input, `${circuit}.sink-${k + 1}`);
      return {
        pin: pins[(source + 1 + k) % pins.length]!,
        active: 'low',
        flows: 'in',
        to: node,
        members: [
          { kind: 'junction', part: ledOf(circuit, k), law, origin: curve.origin },
          ...(resistor ? [resistor] : []),
        ],
        circuit,
      };
    }),
  ];
  return {
    plan: {
      id: circuit,
      owner: id,
      path,
      type,
      always: false,
      wiring: {
        by: 'pin',
        inductive: false,
        clamp: 'not-needed',
        ...(!seriesFigure(input.figures) && { unlimited: [{ part: ledOf(circuit, 0), pin: from.account }] }),
      },
    },
    network: { id: circuit, circuits: [circuit], side: 'load', inner: [node], hooks, on: [], off: [], alone: true },
  };
}

/** What an LED carries, what heats a resistor, and what the LEDs see that are not lit. @param whole a turn @param one that lights a single LED */
function accountsOf(display: Display, whole: string, one: string): AccountPlan[] {
  const { input, pins, together } = display;
  const { id, path } = input;
  const base = { circuits: [one], path };
  const led = ledOf(one, 0);
  const share = together / (pins.length * (pins.length - 1));
  const refresh = refreshOf(input);
  const lit: Lit = refresh ? { share, seconds: share / refresh.min } : { share, asks: asksRefresh(id) };
  return [
    ledAccount(
      input,
      { ...base, id: `${id}.led`, title: `LED of ${id}, while it is lit` },
      { name: `an LED of ${id}`, says: 'current of an LED while it is lit' },
      lit,
      () => led,
    ),
    ...stuckLed(input, base, `an LED of ${id}`, share, () => led),
    ...stuckResistor(input, { path, circuits: [whole] }, `a resistor of ${id}`, share, () => `${whole}.source`),
    ...flickerAccount(id, base, refresh),
    ...resistorHeat(
      input,
      { path, circuits: [whole], id: `${id}.series`, title: `${id}.series, heat` },
      `a resistor of ${id}`,
      heatOf(display, whole),
    ),
    unlit(display, { ...base, direction: 'at-most' }, led),
  ];
}

/** A pin's resistor carries all LEDs of its own turn, and one LED in the turns of the others. */
const heatOf =
  ({ pins, together }: Display, circuit: string) =>
  (s: Reading): Step => {
    const source = `${circuit}.source`;
    const [ohms, all, one] = [s.ohms(source), s.current(source), s.current(ledOf(circuit, 0))];
    return {
      name: 'P',
      says: 'heat in a pin’s resistor, on average over the turns: once all LEDs of its own, else one of another pin’s',
      formula: 'R * (I_source^2 + k * I_led^2) / n',
      with: { R: [ohms, 'Ω'], I_source: [all, 'A'], k: [together, ''], I_led: [one, 'A'], n: [pins.length, ''] },
      gives: [(ohms * (all ** 2 + together * one ** 2)) / pins.length, 'W'],
    };
  };

/**
 * Two LEDs in series lead from the high pin over a floating one to the low one. They see what the lit LED leaves them, so that
 * LEDs of one kind stay dark; where some drop twice as much as others, two of these glow.
 */
function unlit(
  { input, law }: Display,
  base: Pick<AccountPlan, 'circuits' | 'path' | 'direction'>,
  led: string,
): AccountPlan {
  const { id } = input;
  // Most volts at most current: no build has quite both, since an LED that drops more leaves less current.
  const lit = (s: Reading): number =>
    junctionVoltage(junctionAt(law[s.typical ? 'typ' : 'max'], s.ambient), s.current(led));
  const glows = (s: Reading): number =>
    2 * junctionVoltage(junctionAt(law[s.typical ? 'typ' : 'min'], s.ambient), SEEN);
  return {
    ...base,
    id: `${id}.unlit`,
    kind: 'input',
    title: `LEDs of ${id} that are not lit`,
    quantity: 'voltage',
    recipes: ['draw-most', 'draw-least'],
    read: lit,
    limits: [
      {
        value: glows,
        stated: 'twice what the weakest LED drops at 10 µA',
        grade: 'practice',
        isFunction: true,
        margin: 'none',
        origin: { document: 'common practice, no source', basis: 'practice' },
        condition: 'two LEDs in series over a pin that floats',
      },
    ],
    steps: (s) => [
      {
        name: 'V_lit',
        says: 'what a lit LED that drops the most leaves across two others in series',
        formula: 'V',
        with: { V: [lit(s), 'V'] },
        gives: [lit(s), 'V'],
      },
    ],
  };
}
