/** What a chip's pins do from reset until firmware runs: as the file says, or the board's profile, or the chip's. */
import type { PinAtBoot } from '../loads/lowering.js';
import type { BootState } from '../loads/circuit-plan.js';
import { BOOT_STATES } from '../loads/circuit-plan.js';
import type { Interval } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import type { ChipPin, ChipSetting } from './chip-setting.js';

/** A pull inside a chip of which nobody states the strength, ohms. Common practice, no source. */
const USUAL_PULL: Interval = { min: 20e3, typ: 45e3, max: 100e3 };

export const isState = (word: string | undefined): word is BootState => BOOT_STATES.some((state) => state === word);

/** What file or profiles say of a pin; undefined where they are silent. */
export function statedAtBoot({ figures, heldOff }: ChipSetting, { label, chipPin }: ChipPin): BootState | undefined {
  const names = [label, chipPin];
  const pins = figures.within('pins');
  const table = figures.within('at-boot');
  return (
    names.map((name) => pins.within(name).word('at-boot')).find(isState) ??
    heldOff?.() ??
    [...names, 'otherwise'].map((name) => table.word(name)).find(isState)
  );
}

/** @param clamped a junction leads from the pin to its supply */
export function pinAtBoot(setting: ChipSetting, pin: ChipPin, clamped: boolean): PinAtBoot {
  const { figures, owner, remarks, path } = setting;
  const names = [pin.label, pin.chipPin];
  const told = statedAtBoot(setting, pin);
  if (told === undefined)
    remarks.assume(owner, 'its pins float until firmware runs, since nobody states what they do', path);
  const state = told ?? 'floating';
  if (state !== 'pulled-up' && state !== 'pulled-down') return { state, clamped };
  const key = state === 'pulled-up' ? 'pull-up' : 'pull-down';
  const inside = names
    .map((name) => figures.within('pins').within(name).figure('pull-resistance', 'resistance'))
    .find((f) => f);
  const figure = inside ?? figures.figure(key, 'resistance');
  if (figure === undefined) {
    remarks.assume(owner, 'the pulls inside it are 20 to 100 kΩ, since nobody states them', path);
    return { state, clamped, pull: USUAL_PULL };
  }
  const pull = closed(figure.quantity, { min: (x) => x / 2, max: (x) => 2 * x });
  return { state, clamped, pull, origin: figure.origin };
}
