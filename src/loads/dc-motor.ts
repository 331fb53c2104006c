/** DC motors and servos: they run on one current and start, or stall, on another. */
import { formatValue } from '../quantity/print.js';
import type { Taken } from './draw.js';
import { drawOf, lastsOf, unknownStart, withPeak } from './draw.js';
import type { Figures } from './figures.js';
import { feedOf } from './load-pins.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import type { Member } from './branch-plan.js';
import { startingVoltage } from './terminals.js';
import { lowerTwoTerminal } from './two-terminal.js';

/** What a motor takes when it runs and when it stalls; undefined with a problem. */
function runningOf(input: LoadInput) {
  const { figures, id } = input;
  const run = drawOf(figures, 'run');
  if (run === undefined) {
    figures.problem('run', `\`${id}\` has no running current to reckon with`, '`run: 180 mA` and `stall: 800 mA`');
    return undefined;
  }
  const stall = stallOf(input);
  return withPeak(run, stall, stall === undefined ? undefined : lastsOf(figures, 'stall-time', 'a stall'));
}

/**
 * Highest stall current, amperes. A blocked motor is its winding's resistance and nothing else, so that on more than the
 * voltage its current is stated at it draws as much more.
 */
function stallOf(input: LoadInput): number | undefined {
  const { figures, bench, id } = input;
  const stated = figures.interval('stall', 'current')?.max;
  const rated = figures.interval('voltage', 'voltage')?.typ;
  const feed = feedOf(input);
  const supply = feed && bench.node(feed.name, feed.path);
  if (stated === undefined || rated === undefined || rated <= 0 || supply === undefined) return stated;
  const highest = bench.window(supply).max;
  if (highest <= rated) return stated;
  figures.assume(
    `${id} stalls on ${formatValue(highest, 'voltage')} with ${formatValue((stated * highest) / rated, 'current')}: its ${formatValue(stated, 'current')} are stated at ${formatValue(rated, 'voltage')}`,
  );
  return (stated * highest) / rated;
}

const winding = (taken: Taken, figures: Figures) => {
  const { origin } = figures.figure('run', 'current')!;
  return (circuit: string): Member => ({ kind: 'current', part: `${circuit}.motor`, ...taken, starts: true, origin });
};

function lower(input: LoadInput): Lowered {
  const { figures } = input;
  const taken = runningOf(input);
  if (taken === undefined) return NOTHING;
  const member = winding(taken, figures);
  return lowerTwoTerminal(input, {
    members: (circuit) => [member(circuit)],
    inductive: true,
    part: (circuit) => `${circuit}.motor`,
    accounts: (circuit, path) => [
      ...(taken.peak === undefined ? [unknownStart(`${circuit}.motor`, circuit, path, 'motor')] : []),
      ...startingVoltage(figures, circuit, path, member(circuit)),
    ],
    limitsItself: true,
  });
}

/** A servo carries its own driver: the pin only tells it where to go, and it holds its place on its idle current. */
function lowerServo(input: LoadInput): Lowered {
  const { figures } = input;
  const taken = runningOf(input);
  if (taken === undefined) return NOTHING;
  const idle = drawOf(figures, 'idle');
  const member = winding(taken, figures);
  return lowerTwoTerminal(input, {
    members: (circuit) => [member(circuit)],
    ...(idle && { idle: (circuit: string) => [{ kind: 'current' as const, part: `${circuit}.motor`, amps: idle }] }),
    listens: true,
    inductive: false,
    part: (circuit) => `${circuit}.motor`,
    accounts: (circuit, path) => [
      ...(taken.peak === undefined ? [unknownStart(`${circuit}.motor`, circuit, path, 'servo')] : []),
      ...startingVoltage(figures, circuit, path, member(circuit)),
    ],
    limitsItself: true,
  });
}

export const dcMotor: LoadType = { type: 'dc-motor', lower };
export const servo: LoadType = { type: 'servo', lower: lowerServo };
