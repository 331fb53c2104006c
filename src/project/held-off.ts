/**
 * Outputs that a control line holds off until firmware runs: an expander's, or the channels of an array that is set over its
 * lines. A register wakes as it likes, and shows it unless its enable line rests at the level that keeps its outputs off.
 */
import type { Figures } from '../loads/figures.js';
import { isMapping } from '../loads/figures.js';
import type { BootState } from '../loads/circuit-plan.js';
import type { Chip } from './chip.js';
import { pinNamed } from './names.js';
import { isState } from './pin-at-boot.js';

/** The level that a pin rests at until firmware runs: as it is driven, as a resistor at it holds it, as it is pulled inside. */
function restsAt(chip: Chip, pin: Parameters<Chip['bootState']>[0]): 'high' | 'low' | undefined {
  const state = chip.bootState(pin);
  if (state === 'high' || state === 'low') return state;
  if (state === 'pulses' || state === 'any') return undefined;
  const [fitted] = chip.fitted(pin);
  if (fitted) return fitted.to === 'rail' ? 'high' : 'low';
  return state === 'pulled-up' ? 'high' : state === 'pulled-down' ? 'low' : undefined;
}

/** The control line that holds outputs off, by its role, and the level at which it does. */
export interface OutputsOff {
  readonly line: string;
  readonly at: 'high' | 'low';
}

export function outputsOff(figures: Figures): OutputsOff | undefined {
  const off = figures.within('outputs-off');
  const [line, at] = [off.word('by'), off.word('at')];
  return line === undefined || (at !== 'high' && at !== 'low') ? undefined : { line, at };
}

/**
 * What outputs do until firmware runs that a control line holds off; undefined where none does.
 *
 * @param figures of what has them @param control its lines as the file wires them: role → pin
 */
export function heldOff(
  figures: Figures,
  control: unknown,
  chips: ReadonlyMap<string, Chip>,
  controllers: readonly string[],
): BootState | undefined {
  const off = outputsOff(figures);
  const named: unknown = off === undefined || !isMapping(control) ? undefined : control[off.line];
  if (off === undefined || typeof named !== 'string') return undefined;
  const bound = pinNamed(chips, controllers, named, []);
  if ('problem' in bound || restsAt(bound.found.chip, bound.found.pin) !== off.at) return undefined;
  const leaves = figures.within('outputs-off').word('leaves');
  return isState(leaves) ? leaves : 'floating';
}
