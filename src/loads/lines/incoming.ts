/**
 * Voltages that others put on our pins: a module's output, another chip's pin, a contact. Each becomes one small network:
 * what drives it, the resistance on its way, the resistors that hold the pin, and the pin's clamps.
 */
import { exactly, type Interval } from '../../quantity/interval.js';
import { closed } from '../../quantity/quantity.js';
import type { Figures } from '../figures.js';
import { OWN_FIGURE } from '../figures.js';
import type { Bench, BoundPin, NetworkSketch } from '../lowering.js';
import { USUAL_PIN } from '../lowering.js';
import type { AccountPlan, LineEnds } from '../account-plan.js';
import type { BranchPlan, Member } from '../branch-plan.js';
import type { LineFact } from '../circuit-plan.js';
import { GROUND } from '../branch-plan.js';
import type { Way } from './injection.js';
import { deadAccount, injectionAccount } from './injection.js';
import { UNCLAMPED, unclampedAccount } from './overdriven.js';
import { levelAccount } from './levels.js';
import type { InputPin, LoweredLine } from './line.js';
import { NO_LINE, pullsDown } from './line.js';
import { linePower } from './line-power.js';
import { CLAMP_ASSUMED, PIN_CLAMP } from './pin-clamp.js';

type Raw = Readonly<Record<string, unknown>>;
type Path = readonly (string | number)[];

export interface IncomingInput {
  readonly id: string;
  readonly path: Path;
  readonly entry: Raw;
  readonly figures: Figures;
  readonly bench: Bench;
}

/** A closed contact, ohms (common practice, no source: small signal contacts are specified below 100 mΩ). */
const CONTACT: Interval = { min: 0.001, typ: 0.05, max: 0.1 };
/** A voltage whose range is more than this share of its middle is a measured quantity, not a level. */
const LEVEL_WIDTH = 0.5;

/** What drives the line. */
interface Source {
  readonly kind: 'voltage' | 'pin' | 'to-ground' | 'to-supply';
  /** Node that drives it high; none for a contact that closes to ground. */
  readonly node?: string;
  readonly sender?: BoundPin;
  readonly members: readonly Member[];
  /** What makes it alive, where that is known. */
  readonly life?: string;
  readonly below?: true;
  /** It takes any voltage of its range: it is measured, not read as high or low. */
  readonly analogue?: true;
}

/** A resistor between the pin and a node. */
interface Holder {
  readonly part: string;
  readonly to: string;
  readonly ohms: Interval;
  readonly member: Member;
}

