/** Strips of pixels with a driver in each: dark ones draw something too, and the firmware decides how bright they get. */
import type { Interval } from '../quantity/interval.js';
import { exactly } from '../quantity/interval.js';
import { formatValue } from '../quantity/print.js';
import { drawOf } from './draw.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { lowerTwoTerminal } from './two-terminal.js';

/** What the driver of a dark pixel draws when nobody says so, amperes (common practice, no source). */
const USUAL_IDLE: Interval = { min: 0, typ: 0.0005, max: 0.001 };
const ENDS = ['min', 'typ', 'max'] as const;

function lower(input: LoadInput): Lowered {
  const { figures, entry, id } = input;
  const count = figures.count('count') ?? 1;
  const full = drawOf(figures, 'full-each');
  if (full === undefined) {
    figures.problem(
      'full-each',
      `nothing says what one pixel of \`${id}\` draws at full white`,
      '`full-each: 50 mA`, or a `part:` from the catalogue',
    );
    return NOTHING;
  }
  const stated = drawOf(figures, 'idle-each');
  if (stated === undefined) figures.assume('a dark pixel draws up to 1 mA, since nobody states it');
  const dark = scaled(stated ?? USUAL_IDLE, () => count);
  const share = figures.interval('brightness', 'ratio') ?? exactly(1);
  if (share.min < 0 || share.max > 1) {
    figures.problem('brightness', 'a brightness lies between 0 and 100 %', '`30 %`');
    return NOTHING;
  }
  const whole = scaled(full, () => count);
  // What a pixel draws dark it draws lit, too; its colours come on top.
  const lit = scaled(
    whole,
    (end) => share[end],
    scaled(dark, (end) => 1 - share[end]),
  );
  if (share.max < 1)
    figures.assume(
      `the firmware keeps it at ${figures.text('brightness')}; at full white it would draw up to ${formatValue(whole.max, 'current')}`,
    );
  const { count: _, ...connected } = entry;
  return lowerTwoTerminal(
    { ...input, entry: connected },
    {
      members: (circuit) => [{ kind: 'current', part: `${circuit}.pixels`, amps: lit }],
      idle: (circuit) => [{ kind: 'current', part: `${circuit}.pixels`, amps: dark }],
      listens: true,
      inductive: false,
      part: (circuit) => `${circuit}.pixels`,
      accounts: () => [],
      limitsItself: true,
    },
  );
}

/** An interval times a factor of each of its ends, plus another one. */
function scaled(of: Interval, by: (end: keyof Interval) => number, plus: Interval = exactly(0)): Interval {
  const [min, typ, max] = ENDS.map((end) => of[end] * by(end) + plus[end]) as [number, number, number];
  return { min, typ, max };
}

export const pixels: LoadType = { type: 'pixels', lower };
