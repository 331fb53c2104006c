/** The sums behind a coil's accounts: the voltage that reaches it, how warm it gets, and what it then needs. */
import { COPPER_ZERO, coilTemperature, copperFactor } from '../circuit/copper.js';
import { leftSteps } from './branch-working.js';
import type { Winding } from './clamp-working.js';
import type { CoilFigures } from './coil-figures.js';
import { dropOutCurrent, thermalIn } from './coil-figures.js';
import type { Reading, Step } from './account-plan.js';
import type { Member, Origin } from './branch-plan.js';

const ZERO = [COPPER_ZERO, '°C'] as const;

/** A source as working names it. */
export const sourceOf = ({ document, where }: Origin): string => `${document}${where ? `, ${where}` : ''}`;

/** The last stage of a driver, which carries the load. */
const isDriver = ({ part }: Member): boolean => part.endsWith('.driver');

/** Voltage across the winding: the branch's voltage less what its other members take, and what the driver loses besides. */
export function acrossSteps(s: Reading, part: string, shortfall: number, volts: number): Step[] {
  const branch = s.branch(part);
  if (branch === undefined) return [];
  // What a driver loses beyond its published drop is told with it.
  const members = branch.members.map((m) =>
    isDriver(m.member) && branch.amps !== 0
      ? {
          ...m,
          volts: m.volts + shortfall,
          // A channel that has warmed up has more ohms than the solved branch counts.
          ...(m.ohms !== undefined && { ohms: m.ohms + shortfall / branch.amps }),
        }
      : m,
  );
  const [step] = leftSteps({ ...branch, members }, part, 'V_coil', 'voltage that reaches the coil');
  return step === undefined ? [] : [{ ...step, gives: [volts, 'V'] }];
}

/** Temperature of the winding at rest, from the volts that heat it. */
export function restSteps(coil: CoilFigures, s: Reading, volts: number, ohms: number): Step[] {
  const reference = ohms / copperFactor(s.ambient, coil.reference);
  const thermal = thermalIn(coil, s);
  return [
    {
      name: 'T_coil',
      says: 'temperature of the coil at rest, its own heat counted',
      formula: '(K + T_ambient + sqrt((K + T_ambient)^2 + 4 * R_th * V^2 * (K + T_reference) / R)) / 2 - K',
      with: {
        K: ZERO,
        T_ambient: [s.ambient, '°C'],
        R_th: [thermal, 'K/W'],
        V: [volts, 'V'],
        T_reference: [coil.reference, '°C'],
        R: [reference, 'Ω'],
      },
      gives: [coilTemperature(volts, reference, s.ambient, thermal, coil.reference), '°C'],
    },
  ];
}

/**
 * Pull-in voltage of the cold coil.
 *
 * @param operate volts at the reference temperature
 */
export const coldSteps = (coil: CoilFigures, s: Reading, operate: number): Step[] => [
  {
    name: 'V_cold',
    says: 'pull-in voltage of the cold coil at the ambient',
    formula: 'V_operate * (K + T) / (K + T_reference)',
    with: { V_operate: [operate, 'V'], K: ZERO, T_reference: [coil.reference, '°C'], T: [s.ambient, '°C'] },
    gives: [operate * copperFactor(s.ambient, coil.reference), 'V'],
    sources: [sourceOf(coil.pullIn.origin)],
  },
];

/**
 * Pull-in voltage of the coil that is still warm.
 *
 * @param operate volts at `from` °C of the winding @param hot the winding's temperature, °C
 */
export const hotSteps = (coil: CoilFigures, operate: number, from: number, hot: number): Step[] => [
  {
    name: 'V_hot',
    says: 'pull-in voltage when it is switched on again hot',
    formula: 'V_operate * (K + T) / (K + T_reference)',
    with: { V_operate: [operate, 'V'], K: ZERO, T_reference: [from, '°C'], T: [hot, '°C'] },
    gives: [operate * copperFactor(hot, from), 'V'],
    sources: [sourceOf(coil.pullIn.origin)],
  },
];

/** Current at which it lets go, as a step. */
export function releaseStep(coil: CoilFigures, s: Reading): Step {
  const [volts, ohms] = s.typical ? [coil.dropOut.typ, coil.ohms.typ] : [coil.dropOut.min, coil.ohms.max];
  return {
    name: 'I_release',
    says: `current at which it lets go, whatever its temperature: its drop-out voltage over its resistance, both at ${coil.reference} °C`,
    formula: 'V_drop_out / R',
    with: { V_drop_out: [volts, 'V'], R: [ohms, 'Ω'] },
    gives: [volts / ohms, 'A'],
    sources: [sourceOf(coil.dropOut.origin)],
  };
}

/** What a coil's clamp has to know of it, where its inductance is stated. */
export const windingOf = (coil: CoilFigures): { readonly winding?: Winding } =>
  coil.inductance === undefined
    ? {}
    : {
        winding: {
          inductance: coil.inductance,
          release: (s) => dropOutCurrent(coil, s),
          releaseStep: (s) => releaseStep(coil, s),
        },
      };
