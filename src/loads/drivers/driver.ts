/** Drivers: what stands between a pin and a load. Each gives the load's branch its switch and has a control network of its own. */
import type { LoadInput, NetworkSketch } from '../lowering.js';
import { isMapping } from '../figures.js';
import type { AccountPlan, Member, Reading, Wiring } from '../plan.js';
import { arrayDriver } from './array.js';
import { nmosDriver } from './nmos.js';
import { npnDriver } from './npn.js';
import { unknownResistor } from '../series.js';

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
}

export interface Driver {
  readonly by: 'driver' | 'array';
  readonly pin?: string;
  /** What it puts in series with the load. */
  readonly members: readonly Member[];
  readonly networks: readonly NetworkSketch[];
  readonly accounts: readonly AccountPlan[];
  /** It clamps the load itself, as an array's common pin does. */
  readonly clamps: boolean;
  readonly unlimited: NonNullable<Wiring['unlimited']>;
  /** Volts it loses beyond what its members take: a transistor that is not driven hard enough. */
  readonly shortfall?: (s: Reading) => number;
  /** Amperes it lets through when it is switched off. */
  readonly leak?: (s: Reading) => number;
}

type Named = DriverSetting['pin'] | undefined;

/** The driver of a load, or undefined with a problem. */
export function driverOf(
  input: LoadInput,
  circuit: string,
  around: { pin: Named; supply: string; load: string },
): Driver | undefined {
  const { entry, bench } = input;
  const path = [...input.path, 'driver'];
  const raw = entry['driver'];
  if (!isMapping(raw)) return undefined;
  const own = raw['pin'] === undefined ? [] : bench.pinNames(raw['pin'], [...path, 'pin']);
  const pin = around.pin ?? own[0];
  if (pin === undefined) {
    bench.problem({
      path,
      on: 'key',
      says: `no pin switches the driver of \`${input.id}\``,
      expected: '`pin:` in the driver, as in `driver: { part: npn-2n2222a, pin: D8 }`',
    });
    return undefined;
  }
  const active = entry['active'] === 'low' ? 'low' : 'high';
  const setting: DriverSetting = { circuit, path, pin, active, supply: around.supply, load: around.load };
  if (raw['array'] !== undefined) return arrayDriver(input, setting, raw['array']);
  const part = bench.part('driver', raw, path, `${circuit}.driver`);
  if (part === undefined) return undefined;
  const masked = ['base-resistor', 'gate-resistor', 'pull-down', 'pull-up'].find((key) => part.figures.masked(key));
  if (masked !== undefined) return unreckoned(input, setting, masked);
  if (part.type === 'npn') return npnDriver(input, setting, part.figures);
  if (part.type === 'nmos') return nmosDriver(input, setting, part.figures);
  bench.problem({
    path,
    on: 'key',
    says: `a driver of type \`${part.type}\` is not computed yet`,
    expected: '`npn`, `nmos`, or a channel of an array',
  });
  return undefined;
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
    members: [],
    networks: [],
    accounts: [account],
    clamps: false,
    unlimited: [],
  };
}
