/**
 * Multiplexed displays: the segments of all digits hang on the same pins, and the digits take turns. While a digit is lit,
 * each segment pin carries one segment's current, and the digit's own pin, or its driver, carries all of them at once.
 *
 * Each turn is a circuit of its own with the same segment pins in it, and never two of them are on together. A digit that
 * shows all its segments is the most for its own pin; for a segment's pin it is a segment lit alone, since then the digit's
 * pin keeps the least for itself. Both are among the turns.
 */
import type { Driver } from './drivers/driver.js';
import { driverOf } from './drivers/driver.js';
import { isMapping } from './figures.js';
import { junctionSpread } from './laws.js';
import type { Interval } from '../quantity/interval.js';
import { leadMember, ledAccount, resistorHeat, resistorMember, stuckLed, stuckResistor } from './lit-in-turns.js';
import type { Lit } from './lit-limits.js';
import { asksRefresh, flickerAccount, refreshOf } from './refresh.js';
import type { BoundPin, Hook, LoadInput, Lowered, NetworkSketch } from './lowering.js';
import { NOTHING } from './lowering.js';
import type { AccountPlan, Reading, Step } from './account-plan.js';
import type { BranchPlan, Member } from './branch-plan.js';
import type { CircuitPlan } from './circuit-plan.js';
import { GROUND } from './branch-plan.js';
import { seriesFigure } from './series.js';

/** Whether an entry is of this kind. */
export const isMultiplexed = ({ entry }: LoadInput): boolean => entry['segment-pins'] !== undefined;

interface Display {
  readonly input: LoadInput;
  readonly segments: readonly BoundPin[];
  readonly digits: readonly BoundPin[];
  readonly cathode: boolean;
  /** Digits that are lit together, and the share of the time that each is lit. */
  readonly together: number;
  readonly share: number;
  /** Pictures a second, where that is stated. */
  readonly refresh: Interval | undefined;
  /** From a segment's pin towards its digit, where the current leaves the pin. */
  readonly segment: (part: string) => readonly Member[];
}

export function lowerMultiplexed(input: LoadInput): Lowered {
  const display = displayOf(input);
  if (display === undefined) return NOTHING;
  const { digits, segments, together } = display;
  const turns = Math.ceil(digits.length / together);
  const circuits = turns === 1 ? [input.id] : Array.from({ length: turns }, (_, k) => `${input.id}.${k + 1}`);
  const parts = circuits.map((circuit, k) =>
    turnOf(display, circuit, digits.slice(k * together, (k + 1) * together), k * together),
  );
  const singles = segments.map((_, k) => `${input.id}.single-${k + 1}`);
  parts.push(...singles.map((circuit, k) => turnOf(display, circuit, digits.slice(0, together), 0, k)));
  return {
    circuits: parts.flatMap((p) => p.circuits),
    networks: parts.flatMap((p) => p.networks),
    accounts: parts.flatMap((p) => p.accounts),
    // More of them at once would only share the segments' current, so that this holds whatever the firmware does.
    interlocks: [{ most: 1, of: [...circuits, ...singles], path: input.path, by: 'wiring', turns: true }],
  };
}

function displayOf(input: LoadInput): Display | undefined {
  const { figures, entry, bench, path, id } = input;
  const common = figures.word('common');
  if (common !== 'cathode' && common !== 'anode') {
    figures.problem(
      'common',
      `nothing says what the segments of a digit of \`${id}\` have in common`,
      '`common: cathode`',
    );
    return undefined;
  }
  const curve = figures.curve('forward-voltage', 'voltage', 'current');
  if (curve === undefined) {
    figures.problem(
      'forward-voltage',
      `the segments of \`${id}\` have no forward voltage`,
      '`forward-voltage: 1.8 to 2.2 V`',
    );
    return undefined;
  }
  const cathode = common === 'cathode';
  const bound = (key: string, active: 'high' | 'low'): BoundPin[] =>
    bench.pinNames(entry[key], [...path, key]).flatMap((p) => bench.outputPin(p.name, p.path, id, active) ?? []);
  const driven = isMapping(entry['driver']);
  const segments = bound('segment-pins', cathode ? 'high' : 'low');
  // A driver binds the digits' pins itself.
  const digits = driven
    ? bench.pinNames(entry['digit-pins'], [...path, 'digit-pins']).map((p) => named(p.name))
    : bound('digit-pins', cathode ? 'low' : 'high');
  if (segments.length === 0 || digits.length === 0) {
    figures.problem(
      'digit-pins',
      `\`${id}\` needs the pins of its segments and of its digits`,
      '`digit-pins: [D2..D5]`',
    );
    return undefined;
  }
  const together = Math.min(figures.count('digits-on-together') ?? 1, digits.length);
  if (driven && together > 1) {
    figures.problem('digits-on-together', 'digits that are lit together behind drivers are not computed yet', '1');
    return undefined;
  }
  const law = junctionSpread(curve);
  const segment = (part: string): Member[] => {
    const resistor = resistorMember(input, `${part}.series`);
    return [...(resistor ? [resistor] : []), { kind: 'junction', part: `${part}.led`, law, origin: curve.origin }];
  };
  const refresh = refreshOf(input);
  return { input, segments, digits, cathode, together, share: together / digits.length, refresh, segment };
}

/** A digit's pin by name only: its driver binds it. */
const named = (label: string): BoundPin => ({
  account: label,
  label,
  owner: '',
  rail: '',
  high: undefined,
  low: undefined,
});

