/**
 * Drivers: what stands between a pin and a load. A driver is a row of stages from the pin outwards, most often of one; each
 * is driven by the one before it, and the last gives the load's branch its switch. Arrays have a place of their own.
 */
import type { Figures } from '../figures.js';
import { isMapping } from '../figures.js';
import type { LoadInput, NetworkSketch } from '../lowering.js';
import type { AccountPlan, Reading, Step } from '../account-plan.js';
import type { DeadWay, Member } from '../branch-plan.js';
import type { LineEnd } from '../lines/line.js';
import type { Wiring } from '../circuit-plan.js';
import { unknownResistor } from '../resistor-power.js';
import { arrayDriver } from './array.js';
import { npn, pnp } from './bipolar.js';
import { gateDriver } from './gate-driver.js';
import { hBridge } from './h-bridge.js';
import { nmos, pmos } from './mosfet.js';
import { openDrain } from './open-drain.js';
import { opto } from './opto.js';
import type { Part } from './row.js';
import { inRow } from './row.js';
import type { StageType } from './stage.js';

/** What a driver needs to know of the circuit it switches. */
export interface DriverSetting {
  readonly circuit: string;
  readonly path: readonly (string | number)[];
  readonly pin: { readonly name: string | readonly string[]; readonly path: readonly (string | number)[] };
  readonly active: 'high' | 'low';
  /** Node that feeds the load. */
  readonly supply: string;
  /** Part that carries the load's current. */
  readonly load: string;
  /** Amperes that the load is expected to take. */
  readonly expected: number;
  /** A winding: switched off, it drives its current on. */
  readonly inductive?: boolean;
}

export interface Driver {
  readonly by: 'driver' | 'array';
  readonly pin?: string;
  /** Which end of the load it switches: the one at ground, or the one at its supply. */
  readonly side: 'low' | 'high';
  /** What it puts in series with the load. */
  readonly members: readonly Member[];
  readonly networks: readonly NetworkSketch[];
  readonly accounts: readonly AccountPlan[];
  /** Its inputs, where a junction leads from them to its supply. */
  readonly ends?: readonly LineEnd[];
  /** It clamps the load itself, as an array's common pin does. */
  readonly clamps: boolean;
  /** Figures of that clamp: an array's own. */
  readonly clampFigures?: Figures;
  readonly unlimited: NonNullable<Wiring['unlimited']>;
  readonly inverted?: NonNullable<Wiring['inverted']>;
  /** Volts it loses beyond what its members take: a transistor that is not driven hard enough. */
  readonly shortfall?: (s: Reading) => number;
  readonly lossSteps?: (s: Reading) => readonly Step[];
  /** Amperes it lets through when it is switched off, before the load limits them. */
  readonly leak?: (s: Reading) => number;
  readonly leakSteps?: (s: Reading) => readonly Step[];
  /** Where the base of a Darlington that a pin drives lies. */
  readonly darlington?: DeadWay['from'];
  /** Where its clamps lead, where that is not the load's own supply. */
  readonly clampsTo?: { readonly to: string; readonly members: readonly Member[] };
  /** Where the load leads while it is switched off, if anywhere. */
  readonly off?: { readonly to: string; readonly members: readonly Member[] };
  /** What the rules of wiring need to know besides. */
  readonly wiring?: Partial<Wiring>;
}

type Named = DriverSetting['pin'] | undefined;

/** Which of the pins of a load that makes a circuit of each. */
export interface Turn {
  readonly nth: number;
  readonly of: number;
}

/** Types of stages that are computed. */
export const STAGES: Readonly<Record<string, StageType>> = {
  npn,
  pnp,
  nmos,
  pmos,
  opto,
  'open-drain': openDrain,
  'gate-driver': gateDriver,
};

