/** The accounts of a coil: does it pull in, cold and hot; does it let go; does it bear its voltage and its heat. */
import { coilTemperature, copperFactor } from '../circuit/copper.js';
import { highestCoilVoltage } from '../circuit/coil.js';
import type { CoilFigures } from './coil-figures.js';
import { coilRestTemperature, dropOutCurrent, thermalIn } from './coil-figures.js';
import { acrossSteps, coldSteps, hotSteps, releaseStep, restSteps } from './coil-working.js';
import { actingSteps, raised } from './coil-bypass.js';
import { pulledBy, pulledSteps } from './coil-pulsed.js';
import { rmsOf, rmsSteps } from './pulses.js';
import { heldAccount } from './coil-held.js';
import type { Bench } from './lowering.js';
import type { Bypass } from './series.js';
import type { AccountPlan, LimitPlan, Reading, Step } from './account-plan.js';

/** What a coil's accounts need of the circuit around it. */
export interface CoilSetting {
  readonly circuit: string;
  /** Part name of the winding. */
  readonly part: string;
  readonly path: readonly (string | number)[];
  /** Volts that the driver loses beyond what the solved branch already takes off. */
  readonly shortfall?: (s: Reading) => number;
  readonly lossSteps?: (s: Reading) => readonly Step[];
  /** Amperes that still flow when it is switched off; absent: the switch is open and nothing does. */
  readonly leak?: (s: Reading) => number;
  readonly leakSteps?: (s: Reading) => readonly Step[];
  /** A capacitor lies across its series resistor: it pulls in with more voltage than it is held by. */
  readonly bypass?: Bypass;
  /** Volts across its clamp in a pause between pulses, at the winding's amperes. */
  readonly keeps?: (amps: number, s: Reading) => number;
  /** Its supply, where that does not keep one voltage: a battery, an adapter that does not regulate. */
  readonly unsteady?: { readonly node: string; readonly highest: number };
}

/** The supply of a coil, where that does not keep one voltage. */
export function unsteadyAt(bench: Bench, node: string | undefined): Pick<CoilSetting, 'unsteady'> {
  const highest = node === undefined ? undefined : bench.unsteady(node);
  return highest === undefined ? {} : { unsteady: { node: node!, highest } };
}

/** A coil where it hangs, with the voltages that the accounts share. */
interface Hung {
  readonly coil: CoilFigures;
  readonly setting: CoilSetting;
  /** Volts across the winding when it has to pull in. */
  readonly volts: (s: Reading) => number;
  /** Volts that have heated it before it is switched on again. */
  readonly heating: (s: Reading) => number;
  readonly base: Pick<AccountPlan, 'id' | 'kind' | 'circuits' | 'path'>;
}

export function coilAccounts(coil: CoilFigures, setting: CoilSetting): AccountPlan[] {
  const { circuit, part, path, unsteady } = setting;
  const { bypass } = setting;
  const less = (s: Reading, volts: number): number => Math.max(volts - (setting.shortfall?.(s) ?? 0), 0);
  const volts = (s: Reading): number => less(s, s.across(part) * (bypass ? raised(s, part, bypass, 'acting') : 1));
  const held = (s: Reading): number => less(s, s.across(part) * (bypass ? raised(s, part, bypass, 'ohms') : 1));
  const hung: Hung = {
    coil,
    setting,
    volts,
    // The losses on the way are the same; only the supply stood higher.
    heating: (s) => rmsOf(s, held) + (unsteady ? Math.max(unsteady.highest - s.voltage(unsteady.node), 0) : 0),
    base: { id: part, kind: 'coil', circuits: [circuit], path },
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
    unless('pull-in', pullIn(hung), 'pull in'),
    ...(coil.maximum ? [unless('maximum', highest(hung, coil.maximum), 'take harm')] : []),
    ...(coil.hottest ? [heat(hung, coil.hottest)] : []),
    ...(coil.holding ? [heldAccount(coil, coil.holding, setting, hung.base)] : []),
    unless('drop-out', letsGo(hung), 'let go'),
  ];
}

