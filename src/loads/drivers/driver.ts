/**
 * Drivers: what stands between a pin and a load. A driver is a row of stages from the pin outwards, most often of one; each
 * is driven by the one before it, and the last gives the load's branch its switch. Arrays have a place of their own.
 */
import type { Figures } from '../figures.js';
import { isMapping } from '../figures.js';
import type { LoadInput, NetworkSketch } from '../lowering.js';
import type { AccountPlan, Member, Reading, Step, Wiring } from '../plan.js';
import { unknownResistor } from '../series.js';
import { arrayDriver } from './array.js';
import { npn, pnp } from './bipolar.js';
import type { Level, State } from './drive.js';
import { pinDrive, switchDrive } from './drive.js';
import { nmos, pmos } from './mosfet.js';
import type { Stage, StageType } from './stage.js';
import { settled } from './stage.js';

/** What a driver needs to know of the circuit it switches. */
export interface DriverSetting {
  readonly circuit: string;
  readonly path: readonly (string | number)[];
  readonly pin: { readonly name: string; readonly path: readonly (string | number)[] };
  readonly active: 'high' | 'low';
  /** Node that feeds the load. */
  readonly supply: string;
  /** Part that carries the load's current. */
  readonly load: string;
  /** Amperes that the load is expected to take. */
  readonly expected: number;
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
  /** It clamps the load itself, as an array's common pin does. */
  readonly clamps: boolean;
  readonly unlimited: NonNullable<Wiring['unlimited']>;
  readonly inverted?: NonNullable<Wiring['inverted']>;
  /** Volts it loses beyond what its members take: a transistor that is not driven hard enough. */
  readonly shortfall?: (s: Reading) => number;
  /** Amperes it lets through when it is switched off, before the load limits them. */
  readonly leak?: (s: Reading) => number;
  readonly leakSteps?: (s: Reading) => readonly Step[];
  /** Where the load leads while it is switched off, if anywhere. */
  readonly off?: { readonly to: string; readonly members: readonly Member[] };
  /** What the rules of wiring need to know besides. */
  readonly wiring?: Partial<Wiring>;
}

type Named = DriverSetting['pin'] | undefined;

/** Types of stages that are computed. */
const STAGES: Readonly<Record<string, StageType>> = { npn, pnp, nmos, pmos };

/** The driver of a load, or undefined with a problem. */
export function driverOf(
  input: LoadInput,
  circuit: string,
  around: { pin: Named; supply: string; load: string; expected: number },
): Driver | undefined {
  const { entry, bench } = input;
  const path = [...input.path, 'driver'];
  const raw = entry['driver'];
  if (!isMapping(raw)) return undefined;
  const { pin } = around;
  if (pin === undefined) {
    bench.problem({
      path,
      on: 'key',
      says: `no pin switches the driver of \`${input.id}\``,
      expected: '`pin:` in the driver, as in `driver: { part: npn-2n2222a, pin: D8 }`',
    });
    return undefined;
  }
  const said = entry['active'] === 'low' ? 'low' : entry['active'] === 'high' ? 'high' : undefined;
  const setting: DriverSetting = { ...around, circuit, path, pin, active: said ?? 'high' };
  if (raw['array'] !== undefined) return arrayDriver(input, setting, raw['array']);
  const row = Array.isArray(raw['stages'])
    ? rowOf(input, circuit, raw, path)
    : [partOf(input, raw, path, `${circuit}.driver`)];
  if (row === undefined || row.some((r) => r === undefined)) return undefined;
  const stages = row as Part[];
  const masked = stages.flatMap(({ figures }) => RESISTORS.filter((key) => figures.masked(key)));
  if (masked[0] !== undefined) return unreckoned(input, setting, masked[0]);
  return inRow(input, setting, stages, said);
}

/** A stage before it is lowered. */
interface Part {
  readonly type: StageType;
  readonly figures: Figures;
  readonly path: readonly (string | number)[];
}

const RESISTORS = ['base-resistor', 'gate-resistor', 'pull-down', 'pull-up'];