/** The driver of a load, or undefined with a problem. */
export function driverOf(
  input: LoadInput,
  circuit: string,
  around: {
    pin: Named;
    /** All of them, where several are the inputs of one driver. */
    pins?: readonly DriverSetting['pin'][];
    supply: string;
    load: string;
    expected: number;
    inductive?: boolean;
    turn?: Turn;
  },
): Driver | undefined {
  const { entry, bench } = input;
  const path = [...input.path, 'driver'];
  const raw = entry['driver'];
  if (!isMapping(raw)) return undefined;
  const said = entry['active'] === 'low' ? 'low' : entry['active'] === 'high' ? 'high' : undefined;
  const { pin, turn, ...rest } = around;
  const { array } = raw;
  if (array !== undefined) {
    // As many channels as pins: one each. Otherwise several are joined.
    const own = turn && Array.isArray(array) && array.length === turn.of ? array[turn.nth] : array;
    return arrayDriver(input, { ...rest, circuit, path, active: said ?? 'high', ...(pin && { pin }) }, own);
  }
  if (pin === undefined) {
    bench.problem({
      path,
      on: 'key',
      says: `no pin switches the driver of \`${input.id}\``,
      expected: '`pin:` in the driver, as in `driver: { part: npn-2n2222a, pin: D8 }`',
    });
    return undefined;
  }
  const setting: DriverSetting = { ...rest, circuit, path, pin, active: said ?? 'high' };
  if (bench.driverType(raw) === 'h-bridge') {
    const bridge = bench.part('driver', raw, path, `${circuit}.driver`);
    return bridge && hBridge(input, setting, bridge.figures, around.pins ?? [pin]);
  }
  const row = Array.isArray(raw['stages'])
    ? rowOf(input, circuit, raw, path)
    : [partOf(input, raw, path, `${circuit}.driver`)];
  // What is wrong with it has been said already.
  if (row.length === 0 || row.some((r) => r === undefined)) return undefined;
  const stages = row as Part[];
  const masked = stages.flatMap(({ figures }) => RESISTORS.filter((key) => figures.masked(key)));
  if (masked[0] !== undefined) return unreckoned(input, setting, masked[0]);
  return inRow(input, setting, stages, said);
}

const RESISTORS = ['base-resistor', 'gate-resistor', 'pull-down', 'pull-up', 'series'];

function partOf(input: LoadInput, raw: unknown, path: readonly (string | number)[], about: string): Part | undefined {
  const part = input.bench.part('driver', raw, path, about);
  if (part === undefined) return undefined;
  const type = Object.hasOwn(STAGES, part.type) ? STAGES[part.type] : undefined;
  if (type !== undefined) return { type, figures: part.figures, path };
  input.bench.problem({
    path,
    on: 'key',
    says: `a driver of type \`${part.type}\` is not computed yet`,
    expected: `${[...Object.keys(STAGES), 'h-bridge'].map((name) => `\`${name}\``).join(', ')}, or a channel of an array`,
  });
  return undefined;
}

/** The entries of `stages`, each a part of its own; the pin belongs to the driver. */
function rowOf(
  input: LoadInput,
  circuit: string,
  raw: Readonly<Record<string, unknown>>,
  path: readonly (string | number)[],
): (Part | undefined)[] {
  input.bench.check('driver:stages', raw, path);
  const list = raw['stages'] as readonly unknown[];
  return list.map((entry, k) => {
    const at = [...path, 'stages', k];
    if (isMapping(entry) && (entry['pin'] !== undefined || entry['pins'] !== undefined))
      input.bench.problem({
        path: [...at, entry['pin'] === undefined ? 'pins' : 'pin'],
        on: 'key',
        says: 'a stage has no pin of its own: the first one hangs on the pin of the driver',
        expected: '`pin` beside `stages`',
      });
    return partOf(
      input,
      fittedIn(input, list, k),
      at,
      k === list.length - 1 ? `${circuit}.driver` : `${circuit}.stage-${k + 1}`,
    );
  });
}

/** A stage of a row with the resistors at its input: a pull-up at a coupler's output is one at the input of the stage behind it. */
function fittedIn({ bench }: LoadInput, list: readonly unknown[], k: number): unknown {
  const [before, own] = [list[k - 1], list[k]];
  if (!isMapping(own)) return own;
  const isCoupler = (raw: unknown): boolean => bench.driverType(raw) === 'opto';
  const kept =
    k < list.length - 1 && isCoupler(own)
      ? Object.fromEntries(Object.entries(own).filter(([key]) => key !== 'pull-up'))
      : own;
  return isMapping(before) && isCoupler(before) && before['pull-up'] !== undefined
    ? { 'pull-up': before['pull-up'], ...kept }
    : kept;
}

/** A driver with a resistor that nobody knows: it may conduct or not, and the question says what would settle it. */
function unreckoned(input: LoadInput, setting: DriverSetting, key: string): Driver | undefined {
  const { circuit, path } = setting;
  const pin = input.bench.outputPin(setting.pin.name, setting.pin.path, circuit, setting.active);
  if (pin === undefined) return undefined;
  const account = unknownResistor(`${circuit}.${key}`, circuit, path);
  return {
    by: 'driver',
    pin: pin.account,
    side: 'low',
    members: [],
    networks: [],
    accounts: [account],
    clamps: false,
    unlimited: [],
  };
}
