/**
 * Loads with two ends: between a pin and ground, between a supply and a pin, behind a driver, or always on. What is between
 * the ends is the load's own affair; how it is switched is the same for all of them.
 */
import { bareAtBoot } from './at-boot.js';
import type { AccountPlan, BranchPlan, CircuitPlan, Member, Reading, Wiring } from './plan.js';
import { GROUND } from './plan.js';
import type { Clamp } from './clamp.js';
import { clampInArray, clampOf, operationsOf } from './clamp.js';
import type { Winding } from './clamp-working.js';
import type { Driver, Turn } from './drivers/driver.js';
import { driverOf } from './drivers/driver.js';
import { releaseAccount } from './drivers/release.js';
import { isOwnPin, pulledHigh } from './drivers/own-pin.js';
import { isMapping } from './figures.js';
import type { BoundPin, Hook, LoadInput, Lowered, NetworkSketch } from './lowering.js';
import { currentThrough } from './reach.js';
import { signalEnd } from './lines/signal.js';
import { pulsesOf } from './pulses.js';
import type { Bypass, Series } from './series.js';
import { ohmsInLine, seriesOf } from './series.js';
import { terminalAccounts } from './terminals.js';

/** What a load puts between its ends. */
export interface Content {
  /** From the positive end to the negative one; one set a circuit. */
  readonly members: (circuit: string) => readonly Member[];
  /** What it draws when it is off, from the same supply: a module's idle current. */
  readonly idle?: (circuit: string) => readonly Member[];
  readonly inductive: boolean;
  /** Part that carries the load's current: 'horn.coil'. */
  readonly part: (circuit: string) => string;
  readonly accounts: (
    circuit: string,
    path: readonly (string | number)[],
    driver?: Driver,
    /** Node that its current comes from. */
    feed?: string,
    /** A capacitor lies across its series resistor. */
    bypass?: Bypass,
    clamp?: Clamp,
  ) => readonly AccountPlan[];
  /** Seconds after switching on in which it has to have acted: a coil pulls in. */
  readonly acts?: number;
  /** Something in it limits the current besides a pin: a winding, a resistance, its own electronics. */
  readonly limitsItself: boolean;
  /** Its own accounts tell whether a driver lets go of it. */
  readonly letsGo?: true;
  /** It has electronics that a pin only talks to: without a driver, its `pin` carries a signal and not the load. */
  readonly listens?: true;
  readonly figures?: Wiring['figures'];
  /** What it stores, for its clamp. */
  readonly winding?: Winding;
}

/** Circuits of a load: one a pin, one a count, or the load itself. */
function circuitNames(id: string, many: number): string[] {
  return many === 1 ? [id] : Array.from({ length: many }, (_, k) => `${id}.${k + 1}`);
}

/** The pins that switch a load, named at the load or at its driver, and whether they are a list: one circuit each. */
function pinsOf({ entry, id, path, bench }: LoadInput): {
  readonly pins: readonly NonNullable<Named>[];
  readonly listed: boolean;
} {
  const driver = isMapping(entry['driver']) ? entry['driver'] : {};
  const named = [
    { of: entry, at: path, keys: ['pins', 'pin', 'joined-pins'] },
    { of: driver, at: [...path, 'driver'], keys: ['pins', 'pin'] },
  ].flatMap(({ of, at, keys }) =>
    keys.flatMap((key) => (of[key] === undefined ? [] : [{ key, raw: of[key], at: [...at, key] }])),
  );
  const [first, second] = named;
  if (first === undefined) return { pins: [], listed: false };
  if (second !== undefined)
    bench.problem({
      path: second.at,
      on: 'key',
      says: `the pins of \`${id}\` are named twice`,
      expected: '`pin`, `pins` or `joined-pins` once: at the load, or at its driver',
    });
  if (first.key === 'joined-pins') {
    const names = bench.pinNames(first.raw, first.at).map((n) => n.name);
    return { pins: [{ name: names, path: first.at }], listed: false };
  }
  return { pins: bench.pinNames(first.raw, first.at), listed: first.key === 'pins' };
}

