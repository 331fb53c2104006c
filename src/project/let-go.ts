/**
 * Pins that have let go, as all of them have after a reset until firmware runs. What hangs on such a pin from a supply above
 * its own (a PNP's base, a gate's pull-up, an input fed with more) then draws it up, and flows on through the pin's clamp.
 */
import { branchSteps } from '../loads/branch-working.js';
import { UNPUBLISHED, UNPUBLISHED_DEAD, unpublished } from '../loads/lines/injection.js';
import type { InputPin } from '../loads/lines/line.js';
import { UNCLAMPED, UNCLAMPED_LIMIT } from '../loads/lines/overdriven.js';
import { PIN_CLAMP } from '../loads/lines/pin-clamp.js';
import type { AccountPlan, LimitPlan, Reading, Step } from '../loads/account-plan.js';
import type { BranchPlan, Member, NetworkPlan } from '../loads/branch-plan.js';
import { GROUND } from '../loads/branch-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { Path } from '../source/place.js';
import type { Corner, Released } from './let-go-flows.js';
import { pushed } from './let-go-flows.js';

/** Amperes: what flows below that is the leakage of junctions that do not conduct yet. */
const LITTLE = 1e-6;
/** What has to be known around the networks. */
export interface Surrounding {
  /** The pin as one that takes what is pushed in. */
  readonly input: (pin: string) => InputPin | undefined;
  /** Volts of a node of the tree as stated. */
  readonly window: (node: string) => Interval;
  /** The supplies that keep a node of the tree alive. */
  readonly sources: (node: string) => readonly string[];
  /** Where a circuit stands in the file. */
  readonly pathOf: (circuit: string) => Path | undefined;
}

/** In the place of a clamp where there is none. */
const NOTHING: Member = { kind: 'resistance', part: 'leakage', ohms: { min: 1e9, typ: 1e9, max: 1e9 } };

/** The accounts of what is pushed into pins that have let go. */
export function letGoAccounts(networks: readonly NetworkPlan[], around: Surrounding): AccountPlan[] {
  const seen = new Set<string>();
  return networks.flatMap((network) =>
    [network.off, network.on].flatMap((plans) =>
      plans.flatMap((plan): AccountPlan[] => {
        const released = releasedAt(network, plans, plan, around);
        if (released === undefined || seen.has(released.pin)) return [];
        const input = around.input(released.pin);
        const path = around.pathOf(released.circuit);
        if (input === undefined || path === undefined) return [];
        if (!input.clamped) {
          const open = { ...released, clamp: { ...released.clamp, members: [NOTHING] } };
          if (pushed(open, atWorst(released, around)).at <= UNCLAMPED.min) return [];
          seen.add(released.pin);
          return [overAccount(open, input, path, network.circuits)];
        }
        const worst = [released, withoutSupply(released, around)]
          .map((each) => ({ each, share: shareOf(each, input, around) }))
          .reduce((a, b) => (b.share > a.share ? b : a));
        if (worst.share <= 0) return [];
        seen.add(released.pin);
        return [account(worst.each, input, path, network.circuits)];
      }),
    ),
  );
}

/** The same pin with its chip's supply dead, and with all that dies with it. */
function withoutSupply(released: Released, { sources }: Surrounding): Released {
  const ours = sources(released.rail);
  const ends = [...released.ways, released.clamp].flatMap((b) => [b.from, b.to]);
  return { ...released, dead: new Set(ends.filter((n) => !livesOn(n, ours, released, sources))) };
}

/** Whether a node stays alive when some supplies are dead: something else keeps it, and none of those. */
function livesOn(
  node: string,
  dead: readonly string[],
  { inner }: Pick<Released, 'inner'>,
  sources: Surrounding['sources'],
): boolean {
  if (node === GROUND || inner.includes(node)) return true;
  const theirs = sources(node);
  return theirs.length > 0 && !theirs.some((s) => dead.includes(s));
}

/** What is pushed in at the worst, as a share of what it may come to; nothing where only junctions leak that do not conduct yet. */
function shareOf(released: Released, input: InputPin, around: Surrounding): number {
  const { amps } = pushed(released, atWorst(released, around));
  if (amps <= LITTLE) return 0;
  const limits = limitsOf(released, input).map(
    (l) => l.range?.max ?? (typeof l.value === 'number' ? l.value : Infinity),
  );
  return amps / Math.min(...limits);
}

const limitsOf = ({ dead }: Released, input: InputPin): readonly LimitPlan[] =>
  input.injected.length > 0
    ? input.injected
    : [dead ? unpublished(UNPUBLISHED_DEAD, '20 mA') : unpublished(UNPUBLISHED, '1 mA')];