/** One turn: the digits that are lit, with all their segments. @param single the one segment that is lit, where it is alone */
function turnOf(
  display: Display,
  circuit: string,
  digits: readonly BoundPin[],
  first: number,
  single?: number,
): Lowered {
  const { input, cathode, segment } = display;
  const segments = single === undefined ? display.segments : [display.segments[single]!];
  const { path, id } = input;
  const node = (d: number): string => `${circuit}:digit-${d + 1}`;
  const part = (d: number, k: number): string => `${circuit}.${first + d + 1}-${k + 1}`;
  const rail = segments[0]!.rail;
  const hooks: Hook[] = [];
  const on: BranchPlan[] = [];
  let driver: Driver | undefined;
  digits.forEach((digit, d) => {
    const common = leadMember(`${circuit}.common${d === 0 ? '' : d + 1}`);
    segments.forEach((pin, k) => {
      const members = segment(part(d, k));
      hooks.push(
        cathode
          ? { pin, active: 'high', flows: 'out', to: node(d), members, circuit }
          : { pin, active: 'low', flows: 'in', to: node(d), members: members.toReversed(), circuit },
      );
    });
    if (isMapping(input.entry['driver'])) {
      const expected = segments.length * 0.01;
      const at = { name: digit.label, path: [...path, 'digit-pins'] };
      driver = driverOf(input, circuit, { pin: at, supply: rail, load: `${circuit}.common`, expected });
      if (driver === undefined) return;
      if ((driver.side === 'low') !== cathode)
        input.figures.problem(
          'driver',
          `a display of common ${cathode ? 'cathode' : 'anode'} has its digits switched at the ${cathode ? 'ground' : 'supply'}`,
          cathode
            ? '`driver: { part: npn-2n2222a, base-resistor: 1 kΩ }`'
            : '`driver: { type: pnp, base-resistor: 1 kΩ }`',
        );
      on.push(
        cathode
          ? { from: node(d), to: GROUND, members: [common, ...driver.members], circuit }
          : { from: rail, to: node(d), members: [...driver.members, common], circuit },
      );
    } else
      hooks.push(
        cathode
          ? { pin: digit, active: 'low', flows: 'in', to: node(d), members: [common], circuit }
          : { pin: digit, active: 'high', flows: 'out', to: node(d), members: [common], circuit },
      );
  });
  const network: NetworkSketch = {
    id: circuit,
    circuits: [circuit],
    side: 'load',
    inner: digits.map((_, d) => node(d)),
    hooks,
    on,
    off: [],
    alone: true,
  };
  const lit = digits.flatMap((_, d) => segments.map((__, k) => part(d, k)));
  const plan: CircuitPlan = {
    id: circuit,
    owner: id,
    path,
    type: input.type,
    always: false,
    wiring: {
      by: driver?.by ?? 'pin',
      inductive: false,
      clamp: 'not-needed',
      ...(driver?.pin && { pin: driver.pin }),
      ...(!seriesFigure(input.figures) &&
        single === undefined &&
        first === 0 && { unlimited: segments.map((pin, k) => ({ part: part(0, k), pin: pin.account })) }),
    },
  };
  return {
    circuits: [plan],
    // The driver's own input is solved with the digit's turn.
    networks: [network, ...(single === undefined ? (driver?.networks ?? []) : [])],
    // All segments are alike: what one of them carries, the others do.
    accounts: [
      ...(single === 0 ? segmentAccounts(display, circuit, lit) : []),
      ...(single === undefined ? (driver?.accounts ?? []) : []),
    ],
  };
}

/** What one segment carries, in its turn and on average, and the heat in its resistor. */
function segmentAccounts(display: Display, circuit: string, segments: readonly string[]): AccountPlan[] {
  const { input, share, refresh, digits, together } = display;
  const { id } = input;
  const base = { circuits: [circuit], path: input.path };
  const turns = Math.ceil(digits.length / together);
  const lit: Lit = refresh ? { share, seconds: 1 / (refresh.min * turns) } : { share, asks: asksRefresh(id) };
  const hottest = (s: Reading): string =>
    segments.reduce((a, b) => (s.current(`${b}.led`) > s.current(`${a}.led`) ? b : a));
  const heat = (s: Reading): Step => {
    const [amps, ohms] = [s.current(`${hottest(s)}.led`), s.ohms(`${hottest(s)}.series`)];
    return {
      name: 'P',
      says: 'heat in a segment’s resistor, on average over the turns',
      formula: 'share * I^2 * R',
      with: { share: [share, ''], I: [amps, 'A'], R: [ohms, 'Ω'] },
      gives: [share * amps ** 2 * ohms, 'W'],
    };
  };
  return [
    ledAccount(
      input,
      { ...base, id: `${circuit}.segment`, title: `LED segment of ${circuit}, while it is lit` },
      { name: `a segment of ${circuit}`, says: 'current of a segment while its digit is lit' },
      lit,
      (s) => `${hottest(s)}.led`,
    ),
    ...stuckLed(input, base, `a segment of ${id}`, share, (s) => `${hottest(s)}.led`),
    ...stuckResistor(input, base, `a segment resistor of ${id}`, share, (s) => `${hottest(s)}.series`),
    ...flickerAccount(id, base, refresh),
    ...resistorHeat(
      input,
      { ...base, id: `${circuit}.series`, title: `${circuit}.series, heat` },
      `a segment resistor of ${input.id}`,
      heat,
    ),
  ];
}