export function lowerIncoming(input: IncomingInput): LoweredLine {
  const { id, path, entry, bench, figures } = input;
  const pin = bench.inputPin(entry['pin'], [...path, 'pin'], id, entry['type'] !== 'contact');
  const unknown = ['voltage', 'series', 'pull-up', 'pull-down'].find(
    (key) => figures.masked(key) || figures.within(key).masked('resistance'),
  );
  if (pin !== undefined && unknown !== undefined) return unproven(input, pin, unknown);
  const source = sourceOf(input, pin);
  if (pin === undefined || source === undefined) return NO_LINE;
  const holders = holdersOf(input, pin);
  const node = `${id}:pin`;
  // A contact to ground holds the pin low while it is closed; everything else holds it high while it is on.
  const highOff = source.kind === 'to-ground';
  const open = source.kind === 'to-ground' || source.kind === 'to-supply';
  const pushing = [
    ...(source.node === undefined ? [] : [source.node]),
    ...holders.flatMap((h) => (h.to === GROUND ? [] : [h.to])),
  ];
  const ends: LineEnds = { from: pushing, at: pin.rail, ...(source.below && { below: true as const }) };
  const others = pushing.filter((n) => n !== pin.rail);
  const dead = deadRail(bench, source, others, pin);
  const clamps = clampsOf(bench, id, node, pin, others, source.below === true);
  if (clamps.length > 0 || dead) bench.assume(pin.owner, CLAMP_ASSUMED, path);

  const held = (): BranchPlan[] =>
    holders.map((h) => ({
      ...{ from: h.to, to: node, members: [h.member], circuit: id, line: 'pull' as const },
      ...(h.to !== GROUND && pullsDown((n) => bench.nominal(n), h.to, pushing) && { lowers: true as const }),
    }));
  const drive = (from: string, to: string): BranchPlan => ({ from, to, members: source.members, circuit: id });
  const on: BranchPlan[] =
    source.kind === 'pin'
      ? []
      : source.kind === 'to-ground'
        ? [drive(node, GROUND)]
        : [{ ...drive(source.node!, node), ...(source.kind === 'voltage' && { line: 'drive' as const }) }];
  const off: BranchPlan[] = source.kind === 'voltage' ? [drive(node, GROUND)] : [];
  const leak = open && holders.length > 0 ? [leakage(id, node, pin, highOff)] : [];
  const sketch: NetworkSketch = {
    id,
    circuits: [id],
    side: 'load',
    inner: [node],
    hooks: source.sender
      ? [{ pin: source.sender, active: 'high', flows: 'out', to: node, members: source.members, circuit: id }]
      : [],
    on: [...on, ...held(), ...clamps],
    off: [...off, ...held(), ...clamps, ...leak],
  };
  const parts = (isOff: boolean): string[] => [
    ...(isOff && open ? [] : [source.sender?.account ?? source.members[0]!.part]),
    ...holders.map((h) => h.part),
    ...clamps.map((c) => c.members[0]!.part),
    ...(isOff ? leak.map((l) => l.members[0]!.part) : []),
  ];
  const accounts: AccountPlan[] = [];
  const floats = open && holders.length === 0;
  if (source.analogue === undefined)
    for (const level of ['high', 'low'] as const) {
      const isOff = (level === 'high') === highOff;
      if (isOff && floats) continue;
      // Where nothing lifts it, a line that is let down to ground is at ground.
      if (level === 'low' && !open && holders.every((h) => h.to === GROUND)) continue;
      accounts.push(
        levelAccount(
          {
            id,
            title: `${id} at pin ${pin.label}`,
            circuit: id,
            path,
            node,
            rail: pin.rail,
            ...(pin.thresholds && { thresholds: pin.thresholds }),
            parts: parts(isOff),
          },
          level,
          { off: isOff, ends },
        ),
      );
    }
  if (pin.thresholds === undefined && source.analogue === undefined)
    bench.assume(
      pin.owner,
      'its inputs read by 30 / 50 / 70 % of its supply, since nobody publishes their levels',
      path,
    );
  const injecting = clamps.map((c) => c.members[0]!.part);
  const injection = {
    circuit: id,
    path,
    pin,
    ends,
    off: highOff,
    node,
    clamps: injecting,
    parts: parts(highOff).filter((part) => !injecting.includes(part)),
  };
  if (injecting.length > 0) accounts.push(injectionAccount(injection));
  if (!pin.clamped && others.some((n) => bench.window(n).max > UNCLAMPED.min))
    accounts.push(
      unclampedAccount({
        ...{ id, title: `${id} at pin ${pin.label}`, circuit: id, path, node, rail: pin.rail },
        ...{ ends, off: highOff },
      }),
    );
  if (dead) accounts.push(deadAccount(injection, waysOf(source, holders, highOff, pin.rail)));
  accounts.push(...linePower(input, source.members, holders, pushing, { ends, circuit: id, path }));
  const facts: LineFact[] = floats
    ? [{ kind: 'floats', about: id, path, with: { pin: pin.label, state: 'open' } }]
    : [];
  return {
    circuits: [
      {
        id,
        owner: id,
        path,
        type: 'incoming',
        always: false,
        signal: true,
        wiring: {
          by: 'nothing',
          inductive: false,
          clamp: 'not-needed',
          ...(source.sender && { pin: source.sender.account }),
        },
      },
    ],
    networks: [sketch],
    accounts,
    // What is pushed into it has an account of its own.
    ends: pin.clamped
      ? [
          {
            ...{ node, rail: pin.rail, about: id, told: `pin ${pin.label}`, owner: pin.owner, path, injected: [] },
            ...(source.sender && { source: source.sender.account }),
          },
        ]
      : [],
    facts,
  };
}

/** A figure is called unknown, without which nothing of the line can be reckoned. */
const unproven = ({ id, path }: IncomingInput, pin: InputPin, figure: string): LoweredLine => ({
  ...NO_LINE,
  accounts: [
    {
      ...{ id, kind: 'level', title: `${id} at pin ${pin.label}`, quantity: 'voltage', direction: 'at-least' },
      ...{ circuits: [], path, recipes: ['draw-most'], limits: [], read: () => undefined, steps: () => [] },
      missing: { figure, asks: `what is the ${figure} of ${id} (its \`${figure}\`)?` },
    },
  ],
});

function sourceOf(input: IncomingInput, pin: InputPin | undefined): Source | undefined {
  const { id, path, entry, bench, figures } = input;
  const life = entry['with'] === undefined ? undefined : bench.node(entry['with'], [...path, 'with']);
  const series = resistorOf(figures, 'series', `${id}.series`);
  const given = resistorOf(figures, 'resistance', `${id}.resistance`);
  const own = [...given, ...series];
  const alive = life === undefined ? {} : { life };
  if (entry['type'] === 'contact') {
    const members = own.length > 0 ? own : [resistor(`${id}.contact`, CONTACT)];
    if (entry['closes-to'] === 'ground') return { kind: 'to-ground', members, ...alive };
    const node = life ?? pin?.rail;
    return node === undefined ? undefined : { kind: 'to-supply', node, members, ...alive };
  }
  if (entry['from'] !== undefined) {
    const sender = bench.outputPin(entry['from'], [...path, 'from'], id, 'high');
    if (sender === undefined) return undefined;
    return { kind: 'pin', node: sender.rail, sender, members: own, life: life ?? sender.rail };
  }
  const voltage = figures.figure('voltage', 'voltage');
  if (voltage === undefined) return undefined;
  const volts = closed(voltage.quantity);
  if (own.length === 0)
    bench.assume(
      id,
      `what drives it has ${USUAL_PIN.min} to ${USUAL_PIN.max} Ω, since nobody states its resistance`,
      path,
    );
  const middle = Math.abs(volts.max + volts.min) / 2;
  const wide = volts.max - volts.min > LEVEL_WIDTH * middle;
  if (wide)
    bench.assume(
      id,
      'any voltage of its range may stand at the pin: it is measured there, not read as high or low',
      path,
    );
  return {
    kind: 'voltage',
    node: bench.outside(`${id}:source`, `what drives ${id}`, volts, path, life),
    members: own.length > 0 ? own : [resistor(`${id}.resistance`, USUAL_PIN)],
    ...alive,
    ...(volts.min < 0 && { below: true as const }),
    ...(wide && { analogue: true as const }),
  };
}