/** Undefined where nothing on a pin stands above its supply, or a line has an account of its own for that. */
function releasedAt(
  { inner }: NetworkPlan,
  plans: readonly BranchPlan[],
  plan: BranchPlan,
  { window, sources }: Surrounding,
): Released | undefined {
  const { pin, circuit } = plan;
  if (pin === undefined || pin.level !== 'high' || pin.joined || plans.some((p) => p.line === 'clamp'))
    return undefined;
  if (plans.some((p) => p.members.some((m) => m.kind === 'power'))) return undefined;
  const rail = pin.outward === 1 ? plan.from : plan.to;
  const far = pin.outward === 1 ? plan.to : plan.from;
  const outer = plans.flatMap((p) => [p.from, p.to]).filter((n) => n !== GROUND && !inner.includes(n));
  const ours = sources(rail);
  const apart = (n: string): boolean => livesOn(n, ours, { inner }, sources);
  if (!outer.some((n) => n !== rail && (window(n).max > window(rail).min || apart(n)))) return undefined;
  const own = plan.members.filter((m) => m.kind !== 'pin');
  const node = own.length > 0 ? `${pin.pin}:pin` : far;
  const rest = plans.filter((p) => p !== plan);
  const last: BranchPlan[] =
    own.length === 0
      ? []
      : [{ circuit, members: own, ...(pin.outward === 1 ? { from: node, to: far } : { from: far, to: node }) }];
  return {
    pin: pin.pin,
    rail,
    circuit,
    node,
    inner: [...new Set([node, ...inner])],
    ways: [...rest, ...last],
    clamp: {
      from: node,
      to: rail,
      circuit,
      members: [{ kind: 'junction', part: `${pin.pin}.clamp`, law: PIN_CLAMP }],
    },
  };
}

const HOT = 60;

/** The pin's own supply low, all others high: whether anything flows at all. */
const atWorst = ({ rail }: Released, { window }: Surrounding): Corner => ({
  typical: false,
  ambientOf: () => HOT,
  voltage: (node) => (node === rail ? window(node).min : window(node).max),
});

const WHILE = 'while it is an input, as after every reset';
const DEAD = 'while the supply of its chip is dead, taken at 0 V';

function account(released: Released, input: InputPin, path: Path, circuits: readonly string[]): AccountPlan {
  const limits = limitsOf(released, input);
  return {
    id: released.pin,
    kind: 'pin',
    title: `pin ${input.label}, pushed in while ${released.dead ? 'its chip is dead' : 'it has let go'}`,
    quantity: 'current',
    direction: 'injected',
    circuits,
    path,
    // Nothing is on while pins have let go; the pin's own supply low, what pushes high.
    recipes: ['let-go-worst', 'let-go-best'],
    read: (s) => pushed(released, s).amps,
    limits: limits.map((l) => ({ ...l, condition: released.dead ? DEAD : WHILE })),
    steps: (s) => stepsOf(released, s),
  };
}

/** A pin without a clamp follows what draws it up. */
function overAccount(released: Released, input: InputPin, path: Path, circuits: readonly string[]): AccountPlan {
  return {
    id: released.pin,
    kind: 'level',
    title: `pin ${input.label}, above its supply`,
    quantity: 'voltage',
    direction: 'injected',
    circuits,
    path,
    recipes: ['let-go-worst', 'let-go-best'],
    read: (s) => pushed(released, s).at,
    limits: [{ ...UNCLAMPED_LIMIT, condition: WHILE }],
    steps: (s) => [
      {
        name: 'V',
        says: 'what draws the pin up while it has let go; it leads nothing away to its supply',
        formula: 'V_pin',
        with: { V_pin: [pushed(released, s).at, 'V'] },
        gives: [pushed(released, s).at, 'V'],
      },
    ],
  };
}

/** The pin stands one clamp above its supply; what the ways bring to it flows on through the clamp. */
function stepsOf(released: Released, s: Reading): Step[] {
  const { amps, clamp, at, ways } = pushed(released, s);
  const drop = at - clamp.to.volts;
  const bringing = ways.filter(({ from, to }) => from.node === released.node || to.node === released.node);
  const many = bringing.length > 1;
  const named = bringing.map((branch, k) => ({
    step: branchSteps(branch, 'what flows there', many ? `I_${k + 1}` : 'I'),
    sign: branch.to.node === released.node ? '+' : '-',
    value: branch.amps,
    name: `I_${k + 1}`,
  }));
  return [
    {
      name: 'V_pin',
      says: 'the pin stands one clamp above its supply',
      formula: 'V_supply + V_clamp',
      with: { V_supply: [clamp.to.volts, 'V'], V_clamp: [drop, 'V'] },
      gives: [at, 'V'],
    },
    ...named.flatMap((n) => n.step),
    ...(many
      ? [
          {
            name: 'I',
            says: 'what comes in together, and leaves through the clamp',
            formula: named
              .map((n) => `${n.sign} ${n.name}`)
              .join(' ')
              .replace(/^\+ /, '')
              .replace(/^- /, '-'),
            with: Object.fromEntries(named.map((n) => [n.name, [n.value, 'A'] as const])),
            gives: [amps, 'A'],
          } satisfies Step,
        ]
      : []),
  ];
}
