/**
 * A stepper motor behind a chopper, which holds a current in its windings whatever their resistance. It is reckoned at rest
 * with as many windings on as its steps have at a time, where it holds the most for the longest; what the shaft gives while it
 * turns comes on top where the file says how much. What its supply gives is found by a balance of power (`held.ts`).
 */
import type { Interval } from '../quantity/interval.js';
import { exactly } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import { copperFactor } from '../circuit/copper.js';
import { formatValue } from '../quantity/print.js';
import { bridgeOf, chopperOf, chopperParts } from './drivers/chopper.js';
import type { Chopper } from './drivers/chopper.js';
import type { Figure, Figures } from './figures.js';
import { isMapping } from './figures.js';
import { wattsOf } from './held.js';
import { rating } from './limits.js';
import { controlEnd } from './lines/signal.js';
import { circuitNames, pinsOf } from './load-pins.js';
import type { LoadInput, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import type { Held, LimitPlan } from './account-plan.js';
import type { HeldCurrent, Member, Origin } from './branch-plan.js';
import { GROUND } from './branch-plan.js';
import { terminalAccounts } from './terminals.js';
import { windingAccounts } from './winding-accounts.js';

/** Temperature that a winding's resistance is stated at, °C. */
const REFERENCE = 20;
/** A winding at its rated current grows so much warmer than what is around it, kelvins: the rise that makers allow (common practice, no source). */
const RATED_RISE: Interval = { min: 0, typ: 40, max: 80 };
/** Windings that full steps have on at a time (common practice, no source). */
const USUAL_WINDINGS = 2;

/** Whether a stepper hangs on a chopper. */
export const isChopped = ({ entry, bench }: LoadInput): boolean => bench.driverType(entry['driver']) === 'chopper';

export function lowerChopped(input: LoadInput): Lowered {
  const { entry, id, path, bench, figures } = input;
  const at = [...path, 'driver'];
  const part = bench.part('driver', entry['driver'], at, `${id}.driver`);
  const supply = entry['supply'] === undefined ? undefined : bench.node(entry['supply'], [...path, 'supply']);
  if (part === undefined || (supply === undefined && entry['supply'] !== undefined) || misfits(input)) return NOTHING;
  const setting = settingOf(input, part.figures);
  if (setting === undefined) return NOTHING;
  if (supply === undefined) {
    bench.problem({
      path: [...path],
      on: 'key',
      says: `\`${id}\` hangs on a chopper, but no \`supply\` says where its current comes from`,
      expected: '`supply:` with the name of a supply or rail',
    });
    return NOTHING;
  }
  const chopper = chopperOf(part.figures, id, supply, bench);
  const { pins } = pinsOf(input);
  const [enable] = pins;
  const end = controlEnd(part.figures, chopper.logic);
  if (isMapping(entry['signals']))
    for (const [role, pin] of Object.entries(entry['signals']))
      bench.signalPin(pin, [...path, 'signals', role], id, role, end);
  const circuits = circuitNames(id, typeof entry['count'] === 'number' ? entry['count'] : 1);
  const parts = circuits.map((circuit) => {
    if (enable) bench.signalPin(enable.name, enable.path, circuit, 'enable', { ...end, isOutput: true });
    return lowerOne(input, circuit, supply, setting, chopper);
  });
  const always = enable === undefined && entry['switched'] !== 'elsewhere';
  if (always)
    figures.assume(`nothing switches the driver of ${id} off: its windings are held all the time, at rest as well`);
  return {
    circuits: circuits.map((circuit) => ({
      ...{ id: circuit, owner: id, path, type: input.type, always },
      ...(enable && { listens: true as const }),
      wiring: {
        ...{ by: 'nothing', inductive: true, coil: windingsOf(circuit), clamp: 'not-needed', supply },
        bridged: true,
      },
    })),
    networks: parts.flatMap((p) => p.networks),
    accounts: parts.flatMap((p) => p.accounts),
  };
}

const windingsOf = (circuit: string): string => `${circuit}.windings`;

/** Keys that a stepper on a chopper has no use for; each is a problem. */
function misfits({ entry, figures, id, bench, path }: LoadInput): boolean {
  const refuse = (key: string, says: string, expected: string): void => figures.problem(key, says, expected);
  const before = ['series', 'clamp', 'needs', 'joined-pins', 'pins'].filter((key) => entry[key] !== undefined);
  if (entry['series'] !== undefined)
    refuse('series', `the chopper of \`${id}\` sets its current, and a resistor in series only heats`, 'no `series`');
  if (entry['clamp'] !== undefined)
    refuse('clamp', `the bridges of the chopper of \`${id}\` clamp its windings themselves`, 'no `clamp`');
  if (entry['needs'] !== undefined)
    refuse('needs', `the chopper of \`${id}\` holds what it is set to`, '`phase-current`, and no `needs`');
  const driver = isMapping(entry['driver']) ? entry['driver'] : {};
  const listed = ['pins', 'joined-pins'].find((key) => entry[key] !== undefined || driver[key] !== undefined);
  if (listed !== undefined)
    bench.problem({
      path: entry[listed] === undefined ? [...path, 'driver', listed] : [...path, listed],
      on: 'key',
      says: `of the inputs of \`${id}\` one switches its driver on`,
      expected: '`pin` for the enable input, the others under `signals`: `{ step: D3, direction: D4 }`',
    });
  return before.length > 0 || listed !== undefined;
}

/** What the chopper of a motor holds, and what it is held to. */
interface Setting {
  readonly held: HeldCurrent;
  /** Share of what it is set to that each winding carries while as many do. */
  readonly share: number;
  /** The current that it is set to, as the file states it. */
  readonly stated: Figure;
  /** The motor's rated current, where it is known. */
  readonly rated: LimitPlan | undefined;
  readonly origin: Origin;
}

/** What the chopper holds, from the motor's figures and from what it is set to; undefined with a problem. */
function settingOf({ figures, id }: LoadInput, driver: Figures): Setting | undefined {
  const winding = figures.figure('winding-resistance', 'resistance');
  const stated = figures.figure('phase-current', 'current');
  const ohms = winding && closed(winding.quantity);
  const amps = stated && closed(stated.quantity);
  if (winding === undefined || ohms === undefined || ohms.min <= 0 || amps === undefined || amps.min <= 0) {
    const key = ohms === undefined || ohms.min <= 0 ? 'winding-resistance' : 'phase-current';
    figures.problem(
      key,
      `\`${id}\` needs the resistance of a winding and the current that its chopper is set to, both above zero`,
      '`winding-resistance: 1.65 Ω ±10 %, phase-current: 1 A`',
    );
    return undefined;
  }
  const windings = figures.count('phases-on') ?? USUAL_WINDINGS;
  if (figures.count('phases-on') === undefined)
    figures.assume(`${USUAL_WINDINGS} of its windings are on at a time, since nobody says so`);
  const set = stated!.quantity.exact ? widened(amps, driver, figures) : amps;
  const share = windings > 1 ? sharedBy(driver) : exactly(1);
  const each = times(set, share);
  const rated = ratedOf(figures, ohms);
  const load = rated === undefined ? 1 : each.max / (typeof rated.value === 'number' ? rated.value : each.max);
  const rise = { min: RATED_RISE.min, typ: RATED_RISE.typ * load ** 2, max: RATED_RISE.max * load ** 2 };
  figures.assume(
    `its windings grow up to ${Math.round(rise.max)} K warmer than what is around them: ${RATED_RISE.max} K at rated current, and with the square of it`,
  );
  const shaft = figures.figure('shaft-power', 'power');
  if (shaft === undefined)
    figures.assume(
      `its supply gives what it takes at rest, and what its shaft gives while it turns is not counted, since nobody states it (\`shaft-power\`)`,
    );
  return {
    held: {
      windings,
      amps: each,
      ohms,
      copper: REFERENCE,
      rise,
      bridge: bridgeOf(driver),
      shaft: shaft ? closed(shaft.quantity, { min: () => 0 }) : exactly(0),
    },
    share: share.typ,
    stated: stated!,
    rated,
    origin: winding.origin,
  };
}

const times = (a: Interval, b: Interval): Interval => ({
  min: a.min * b.min,
  typ: a.typ * b.typ,
  max: a.max * b.max,
});

/** A current without a tolerance, with that of the chopper. */
function widened(amps: Interval, driver: Figures, figures: Figures): Interval {
  const off = driver.interval('current-accuracy', 'ratio')?.max;
  if (off === undefined) return amps;
  figures.assume(`what its chopper holds may be off by ${Math.round(off * 1000) / 10} %, as its maker states`);
  return { min: amps.min * (1 - off), typ: amps.typ, max: amps.max * (1 + off) };
}

/** Share of what it is set to that each winding carries while both do. */
const sharedBy = (driver: Figures): Interval => exactly(driver.interval('both-on', 'ratio')?.typ ?? 1);

/** The motor's rated current: as stated, or its rated voltage over the resistance of a winding. */
function ratedOf(figures: Figures, ohms: Interval): LimitPlan | undefined {
  const stated = rating(figures, 'maximum-current', 'current', { grade: 'operating' });
  const volts = figures.figure('voltage', 'voltage');
  if (stated !== undefined || volts === undefined) return stated;
  const amps = closed(volts.quantity).typ / ohms.typ;
  return {
    value: amps,
    stated: `${formatValue(amps, 'current')}, its rated voltage over a winding's resistance`,
    grade: 'operating',
    margin: 'current',
    origin: volts.origin,
  };
}

/** One motor: what its supply gives, and what its windings and its driver are held to. */
function lowerOne(
  { path, figures }: LoadInput,
  circuit: string,
  supply: string,
  setting: Setting,
  chopper: Chopper,
): Pick<Lowered, 'networks' | 'accounts'> {
  const { held, origin } = setting;
  const watts = {
    min: wattsOf(heldAs(held, 'min')),
    typ: wattsOf(heldAs(held, 'typ')),
    max: wattsOf(heldAs(held, 'max')),
  };
  const part = windingsOf(circuit);
  const members: Member[] = [{ kind: 'power', part, watts, held, origin }];
  const driver = chopperParts(chopper, circuit, path, { part, supply, share: setting.share });
  const windowed = figures.says('supply-voltage') ? figures : chopper.figures;
  return {
    networks: [
      {
        ...{ id: circuit, circuits: [circuit], side: 'load', inner: [], hooks: [], off: [] },
        on: [{ from: supply, to: GROUND, members, circuit }],
      },
      ...driver.networks,
    ],
    accounts: [
      ...windingAccounts(circuit, path, part, setting),
      ...driver.accounts,
      ...terminalAccounts(windowed, circuit, path, members, part),
    ],
  };
}

/** At one end of all its figures, at the temperature that its resistance is stated at. */
const heldAs = (held: HeldCurrent, end: keyof Interval): Held => ({
  windings: held.windings,
  amps: held.amps[end],
  ohms: held.ohms[end] * copperFactor(held.copper + held.rise[end], held.copper),
  bridge: held.bridge[end],
  shaft: held.shaft[end],
});
