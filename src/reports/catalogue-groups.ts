/** The catalogue in groups as people look for things, each with the options that show it alone. */
import type { Profile, ProfileKind } from '../catalogue/profile.js';

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

const ORDER: readonly ProfileKind[] = [
  'controller',
  'chip',
  'expander',
  'array',
  'load',
  'driver',
  'clamp',
  'supply',
  'supply-part',
  'wire',
  'connector',
  'policy',
];

export interface Group {
  readonly title: string;
  /** '--type coil' */
  readonly options: string;
  readonly of: readonly Profile[];
}

/** Profiles by kind and, where a kind has types, by type; those that are not listed here come under their own names, last. */
export function groupsOf(profiles: readonly Profile[]): readonly Group[] {
  const known = Object.keys(TITLES);
  const rank = (key: string): number => {
    const [kind = ''] = key.split(' ');
    const at = ORDER.findIndex((each) => each === kind);
    return (at < 0 ? ORDER.length : at) * 1000 + (known.includes(key) ? known.indexOf(key) : 999);
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
