/** The catalogue in groups as people look for things, each with the options that show it alone. */
import type { Profile } from '../catalogue/profile.js';

/** In the order in which they are shown. */
const TITLES: Readonly<Record<string, string>> = {
  controller: 'Controller boards',
  chip: 'Chips',
  expander: 'Expanders',
  array: 'Driver arrays',
  'load coil': 'Coils',
  'load relay-board': 'Relay boards',
  'load solid-state-relay': 'Solid-state relays',
  'load led': 'LEDs',
  'load lamp': 'Lamps',
  'load display': 'Displays',
  'load module': 'Modules',
  'load pixels': 'Pixels',
  'load buzzer': 'Buzzers',
  'load servo': 'Servos',
  'load dc-motor': 'DC motors',
  'load stepper': 'Steppers',
  'load resistor': 'Resistors and heaters',
  'load constant-current': 'Loads of constant current',
  'load constant-power': 'Loads of constant power',
  'driver npn': 'NPN transistors',
  'driver pnp': 'PNP transistors',
  'driver nmos': 'N-channel MOSFETs',
  'driver pmos': 'P-channel MOSFETs',
  'driver opto': 'Couplers',
  'driver h-bridge': 'Bridges',
  'driver chopper': 'Choppers',
  'driver open-drain': 'Open-drain drivers',
  'driver gate-driver': 'Gate drivers',
  'clamp diode': 'Diodes',
  'clamp schottky': 'Schottky diodes',
  'clamp zener': 'Zener diodes',
  'clamp tvs': 'Suppressors',
  supply: 'Supplies',
  'supply-part': 'Parts between supplies',
  'supply-part linear-regulator': 'Linear regulators',
  'supply-part switching-regulator': 'Switching regulators',
  'supply-part fuse': 'Fuses',
  'supply-part diode': 'Diodes between supplies',
  wire: 'Wires',
  connector: 'Connectors',
  policy: 'Policies',
};

export interface Group {
  readonly title: string;
  /** '--type coil' */
  readonly options: string;
  readonly of: readonly Profile[];
}

/** Profiles by kind and, where a kind has types, by type; those that are not listed here come under their own names, after their kind. */
export function groupsOf(profiles: readonly Profile[]): readonly Group[] {
  const known = Object.keys(TITLES);
  const isOf = (kind: string) => (key: string) => key === kind || key.startsWith(`${kind} `);
  const rank = (key: string): number => {
    const own = known.indexOf(key);
    if (own >= 0) return own;
    const last = known.findLastIndex(isOf(key.split(' ')[0]!));
    return last < 0 ? known.length : last + 0.5;
  };
  const keyOf = ({ kind, type }: Profile): string => (type === undefined ? kind : `${kind} ${type}`);
  const keys = [...new Set(profiles.map(keyOf))].sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1));
  return keys.map((key) => {
    const [kind, type] = key.split(' ');
    const title = TITLES[key] ?? (type === undefined ? `${kind}` : `${TITLES[kind!] ?? kind}: ${type}`);
    return {
      title: title.charAt(0).toUpperCase() + title.slice(1),
      options: type === undefined ? `--kind ${kind}` : `--type ${type}`,
      of: profiles.filter((each) => keyOf(each) === key),
    };
  });
}
