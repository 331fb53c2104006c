/** LEDs: a forward voltage belongs to a colour, since each photon takes its energy from one electron. */
import { formatValue } from '../quantity/print.js';
import type { Path, Problem } from '../source/place.js';
import type { Fields } from './profile.js';
import { fault, highest, lowest, middle, pointsOf, textOf } from './stated.js';

/** Volts that give an electron the energy of a photon of one nanometre: h·c/e, CODATA 2018, exact since then. */
const VOLT_NANOMETRES = 1239.842;

/** Wavelengths that a colour is sold by, nanometres (common practice); white is blue behind a phosphor. */
const WAVELENGTHS: Readonly<Record<string, readonly [shortest: number, longest: number]>> = {
  infrared: [780, 1000],
  red: [605, 700],
  orange: [590, 630],
  amber: [580, 610],
  yellow: [560, 600],
  green: [495, 580],
  cyan: [480, 515],
  blue: [440, 490],
  white: [440, 475],
  violet: [390, 440],
  ultraviolet: [315, 410],
};

/**
 * At a milliampere or two heat gives the electrons a part of the energy: what share of the photon's the volts still make up, of
 * the build that needs least and of the typical one. And the volts that contacts and the chip's resistance take at rated
 * current, of the typical build and of the one that needs most (common practice, trade charts of all colours).
 */
const SHARE = { min: 0.7, typ: 0.8 };
const LOST = { typ: 1.0, max: 1.7 };

/** Whether an LED's points of forward voltage are those of its colour. @param path where it stands in the profile */
export function senseLed(led: Fields, path: Path): readonly Problem[] {
  const words = textOf(led['colour'] ?? '').toLowerCase();
  const colour = Object.keys(WAVELENGTHS).find((each) => words.split(/[^a-z]+/).includes(each));
  if (colour === undefined) return [];
  const [shortest, longest] = WAVELENGTHS[colour]!;
  const inSeries = typeof led['in-series'] === 'number' ? led['in-series'] : 1;
  const [red, blue] = [VOLT_NANOMETRES / longest, VOLT_NANOMETRES / shortest];
  return pointsOf(led, 'forward-voltage', 'voltage', 'current').flatMap(({ value, path: at }) => {
    const [low, high] = [lowest(value)! / inSeries, highest(value)! / inSeries];
    const typ = middle(value)! / inSeries;
    const held = low >= SHARE.min * red && typ >= SHARE.typ * red && typ <= blue + LOST.typ && high <= blue + LOST.max;
    if (held) return [];
    const volts = (v: number): string => formatValue(v, 'voltage', 2);
    return [
      fault(
        [...path, ...at],
        `${value.stated} is no forward voltage of ${colour} light`,
        `typically ${volts(SHARE.typ * red)} to ${volts(blue + LOST.typ)}, and at most ${volts(blue + LOST.max)}`,
      ),
    ];
  });
}
