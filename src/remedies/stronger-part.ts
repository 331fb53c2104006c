/**
 * A driver that carries too much, bears too much or gets too hot gives way to a stronger one of the catalogue; a load that is too
 * much for its channel of an array gets a transistor of its own.
 */
import { isMapping } from '../loads/figures.js';
import type { Way } from './cures.js';
import { entryOf } from './entries.js';
import type { Cure } from './prove.js';

const RULES = new Set([
  'driver-current',
  'driver-voltage',
  'driver-heat',
  'driver-drive',
  'driver-release',
  'gate-voltage',
  'clamp-rating',
  'coil-no-clamp',
]);

const MORE_DRIVE = new Set(['driver-current', 'driver-heat', 'driver-drive', 'gate-voltage']);

/** Parts of the catalogue by type, with what stays of the entry beside them. */
const PARTS: Readonly<
  Record<string, { readonly part: string; readonly words: string; readonly keep: readonly string[] }>
> = {
  npn: { part: 'npn-2n2222a', words: 'an NPN 2N2222A', keep: ['base-resistor', 'pull-down'] },
  pnp: { part: 'pnp-2n2907a', words: 'a PNP 2N2907A', keep: ['base-resistor', 'pull-up'] },
  nmos: { part: 'nmos-ao3400a', words: 'an N-channel MOSFET AO3400A', keep: ['gate-resistor', 'pull-down'] },
  pmos: { part: 'pmos-ao3401a', words: 'a P-channel MOSFET AO3401A', keep: ['gate-resistor', 'pull-up'] },
  'h-bridge': { part: 'h-bridge-3a6', words: 'an H-bridge for 3.6 A', keep: ['supply'] },
};
/** What a part is, where the file names one. */
const TYPES: readonly (readonly [RegExp, string])[] = [
  [/^npn-/, 'npn'],
  [/^pnp-/, 'pnp'],
  [/^nmos-/, 'nmos'],
  [/^pmos-/, 'pmos'],
  [/^h-bridge-/, 'h-bridge'],
];

export const strongerPart: Way = ({ finding, judgement, data }) => {
  if (!RULES.has(finding.rule)) return [];
  const owners = [...new Set([finding.about, ...(finding.account?.entries ?? []).map((e) => e.circuit)])];
  const { circuits } = judgement.project;
  const circuit = owners
    .map((id) => circuits.find((c) => c.id === id || c.wiring.channels?.includes(id)))
    .find((c) => c !== undefined);
  const driver = circuit && entryOf(data, 'loads', circuit.owner)?.['driver'];
  if (circuit === undefined || !isMapping(driver) || driver['stages'] !== undefined) return [];
  const path = ['loads', circuit.owner];
  const pins = {
    ...(driver['pin'] !== undefined && { pin: driver['pin'] }),
    ...(driver['pins'] !== undefined && { pins: driver['pins'] }),
  };
  const watch = [`${circuit.id}.driver`, ...(finding.account ? [finding.account.id] : [])];
  if (driver['array'] !== undefined) {
    const by = PARTS['nmos']!;
    const clamp = circuit.wiring.inductive;
    const title = `Give ${circuit.owner} ${by.words} of its own${clamp ? ' and a diode 1N4007' : ''}`;
    return [
      {
        title,
        changes: [
          {
            path: [...path, 'driver'],
            value: { part: by.part, ...pins, 'gate-resistor': '220 Ω ±5 %', 'pull-down': '100 kΩ ±5 %' },
          },
          ...(clamp ? [{ path: [...path, 'clamp'], value: { part: 'diode-1n4007' } }] : []),
        ],
        parts: [by.words, '220 Ω and 100 kΩ', ...(clamp ? ['a diode 1N4007'] : [])],
        steps: [
          `Take ${circuit.owner} off its channel and put it on the drain; the gate goes through 220 Ω to its pin, 100 kΩ from gate to ground, the source to ground.`,
          ...(clamp ? [`Put the diode across ${circuit.owner}, its ring towards the plus.`] : []),
        ],
        watch,
      },
    ];
  }
  const type = String(driver['type'] ?? TYPES.find(([form]) => form.test(String(driver['part'])))?.[1]);
  const by = PARTS[type];
  // Where it lacks drive or gets too hot a MOSFET is offered already.
  if (by === undefined || driver['part'] === by.part || (type === 'nmos' && MORE_DRIVE.has(finding.rule))) return [];
  const kept = Object.fromEntries(by.keep.filter((key) => driver[key] !== undefined).map((key) => [key, driver[key]]));
  const cure: Cure = {
    title: `Put ${by.words} in place of the driver of ${circuit.owner}`,
    changes: [{ path: [...path, 'driver'], value: { part: by.part, ...pins, ...kept } }],
    parts: [by.words],
    steps: [
      `Replace the driver of ${circuit.owner} by ${by.words}; its resistors stay. Its legs may come in another order: see its data sheet.`,
    ],
    watch,
  };
  return [cure];
};
