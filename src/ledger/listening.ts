/**
 * Loads that are told what to do over a line: servos, pixels, the enable and step inputs of modules. Until firmware runs they
 * hear what the pin makes of the line; where nothing holds it, what it picks up may pass for a signal.
 */
import { LEAKAGE } from '../project/loose-pins.js';
import type { PinUse } from '../project/pin-plan.js';
import type { Project } from '../project/project.js';
import type { AtBoot } from './boot.js';

export type Listening = AtBoot & {
  /** The line, by its role. */
  readonly line: string;
};

/** Lines of modules that start or stop something by themselves. Data lines are read together with a clock or an address. */
const ACTING = new Set(['enable', 'en', 'step', 'pwm', 'signal', 'control', 'in', 'trig', 'trigger']);

/** Volts that a leak may move a line by: below what any input of 3.3 V and more reads as high (common practice, no source). */
const LITTLE = 0.8;

export function listeningIn(project: Project): Listening[] {
  const pins = new Map(project.pins.map((p) => [p.id, p]));
  const circuits = new Map(project.circuits.map((c) => [c.id, c]));
  return project.uses.flatMap((use): Listening[] => {
    const line = lineOf(use, circuits.get(use.by)?.listens === true);
    const pin = pins.get(use.pin);
    if (line === undefined || pin === undefined || !circuits.has(use.by)) return [];
    const holds = pin.fitted !== undefined && LEAKAGE * pin.fitted <= LITTLE;
    const { boot: state } = pin;
    const does = state === 'pulses' || state === 'any' ? 'pulses' : state === 'floating' && !holds ? 'open' : 'off';
    return does === 'off' ? [] : [{ circuit: use.by, does, pins: [{ pin: use.pin, state }], line }];
  });
}

function lineOf({ as, role }: PinUse, listens: boolean): string | undefined {
  if (as === 'output') return listens ? 'signal' : undefined;
  return as === 'signal' && role !== undefined && ACTING.has(role.toLowerCase()) ? role : undefined;
}
