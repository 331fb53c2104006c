/** The figures by which people tell one thing from the next, in the order in which they ask for them. */
import { type Fields, field, isFields, isFigure, type Profile } from './profile.js';

/** A figure by the way to it, and what stands before it where its unit does not say what it is. */
type Named = string | readonly [way: string, label: string];

const SWITCH: readonly Named[] = ['maximum-current', 'maximum-voltage'];

/** By kind, or by kind and type where types differ. */
const HEADLINES: Readonly<Record<string, readonly Named[]>> = {
  chip: ['supply.operating', ['limits', 'a pin']],
  expander: ['supply.operating', ['limits', 'a pin']],
  controller: ['chip', ['inlets', 'inlets'], ['rails', 'rails']],
  array: [['channels', 'channels'], 'channel-current', 'maximum-voltage'],
  clamp: ['zener-voltage', 'reverse-voltage', 'current'],
  supply: ['voltage', 'current', 'capacity'],
  'supply-part': ['voltage', 'current', ['hold', 'holds'], 'input', 'resistance'],
  wire: ['gauge', ['resistance-per-metre', 'a metre'], 'rating', 'insulation'],
  connector: ['rating', 'contact-resistance'],
  policy: [
    ['current', 'currents'],
    ['function-voltage', 'functions'],
    ['temperature', 'heat'],
    ['drive', 'drive'],
  ],
  driver: SWITCH,
  'driver:npn': [...SWITCH, ['gain', 'gain']],
  'driver:pnp': [...SWITCH, ['gain', 'gain']],
  'driver:nmos': [...SWITCH, 'on-resistance'],
  'driver:pmos': [...SWITCH, 'on-resistance'],
  'driver:opto': [['transfer-ratio', 'ratio'], ...SWITCH],
  'driver:chopper': ['maximum-current', 'supply-voltage', 'on-resistance'],
  load: ['supply-voltage', 'voltage', 'current', 'power', 'resistance', 'active', 'peak', 'run', 'stall'],
  'load:coil': ['voltage', 'resistance', 'power'],
  'load:led': ['colour', 'forward-voltage', 'maximum-current'],
  'load:display': ['supply-voltage', 'active', 'forward-voltage', 'maximum-current'],
  'load:relay-board': [
    ['channels', 'channels'],
    ['input.active', 'active'],
    ['input.coupling', 'coupling'],
    ['coil.voltage', 'coils'],
    'coil.resistance',
  ],
  'load:solid-state-relay': [['input.window', 'control'], 'input.on-current', 'drop'],
  'load:pixels': ['supply-voltage', ['full-each', 'each']],
  'load:stepper': ['voltage', 'maximum-current', 'winding-resistance'],
};

/** One figure of a headline: `5 V ±5 %`; with what it holds at, and with a label where it needs one. */
function told(profile: Fields, named: Named): string | undefined {
  const [way, label] = typeof named === 'string' ? [named, undefined] : named;
  const stated = way.split('.').reduce<unknown>((at, key) => field(at, key), profile);
  if (way === 'limits') return pinLimit(stated);
  const figure = Array.isArray(stated) ? (stated as readonly unknown[]).at(-1) : stated;
  const text = textOf(figure);
  if (text === undefined) return undefined;
  return label === undefined ? text : label === 'channels' ? counted(text) : `${label} ${text}`;
}

const counted = (channels: string): string => `${channels} ${channels === '1' ? 'channel' : 'channels'}`;

function textOf(figure: unknown): string | undefined {
  if (typeof figure === 'string' || typeof figure === 'number') return String(figure);
  if (isFigure(figure)) return figure.at === undefined ? String(figure.value) : `${figure.value} at ${figure.at}`;
  return isFields(figure) ? Object.keys(figure).join(', ') : undefined;
}

/** What one pin bears: its damage limit if there is one, else the first that is stated. */
function pinLimit(rows: unknown): string | undefined {
  const pins = (Array.isArray(rows) ? (rows as readonly unknown[]) : [])
    .filter(isFields)
    .filter((row) => row['applies-to'] === 'each-pin' || field(row['applies-to'], 'each') !== undefined)
    .filter((row) => [row['source'], row['sink'], row['either']].some((each) => each !== undefined));
  const row = pins.find(({ grade }) => grade === 'absolute') ?? pins[0];
  if (row === undefined) return undefined;
  const amps = row['source'] ?? row['either'] ?? row['sink'];
  return `${String(amps)} a pin (${String(row['grade'])})`;
}

/** The headline of a profile, `5 V, 70 Ω ±10 %, 360 mW`; of `most` figures at most. */
export function headline(profile: Profile, most = 4): string {
  const { kind, type } = profile;
  const named = HEADLINES[`${kind}:${type}`] ?? HEADLINES[kind] ?? [];
  return named
    .flatMap((each) => told(profile, each) ?? [])
    .slice(0, most)
    .join(', ');
}
