/** The accounts of a coil: does it pull in, cold and hot; does it let go; does it bear its voltage. */
import { copperFactor } from '../circuit/copper.js';
import type { CoilFigures } from './coil-figures.js';
import { coilRestTemperature } from './coil-figures.js';
import type { AccountPlan, Reading, Step } from './plan.js';
import { GROUND } from './plan.js';

/** What a coil's accounts need of the circuit around it. */
export interface CoilSetting {
  readonly circuit: string;
  /** Part name of the winding. */
  readonly part: string;
  readonly path: readonly (string | number)[];
  /** Volts that the driver loses beyond what the solved branch already takes off. */
  readonly shortfall?: (s: Reading) => number;
  /** Amperes that still flow when it is switched off; absent: the switch is open and nothing does. */
  readonly leak?: (s: Reading) => number;
  readonly leakSteps?: (s: Reading) => readonly Step[];
}

export function coilAccounts(coil: CoilFigures, setting: CoilSetting): AccountPlan[] {
  const { circuit, part, path } = setting;
  const volts = (s: Reading): number => Math.max(s.across(part) - (setting.shortfall?.(s) ?? 0), 0);
  const operate = (s: Reading): number => (s.typical ? coil.pullIn.typ : coil.pullIn.max);
  const restTemperature = (s: Reading): number => coilRestTemperature(coil, volts(s), s.ohms(part), s.ambient);
  const { reference } = coil;
  const base = { id: part, kind: 'coil' as const, circuits: [circuit], path };
  const pullIn: AccountPlan = {
    ...base,
    title: `coil of ${circuit}, pull-in`,
    quantity: 'voltage',
    direction: 'at-least',
    // What an undriven transistor keeps for itself rises with the current asked of it.
    recipes: setting.shortfall ? ['starved', 'drive-worst', 'flooded'] : ['starved', 'flooded'],
    read: volts,
    limits: [
      {
        value: (s) => operate(s) * copperFactor(s.ambient, reference),
        stated: coil.pullIn.stated,
        grade: 'operating',
        isFunction: true,
        margin: 'function-voltage',
        origin: coil.pullIn.origin,
        condition: `stated at ${reference} °C; a cold coil at the ambient`,
      },
      {
        value: (s) => operate(s) * copperFactor(restTemperature(s), reference),
        stated: coil.pullIn.stated,
        grade: 'operating',
        isFunction: true,
        margin: 'none',
        origin: coil.pullIn.origin,
        condition: `stated at ${reference} °C; switched on again after its own heat`,
      },
    ],
    steps: (s) => [
      ...acrossSteps(s, part, setting.shortfall?.(s) ?? 0, volts(s)),
      ...pullInSteps(coil, s, operate(s), restTemperature(s), volts(s), s.ohms(part)),
    ],
  };
  const highest: AccountPlan = {
    ...base,
    title: `coil of ${circuit}, highest voltage`,
    quantity: 'voltage',
    direction: 'at-most',
    recipes: setting.shortfall ? ['flooded', 'drive-best', 'starved'] : ['flooded', 'starved'],
    read: volts,
    limits: [coil.maximum],
    steps: (s) => acrossSteps(s, part, setting.shortfall?.(s) ?? 0, volts(s)),
  };
  const leak = setting.leak ?? (() => 0);
  const letsGo: AccountPlan = {
    ...base,
    title: `coil of ${circuit}, switched off`,
    quantity: 'current',
    direction: 'at-most',
    recipes: ['let-go-worst', 'let-go-best'],
    read: leak,
    limits: [
      {
        // The coldest coil holds on longest: the same ampere-turns, so the current is what counts.
        value: (s) => (s.typical ? coil.dropOut.typ / coil.ohms.typ : coil.dropOut.min / coil.ohms.max),
        stated: coil.dropOut.stated,
        grade: 'operating',
        isFunction: true,
        margin: 'none',
        origin: coil.dropOut.origin,
        condition: `drop-out, over its resistance at ${reference} °C`,
      },
    ],
    steps: (s) => [
      ...(setting.leakSteps?.(s) ?? []),
      {
        name: 'I_coil',
        says: 'what still flows in the coil when it is switched off',
        formula: 'I',
        with: { I: [leak(s), 'A'] },
        gives: [leak(s), 'A'],
      },
    ],
  };
  const unless = (key: 'pull-in' | 'maximum' | 'drop-out', account: AccountPlan, does: string): AccountPlan =>
    coil.unknown.has(key)
      ? {
          ...account,
          limits: [],
          missing: { figure: key, asks: `at what voltage does the coil of ${circuit} ${does} (its \`${key}\`)?` },
        }
      : account;
  return [
    unless('pull-in', pullIn, 'pull in'),
    unless('maximum', highest, 'take harm'),
    unless('drop-out', letsGo, 'let go'),
  ];
}

/** Voltage across the winding: the branch's voltage less what its other members take. */
function acrossSteps(s: Reading, part: string, shortfall: number, volts: number): Step[] {
  const branch = s.branch(part);
  if (branch === undefined) return [];
  const values: Record<string, readonly [number, string]> = {};
  const terms: string[] = [];
  for (const [sign, end] of [
    ['', branch.from],
    [' - ', branch.to],
  ] as const) {
    if (end.node === GROUND) continue;
    const name = sign === '' ? 'V_supply' : 'V_return';
    values[name] = [end.volts, 'V'];
    terms.push(sign === '' ? name : `- ${name}`);
  }
  let rest = 0;
  for (const { member, volts: v } of branch.members) if (member.part !== part) rest += v;
  if (rest !== 0) {
    values['V_losses'] = [rest, 'V'];
    terms.push('- V_losses');
  }
  if (shortfall !== 0) {
    values['V_more'] = [shortfall, 'V'];
    terms.push('- V_more');
  }
  return [
    {
      name: 'V_coil',
      says: 'voltage that reaches the coil',
      formula: terms.join(' '),
      with: values,
      gives: [volts, 'V'],
    },
  ];
}

function pullInSteps(coil: CoilFigures, s: Reading, operate: number, hot: number, volts: number, ohms: number): Step[] {
  const zero = [234.5, '°C'] as const;
  const at = { V_operate: [operate, 'V'], K: zero, T_reference: [coil.reference, '°C'] } as const;
  const formula = 'V_operate * (K + T) / (K + T_reference)';
  const sources = [`${coil.pullIn.origin.document}${coil.pullIn.origin.where ? `, ${coil.pullIn.origin.where}` : ''}`];
  const reference = ohms / copperFactor(s.ambient, coil.reference);
  return [
    {
      name: 'V_cold',
      says: 'pull-in voltage of the cold coil at the ambient',
      formula,
      with: { ...at, T: [s.ambient, '°C'] },
      gives: [operate * copperFactor(s.ambient, coil.reference), 'V'],
      sources,
    },
    {
      name: 'T_coil',
      says: 'temperature of the coil at rest, its own heat counted',
      formula: '(K + T_ambient + sqrt((K + T_ambient)^2 + 4 * R_th * V^2 * (K + T_reference) / R)) / 2 - K',
      with: {
        K: zero,
        T_ambient: [s.ambient, '°C'],
        R_th: [coil.thermal, 'K/W'],
        V: [volts, 'V'],
        T_reference: [coil.reference, '°C'],
        R: [reference, 'Ω'],
      },
      gives: [hot, '°C'],
    },
    {
      name: 'V_hot',
      says: 'pull-in voltage when it is switched on again hot',
      formula,
      with: { ...at, T: [hot, '°C'] },
      gives: [operate * copperFactor(hot, coil.reference), 'V'],
      sources,
    },
  ];
}
