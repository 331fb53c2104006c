/** Filament lamps: hot they follow the rerating law, cold they take many times as much for a moment. */
import { designCurrent } from '../circuit/filament.js';
import { rmsOverSecond } from '../circuit/pulse.js';
import type { Interval } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import type { Figures } from './figures.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { lowerTwoTerminal } from './two-terminal.js';

/**
 * Cold filaments take 10 to 15 times their current, for about a third of a second by the longest account ("Cautions for use
 * of solid-state relays", Panasonic, ASCTB400E, 2020, p. 16); small ones are hot in 50 ms (common practice, no source).
 */
export const USUAL_COLD = { ratio: 15, time: 0.33 };

function lower(input: LoadInput): Lowered {
  const { figures, id } = input;
  const volts = figures.interval('voltage', 'voltage')?.typ;
  const power = figures.figure('power', 'power');
  const watts = power && closed(power.quantity);
  if (volts === undefined || volts <= 0 || watts === undefined || watts.min <= 0) {
    figures.problem(
      watts === undefined ? 'power' : 'voltage',
      `\`${id}\` needs its rated voltage and power, both above zero`,
      '`voltage: 12 V, power: 5 W`',
    );
    return NOTHING;
  }
  const amps: Interval = designCurrent(watts, volts);
  const cold = coldOf(figures);
  return lowerTwoTerminal(input, {
    members: (circuit) => [
      { kind: 'filament', part: `${circuit}.lamp`, volts, amps, ...(cold && { cold }), origin: power!.origin },
    ],
    inductive: false,
    part: (circuit) => `${circuit}.lamp`,
    accounts: () => [],
    limitsItself: true,
  });
}

/** What a cold filament takes, as so many times its hot current: at once, and over the first second. */
function coldOf(
  figures: Figures,
): { readonly peak: number; readonly second: number; readonly lasts: number } | undefined {
  const stated = figures.interval('inrush-ratio', 'ratio')?.max;
  const lasts = figures.interval('inrush-time', 'time')?.max;
  if (stated === undefined)
    figures.assume(
      `a cold filament takes up to ${USUAL_COLD.ratio} times its current, since nobody states its inrush-ratio`,
    );
  if (lasts === undefined)
    figures.assume(`it is hot after ${USUAL_COLD.time} s at the latest, since nobody states its inrush-time`);
  const peak = Math.max(stated ?? USUAL_COLD.ratio, 1);
  const time = lasts ?? USUAL_COLD.time;
  return { peak, second: rmsOverSecond(1, peak, time), lasts: time };
}

export const lamp: LoadType = { type: 'lamp', lower };