function partOf(input: LoadInput, raw: unknown, path: readonly (string | number)[], about: string): Part | undefined {
  const part = input.bench.part('driver', raw, path, about);
  if (part === undefined) return undefined;
  const type = Object.hasOwn(STAGES, part.type) ? STAGES[part.type] : undefined;
  if (type !== undefined) return { type, figures: part.figures, path };
  input.bench.problem({
    path,
    on: 'key',
    says: `a driver of type \`${part.type}\` is not computed yet`,
    expected: `${Object.keys(STAGES)
      .map((name) => `\`${name}\``)
      .join(', ')}, or a channel of an array`,
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
    return partOf(input, entry, at, k === list.length - 1 ? `${circuit}.driver` : `${circuit}.stage-${k + 1}`);
  });
}

/** Whether the last stage conducts with the pin at a level, each stage's output driving the next. */
function conduction(stages: readonly Part[], pin: 'high' | 'low', active: 'high' | 'low' | undefined): boolean[] {
  let level: Level = pin;
  return stages.map(({ type, figures }) => {
    const conducts = type.conducts(settled(level, figures), figures, active);
    level = conducts ? type.side(figures) : 'open';
    return conducts;
  });
}

/** Lowers the stages from the pin outwards. @param said the level that the file says energises */
function inRow(
  input: LoadInput,
  setting: DriverSetting,
  stages: readonly Part[],
  said: 'high' | 'low' | undefined,
): Driver | undefined {
  const { circuit, supply, expected } = setting;
  const at = { high: conduction(stages, 'high', said), low: conduction(stages, 'low', said) };
  const [high, low] = [at.high.at(-1)!, at.low.at(-1)!];
  // A row that conducts at both levels, or at neither, has none that energises: its accounts tell.
  const real = high === low ? undefined : high ? ('high' as const) : ('low' as const);
  const active = real ?? said ?? 'high';
  const pin = input.bench.outputPin(setting.pin.name, setting.pin.path, circuit, active);
  if (pin === undefined) return undefined;
  const conducts = (k: number, state: State): boolean =>
    at[(state === 'on') === (active === 'high') ? 'high' : 'low'][k]!;
  const ids = stages.map((_, k) => (k === stages.length - 1 ? `${circuit}.driver` : `${circuit}.stage-${k + 1}`));
  let drive = pinDrive(pin, active);
  const lowered: Stage[] = [];
  for (const [k, { type, figures, path }] of stages.entries()) {
    const last = k === stages.length - 1;
    const id = ids[k]!;
    const stage = type.lower({
      input,
      figures,
      circuit,
      id,
      prefix: last ? circuit : id,
      title: last ? `driver of ${circuit}` : `stage ${k + 1} of the driver of ${circuit}`,
      path,
      drive,
      supply,
      expected: last ? expected : Math.min(expected / 10, USUAL_INPUT),
      conducts: !last && conducts(k, 'off') && !conducts(k, 'on') ? 'off' : 'on',
      loads: ids.slice(k + 1),
    });
    if (stage === undefined) return undefined;
    lowered.push(stage);
    const { side, members, most, steps, leak, leakSteps } = stage;
    drive = switchDrive(id, { conducts: (state) => conducts(k, state), side, members }, supply, {
      pin: drive.pin,
      ...(most && { most }),
      ...((drive.ages ?? stage.ages) && { ages: true as const }),
      steps,
      leak,
      leakSteps,
    });
  }
  const { side, members, shortfall, leak, leakSteps } = lowered.at(-1)!;
  return {
    by: 'driver',
    pin: pin.account,
    side,
    members,
    networks: lowered.flatMap((s) => s.networks),
    accounts: lowered.flatMap((s) => s.accounts),
    clamps: false,
    unlimited: lowered.flatMap((s) => s.unlimited),
    ...(said !== undefined && real !== undefined && said !== real && { inverted: { says: said } }),
    ...(shortfall && { shortfall }),
    leak,
    leakSteps,
  };
}

/** Amperes that the input of a stage behind another is expected to take, for reading curves off at. */
const USUAL_INPUT = 0.01;

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