const resistor = (part: string, ohms: Interval): Member => ({ kind: 'resistance', part, ohms });

function resistorOf(figures: Figures, key: string, part: string): Member[] {
  const figure = figures.figure(key, 'resistance');
  if (figure === undefined) return [];
  const ohms = closed(figure.quantity);
  if (ohms.min > 0) return [{ ...resistor(part, ohms), origin: figure.origin }];
  figures.problem(key, 'a resistance has to be above zero', `leave \`${key}\` out where there is none`);
  return [];
}

/** The resistors that hold the pin: those of the entry, and those of the pin itself. */
function holdersOf({ id, figures, bench, path }: IncomingInput, pin: InputPin): Holder[] {
  const own = (['pull-up', 'pull-down'] as const).flatMap((key): Holder[] => {
    const part = `${id}.${key}`;
    const spelled = figures.within(key);
    const [member] = spelled.says('resistance')
      ? resistorOf(spelled, 'resistance', part)
      : resistorOf(figures, key, part);
    if (member?.kind !== 'resistance') return [];
    const supply = spelled.says('supply') ? bench.node(spelled.word('supply'), [...path, key, 'supply']) : pin.rail;
    if (supply === undefined) return [];
    return [{ part, to: key === 'pull-down' ? GROUND : supply, ohms: member.ohms, member }];
  });
  const ofPin = pin.pulls.map((p): Holder => {
    const member: Member = { kind: 'resistance', part: p.part, ohms: p.ohms, origin: p.origin };
    return { part: p.part, to: p.to === 'rail' ? pin.rail : GROUND, ohms: p.ohms, member };
  });
  return [...own, ...ofPin];
}

/** The clamps that can come to carry anything. */
function clampsOf(
  bench: Bench,
  id: string,
  node: string,
  pin: InputPin,
  others: readonly string[],
  below: boolean,
): BranchPlan[] {
  const rail = bench.window(pin.rail).min;
  const above = pin.clamped && others.some((n) => bench.window(n).max > 0.8 * rail);
  const branch = (from: string, to: string, part: string): BranchPlan => ({
    from,
    to,
    members: [{ kind: 'junction', part: `${id}.${part}`, law: PIN_CLAMP }],
    circuit: id,
    line: 'clamp',
  });
  return [
    ...(above ? [branch(node, pin.rail, 'clamp')] : []),
    ...(below ? [branch(GROUND, node, 'ground-clamp')] : []),
  ];
}

/** Whether the chip's supply can be dead while something that pushes into its pin lives. */
function deadRail(bench: Bench, source: Source, others: readonly string[], pin: InputPin): boolean {
  if (!pin.clamped) return false;
  const ours = bench.sources(pin.rail);
  const apart = (node: string): boolean => {
    const theirs = bench.sources(node);
    return theirs.length > 0 && !theirs.some((s) => ours.includes(s));
  };
  if (source.life !== undefined) return source.node !== undefined && apart(source.life);
  // Of what only has a voltage nobody said what keeps it alive.
  return others.some((n) => n !== source.node && apart(n)) || (source.kind === 'to-supply' && apart(source.node!));
}

/** All ways to the pin while its own supply is dead, which then is no more than ground. */
function waysOf(source: Source, holders: readonly Holder[], isOff: boolean, rail: string): Way[] {
  const alive = (node: string): { readonly node?: string } => (node === rail || node === GROUND ? {} : { node });
  const drive: Way[] =
    isOff || source.node === undefined
      ? []
      : [
          {
            parts: [...(source.sender ? [source.sender.account] : []), ...source.members.map((m) => m.part)],
            ...alive(source.node),
          },
        ];
  return [...drive, ...holders.map((h) => ({ parts: [h.part], ...alive(h.to) }))];
}

/** What the input itself takes from, or gives to, a line that nothing but a resistor holds. */
function leakage(id: string, node: string, pin: InputPin, high: boolean): BranchPlan {
  const members: Member[] = [
    { kind: 'current', part: `${id}.leakage`, amps: { ...exactly(0), max: pin.leakage.max }, origin: OWN_FIGURE },
  ];
  return high ? { from: node, to: GROUND, members, circuit: id } : { from: pin.rail, to: node, members, circuit: id };
}