export function lowerTwoTerminal(input: LoadInput, content: Content): Lowered {
  const { entry, id, path, bench } = input;
  const named = pinsOf(input);
  const { pins } = named;
  // The inputs of a bridge turn one load.
  const listed = named.listed && bench.driverType(entry['driver']) !== 'h-bridge';
  const count = typeof entry['count'] === 'number' ? entry['count'] : 1;
  if (isMapping(entry['signals'])) {
    const end = signalEnd(input);
    for (const [role, pin] of Object.entries(entry['signals']))
      bench.signalPin(pin, [...path, 'signals', role], input.id, role, end);
  }
  const circuits = listed ? pins.map((_, k) => `${id}.${k + 1}`) : circuitNames(id, count);
  const parts = circuits.map((circuit, k) =>
    listed
      ? lowerOne(input, content, circuit, [pins[k]!], { nth: k, of: pins.length })
      : lowerOne(input, content, circuit, pins),
  );
  return {
    circuits: parts.flatMap((p) => p.circuits),
    networks: parts.flatMap((p) => p.networks),
    accounts: parts.flatMap((p) => p.accounts),
  };
}

type Named = { readonly name: string | readonly string[]; readonly path: readonly (string | number)[] } | undefined;

function lowerOne(
  input: LoadInput,
  content: Content,
  circuit: string,
  pins: readonly NonNullable<Named>[],
  turn?: Turn,
): Lowered {
  const { entry, bench, path, figures } = input;
  const [pin] = pins;
  const told = content.listens && entry['driver'] === undefined ? pin : undefined;
  // What lies in series with a load that its pin only talks to lies in its signal.
  const inLine = told && ohmsInLine(figures);
  if (told)
    bench.signalPin(told.name, told.path, circuit, 'signal', {
      ...signalEnd(input),
      isOutput: true,
      ...(inLine && { series: inLine }),
    });
  const named = told ? undefined : pin;
  const said = feedOf(input);
  const supply = said && bench.node(said.name, said.path);
  const series: Series = told
    ? { members: [], accounts: [] }
    : seriesOf(figures, circuit, path, {
        members: content.members(circuit),
        ...(content.acts !== undefined && { acts: content.acts }),
      });
  const unreckoned = series.unknown === true;
  const members = [...series.members, ...content.members(circuit)];
  const own = (feed: string, driver?: Driver): AccountPlan[] => [
    ...content.accounts(circuit, path, driver, feed, series.bypass, clamp).map(series.bypass ? withPeaks : same),
    ...terminalAccounts(figures, circuit, path, content.members(circuit), content.part(circuit)),
    ...series.accounts,
  ];
  const base = { id: circuit, owner: input.id, path, type: input.type, ...(told && { listens: true as const }) };
  const pulses = pulsesOf(figures);
  const hung = {
    circuit,
    part: content.part(circuit),
    ...(supply !== undefined && { supply }),
    ...(content.winding && { winding: content.winding }),
    ...(pulses && { pulses }),
    ...operationsOf(figures),
  };
  const clamp = clampOf(input, hung);
  const common = {
    inductive: content.inductive,
    coil: content.part(circuit),
    ...(content.figures && { figures: content.figures }),
  };

  if (unreckoned) {
    if (named !== undefined && entry['driver'] === undefined)
      bench.outputPin(named.name, named.path, circuit, entry['active'] === 'low' ? 'low' : 'high');
    const wiring: Wiring = { by: 'nothing', inductive: false, clamp: 'not-needed' };
    return { circuits: [{ ...base, always: false, wiring }], networks: [], accounts: series.accounts };
  }
  const ownPin = isOwnPin(entry['driver']);
  if (entry['driver'] !== undefined && !ownPin) {
    if (said === undefined) {
      bench.problem({
        path: [...path],
        on: 'key',
        says: `\`${input.id}\` hangs on a driver, but no \`supply\` says where its current comes from`,
        expected: '`supply:` with the name of a supply or rail',
      });
      return { circuits: [], networks: [], accounts: [] };
    }
    if (supply === undefined) return { circuits: [], networks: [], accounts: [] };
    const expected = currentThrough(members, bench.nominal(supply), 'typ', ROOM);
    const found = driverOf(input, circuit, {
      ...{ pin: named, pins, supply, load: content.part(circuit), expected },
      ...(turn && { turn }),
    });
    if (found === undefined) return { circuits: [], networks: [], accounts: [] };
    const driver = { ...found, ...(found.leak && { leak: limited(found.leak, members, supply) }) };
    const inSeries = driver.side === 'low' ? [...members, ...driver.members] : [...driver.members, ...members];
    const branch: BranchPlan = { from: supply, to: GROUND, members: inSeries, circuit };
    const idle = content.idle && { from: supply, to: GROUND, members: content.idle(circuit), circuit };
    const off = driver.off && {
      from: supply,
      to: driver.off.to,
      members: [...members, ...driver.off.members],
      circuit,
    };
    return {
      circuits: [
        {
          ...base,
          always: false,
          wiring: {
            ...common,
            by: driver.by,
            ...(driver.pin && { pin: driver.pin }),
            supply,
            ...(clamp?.wiring ?? { clamp: !content.inductive || driver.clamps ? 'not-needed' : 'none' }),
            unlimited: driver.unlimited,
            ...(driver.inverted && { inverted: driver.inverted }),
            ...driver.wiring,
          },
        },
      ],
      networks: [
        {
          id: circuit,
          circuits: [circuit],
          side: 'load',
          inner: [],
          hooks: [],
          on: [branch],
          off: [...(idle ? [idle] : []), ...(off ? [off] : [])],
        },
        ...driver.networks,
      ],
      accounts: [
        ...own(supply, driver),
        ...(clamp?.atSwitchingOff(driver.accounts) ?? driver.accounts),
        ...(content.letsGo ? [] : releaseAccount(circuit, path, expected, driver)),
        ...(clamp?.accounts ??
          (driver.clampFigures && content.inductive ? clampInArray(driver.clampFigures, hung, path) : [])),
      ],
    };
  }

  if (named !== undefined) {
    const active = ownPin || entry['active'] === 'low' ? 'low' : 'high';
    const pin = bench.outputPin(named.name, named.path, circuit, active);
    if (pin === undefined) return { circuits: [], networks: [], accounts: [] };
    const feed = active === 'high' ? pin.rail : (supply ?? pin.rail);
    const bare = !content.limitsItself && !limits(series.ohms, pin);
    const pulled = ownPin
      ? pulledHigh(input, { circuit, pin, supply, members, load: content.part(circuit) })
      : undefined;
    const wiring: Wiring = {
      ...common,
      by: 'pin',
      pin: pin.account,
      ...(clamp?.wiring ?? { clamp: content.inductive ? 'none' : 'not-needed' }),
      ...(content.inductive && { bare: true as const }),
      ...(supply && active === 'low' && { supply }),
      ...(bare && { unlimited: [{ part: content.part(circuit), pin: pin.account }] }),
    };
    return {
      circuits: [{ ...base, always: false, wiring }],
      networks: [
        {
          ...onPin({
            circuit,
            pin,
            active,
            to: active === 'high' ? GROUND : feed,
            members,
            open: ownPin,
          }),
          off: pulled?.off ?? [],
        },
      ],
      accounts: [
        ...own(feed),
        ...bareAtBoot(circuit, path, content.part(circuit), currentThrough(members, bench.nominal(feed), 'typ', ROOM)),
        ...(clamp?.accounts ?? []),
        ...(pulled?.accounts ?? []),
      ],
    };
  }

  if (supply === undefined) {
    if (entry['supply'] === undefined)
      bench.problem({
        path: [...path],
        on: 'key',
        says: told
          ? `nothing feeds \`${input.id}\`: its pin carries a signal only`
          : `\`${input.id}\` is connected to nothing`,
        expected: content.listens
          ? '`supply:` with the name of a supply or rail'
          : 'a `pin:`, or a `supply:` with or without a `driver:`',
      });
    return { circuits: [], networks: [], accounts: [] };
  }
  return alwaysOn(input, content, circuit, supply, members, own(supply), base, clamp);
}