function pullIn(hung: Hung): AccountPlan {
  const { coil, setting, volts, heating, base } = hung;
  const { part, bypass } = setting;
  const { reference } = coil;
  const operate = (s: Reading): number => (s.typical ? coil.pullIn.typ : coil.pullIn.max);
  /** A published hot operate voltage replaces the copper rule: it is carried over from the ambient it was stated at. */
  const published = (s: Reading) =>
    coil.pullIn.hot.length === 0
      ? undefined
      : coil.pullIn.hot.reduce((a, b) => (Math.abs(b.at - s.ambient) < Math.abs(a.at - s.ambient) ? b : a));
  const ohms = (s: Reading): number => s.ohms(part) / copperFactor(s.ambient, reference);
  /** Volts that it needs hot: those it needs with its winding at a temperature, and that temperature. */
  const hot = (s: Reading): { readonly operate: number; readonly from: number; readonly at: number } => {
    const at = coilRestTemperature(coil, heating(s), s.ohms(part), s);
    const point = published(s);
    if (point === undefined) return { operate: operate(s), from: reference, at };
    const from = coilTemperature(heating(s), ohms(s), point.at, thermalIn(coil, s), reference);
    return { operate: s.typical ? point.typ : point.max, from, at };
  };
  const needed = (s: Reading): number => {
    const { operate: volt, from, at } = hot(s);
    return volt * copperFactor(at, from);
  };
  const limit = { grade: 'operating', isFunction: true, origin: coil.pullIn.origin } as const;
  const cold: LimitPlan = {
    ...limit,
    value: (s) => operate(s) * copperFactor(s.ambient, reference),
    stated: coil.pullIn.stated,
    margin: 'function-voltage',
    condition: `stated at ${reference} °C; a cold coil at the ambient`,
  };
  const again: LimitPlan = {
    ...limit,
    value: needed,
    stated: coil.pullIn.hot.map((p) => p.stated).join(', ') || coil.pullIn.stated,
    margin: 'none',
    condition:
      coil.pullIn.hot.length > 0
        ? 'stated for a coil in its own heat; switched on again after its own heat'
        : `stated at ${reference} °C; switched on again after its own heat`,
  };
  return {
    ...base,
    title: `coil of ${setting.circuit}, pull-in`,
    quantity: 'voltage',
    direction: 'at-least',
    // What an undriven transistor keeps for itself rises with the current asked of it.
    recipes: setting.shortfall ? ['starved', 'drive-worst', 'flooded'] : ['starved', 'flooded'],
    ...(bypass && { peaks: true }),
    read: (s) => pulledBy(s, setting, volts(s)),
    limits: coil.restartsCold ? [cold] : [cold, again],
    steps: (s) => {
      const { operate: volt, from, at } = hot(s);
      return [
        ...(setting.lossSteps?.(s) ?? []),
        ...(bypass
          ? actingSteps(s, part, bypass, setting.shortfall?.(s) ?? 0)
          : acrossSteps(s, part, setting.shortfall?.(s) ?? 0, volts(s))),
        ...pulledSteps(s, setting, volts(s)),
        ...coldSteps(coil, s, operate(s)),
        ...(coil.restartsCold
          ? []
          : [
              ...heatingSteps(setting, s, volts(s), heating(s)),
              ...rmsSteps(
                s,
                'V_rms',
                'what has heated it: its root mean square over a period of the pulses',
                'V',
                volts,
              ),
              ...restSteps(coil, s, heating(s), s.ohms(part)),
              ...hotSteps(coil, volt, from, at),
            ]),
      ];
    },
  };
}

