/**
 * What a switch turns into heat on its way between its two states, under pulses: for a moment it has both the supply's voltage
 * and the load's current, half of their product on average.
 *
 * P = ½·V·I·(t_on + t_off)·f. Source: STMicroelectronics, A5972D data sheet, 13956 revision 5, equation 23. A gate takes
 * 2.2·R·Q/V to be charged from a tenth to nine tenths through R, which is longer than the edge itself takes.
 */
import { closed } from '../../quantity/quantity.js';
import type { Figures } from '../figures.js';
import type { Reading, Step } from '../account-plan.js';
import { pulsesOf } from '../pulses.js';
import type { Drive, State } from './drive.js';
import type { StageSetting } from './stage.js';

export interface Switching {
  /** Watts, as a mean over a period. */
  readonly watts: (s: Reading) => number;
  readonly steps: (s: Reading) => readonly Step[];
}

/** Seconds that one edge takes: switching on, and off. */
export type Edges = (s: Reading) => { readonly on: number; readonly off: number };

type Pulsed = Pick<StageSetting, 'input' | 'id' | 'supply'>;

/** @returns undefined where nothing pulses @param load the part whose current it switches */
export function switchingOf({ input, id, supply }: Pulsed, load: string, edges: Edges): Switching | undefined {
  const pulses = pulsesOf(input.figures);
  if (pulses === undefined) return undefined;
  const often = (s: Reading): number => (s.typical ? pulses.frequency.typ : pulses.frequency.max);
  const watts = (s: Reading): number => {
    const { on, off } = edges(s);
    return (s.voltage(supply) * s.current(load) * (on + off) * often(s)) / 2;
  };
  return {
    watts,
    steps: (s) => [
      {
        name: 'P_switch',
        says: `what ${id} turns into heat while it switches, over and over`,
        formula: 'V * I * (t_on + t_off) * f / 2',
        with: {
          V: [s.voltage(supply), 'V'],
          I: [s.current(load), 'A'],
          t_on: [edges(s).on, 's'],
          t_off: [edges(s).off, 's'],
          f: [often(s), 'Hz'],
        },
        gives: [watts(s), 'W'],
      },
    ],
  };
}

/** Charge of a gate when nobody states it, coulombs: more than most that a controller switches have. Common practice, no source. */
const USUAL_CHARGE = 100e-9;
/** From a tenth to nine tenths of a charge through a resistance: ln 9 times resistance and capacitance. */
const TENTHS = Math.log(9);

/** Edges of a MOSFET: how long its drive takes to charge and to discharge its gate. @param volts at the gate when it conducts */
export function gateEdges(
  { figures, drive, conducts, input, title }: StageSetting,
  volts: (s: Reading) => number,
): Edges {
  const charge = figures.interval('gate-charge', 'charge')?.max;
  if (charge === undefined && pulsesOf(input.figures))
    figures.assume(`gate charge of the ${title}: up to 100 nC, since nobody states it`);
  const other: State = conducts === 'on' ? 'off' : 'on';
  const [closing, opening] = ([conducts, other] as const).map((state) => ohmsTowards(figures, drive, state));
  return (s) => {
    const gate = volts(s);
    const lasts = (ohms: number): number => (gate <= 0 ? 0 : (TENTHS * ohms * (charge ?? USUAL_CHARGE)) / gate);
    return { on: lasts(closing!), off: lasts(opening!) };
  };
}

/** Most ohms between a gate and where it is taken to: its drive's, or what pulls it once its drive has let go. */
function ohmsTowards(figures: Figures, drive: Drive, state: State): number {
  const ohms = (key: string): number | undefined => {
    const figure = figures.figure(key, 'resistance');
    return figure && closed(figure.quantity).max;
  };
  const before = ohms('gate-resistor') ?? 0;
  if (drive.level(state) !== 'open') return before + (drive.ohms ?? 0);
  return ohms('pull-down') ?? ohms('pull-up') ?? 0;
}

/** A small transistor is through an edge within this time, seconds, storage apart. Common practice, no source. */
const USUAL_EDGE = 1e-6;

/** Edges of a bipolar transistor, listed where it pulses. */
export function bipolarEdges({ figures, input, title }: Pick<StageSetting, 'figures' | 'input' | 'title'>): Edges {
  if (pulsesOf(input.figures)) figures.assume(`the ${title} is through an edge within 1 µs`);
  return () => ({ on: USUAL_EDGE, off: USUAL_EDGE });
}