/** Behind a bypassed resistor a load sees a peak at switching on. */
const withPeaks = (a: AccountPlan): AccountPlan =>
  a.kind === 'input' && a.quantity === 'current' && a.direction === 'at-most' ? { ...a, peaks: true } : a;
const same = (a: AccountPlan): AccountPlan => a;

/** Where curves are read off for what a load is expected to take, °C. */
const ROOM = 25;

/** What a driver leaks, no more than the load itself lets through. */
const limited =
  (leak: NonNullable<Driver['leak']>, members: readonly Member[], supply: string) =>
  (s: Reading): number => {
    const amps = leak(s);
    return amps === 0
      ? 0
      : Math.min(amps, currentThrough(members, s.voltage(supply), s.typical ? 'typ' : 'min', s.ambient));
  };

/** Whether a series resistance is more than the pin's own, so that it counts. */
const limits = (ohms: number | undefined, pin: BoundPin): boolean =>
  ohms !== undefined && ohms >= Math.min(pin.high?.ohms.typ ?? 0, pin.low?.ohms.typ ?? Infinity);

/** The node that a load says feeds it, or that its bridge does. */
function feedOf({ entry, path, bench }: LoadInput): NonNullable<Named> | undefined {
  const driver = entry['driver'];
  if (entry['supply'] !== undefined) return { name: String(entry['supply']), path: [...path, 'supply'] };
  if (!isMapping(driver) || driver['supply'] === undefined || bench.driverType(driver) !== 'h-bridge') return undefined;
  return { name: String(driver['supply']), path: [...path, 'driver', 'supply'] };
}