/** The voltage that heats a coil, where its supply has stood higher than it does when the coil is switched on again. */
function heatingSteps({ unsteady }: CoilSetting, s: Reading, volts: number, heating: number): Step[] {
  if (unsteady === undefined || heating === volts) return [];
  return [
    {
      name: 'V_heat',
      says: 'what has heated it: the same losses under its supply’s highest voltage',
      formula: 'V_coil + V_highest - V_supply',
      with: {
        V_coil: [volts, 'V'],
        V_highest: [unsteady.highest, 'V'],
        V_supply: [s.voltage(unsteady.node), 'V'],
      },
      gives: [heating, 'V'],
    },
  ];
}

/** The most that reaches the coil: through a driver at its lowest saturation, which is what the solved branch has. */
function highest({ setting, base }: Hung, limit: LimitPlan): AccountPlan {
  const { part } = setting;
  return {
    ...base,
    title: `coil of ${setting.circuit}, highest voltage`,
    quantity: 'voltage',
    direction: 'at-most',
    recipes: ['flooded', 'starved'],
    read: (s) => s.across(part),
    limits: [limit],
    steps: (s) => acrossSteps(s, part, 0, s.across(part)),
  };
}

/** Heat in the winding at rest; its resistance has risen by then, so that it is less than the cold coil's power would make. */
function heat({ coil, setting, base }: Hung, limit: LimitPlan): AccountPlan {
  const { part } = setting;
  const heats = (s: Reading): number => rmsOf(s, (at) => at.across(part));
  const permitted = (s: Reading): number => (typeof limit.value === 'number' ? limit.value : limit.value(s));
  return {
    ...base,
    title: `coil of ${setting.circuit}, winding`,
    quantity: 'temperature',
    direction: 'at-most',
    recipes: ['draw-most', 'flooded', 'draw-least'],
    read: (s) => coilRestTemperature(coil, heats(s), s.ohms(part), s),
    limits: [limit],
    steps: (s) => {
      const ohms = s.ohms(part) / copperFactor(s.ambient, coil.reference);
      const thermal = thermalIn(coil, s);
      return [
        ...acrossSteps(s, part, 0, s.across(part)),
        {
          name: 'V_highest',
          says: 'highest voltage for good at this ambient, which would bring the winding to its limit',
          formula: 'sqrt((T - T_ambient) * R * (K + T) / (K + T_reference) / R_th)',
          with: {
            T: [permitted(s), '°C'],
            T_ambient: [s.ambient, '°C'],
            R: [ohms, 'Ω'],
            K: [234.5, '°C'],
            T_reference: [coil.reference, '°C'],
            R_th: [thermal, 'K/W'],
          },
          gives: [highestCoilVoltage(ohms, s.ambient, thermal, permitted(s), coil.reference), 'V'],
        },
        ...rmsSteps(s, 'V_rms', 'what heats it: its root mean square over a period of the pulses', 'V', (at) =>
          at.across(part),
        ),
        ...restSteps(coil, s, heats(s), s.ohms(part)),
      ];
    },
  };
}

function letsGo({ coil, setting, base }: Hung): AccountPlan {
  const leak = setting.leak ?? (() => 0);
  return {
    ...base,
    title: `coil of ${setting.circuit}, switched off`,
    quantity: 'current',
    direction: 'at-most',
    recipes: ['let-go-worst', 'let-go-best'],
    read: leak,
    limits: [
      {
        value: (s) => dropOutCurrent(coil, s),
        stated: coil.dropOut.stated,
        grade: 'operating',
        isFunction: true,
        margin: 'none',
        origin: coil.dropOut.origin,
        condition: `drop-out, over its resistance at ${coil.reference} °C`,
      },
    ],
    steps: (s) => [
      ...(setting.leakSteps?.(s) ?? [
        {
          name: 'I_coil',
          says: 'what still flows in the coil when it is switched off',
          formula: 'I',
          with: { I: [leak(s), 'A'] },
          gives: [leak(s), 'A'],
        } satisfies Step,
      ]),
      releaseStep(coil, s),
    ],
  };
}