function onPin({
  circuit,
  pin,
  active,
  to,
  members,
  open,
}: Pick<Hook, 'circuit' | 'pin' | 'active' | 'to' | 'members'> & { readonly open: boolean }): NetworkSketch {
  const flows = active === 'high' ? ('out' as const) : ('in' as const);
  // From the pin outwards the order is the same; from a supply to the pin the load comes first.
  const inOrder = flows === 'out' ? members : members.toReversed();
  const hook: Hook = { pin, active, flows, to, members: inOrder, circuit, ...(open && { open }) };
  return { id: circuit, circuits: [circuit], side: 'load', inner: [], hooks: [hook], on: [], off: [] };
}

function alwaysOn(
  input: LoadInput,
  content: Content,
  circuit: string,
  supply: string,
  members: readonly Member[],
  accounts: readonly AccountPlan[],
  base: Pick<CircuitPlan, 'id' | 'owner' | 'path' | 'type' | 'listens'>,
  clamp: Clamp | undefined,
): Lowered {
  const elsewhere = input.entry['switched'] === 'elsewhere';
  const on: BranchPlan = { from: supply, to: GROUND, members, circuit };
  const off = content.idle && { ...on, members: content.idle(circuit) };
  const bare = !content.limitsItself && !members.some((m) => m.kind === 'resistance');
  return {
    circuits: [
      {
        ...base,
        always: !elsewhere && content.idle === undefined,
        wiring: {
          by: 'nothing',
          inductive: content.inductive,
          coil: content.part(circuit),
          ...(content.figures && { figures: content.figures }),
          supply,
          ...(clamp?.wiring ?? { clamp: 'not-needed' }),
          ...(bare && { unlimited: [{ part: content.part(circuit) }] }),
        },
      },
    ],
    networks: [
      { id: circuit, circuits: [circuit], side: 'load', inner: [], hooks: [], on: [on], off: off ? [off] : [] },
    ],
    accounts: [...accounts, ...(clamp?.accounts ?? [])],
  };
}
