/** DC motors: they run on one current and start, or stall, on another. */
import { closed } from '../quantity/quantity.js';
import { USUAL_EXCESS } from './constant-current.js';
import type { LoadInput, LoadType, Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import { lowerTwoTerminal } from './two-terminal.js';

/** A stall without a stated time lasts this long, seconds (rule 8 of the format). */
const USUAL_STALL = 0.5;
/** A stall longer than this is sustained, seconds (rule 17). */
const SUSTAINED = 1;

function lower(input: LoadInput): Lowered {
  const { figures } = input;
  const run = figures.figure('run', 'current');
  const stall = figures.figure('stall', 'current');
  if (run === undefined) {
    figures.problem(
      'run',
      `\`${input.id}\` has no running current to reckon with`,
      '`run: 180 mA` and `stall: 800 mA`',
    );
    return NOTHING;
  }
  const steady = closed(run.quantity, { max: (typ) => USUAL_EXCESS * typ, min: () => 0 });
  const peak = stall && closed(stall.quantity).max;
  const lasts = figures.interval('stall-time', 'time')?.max;
  if (stall && lasts === undefined) figures.assume(`a stall lasts ${USUAL_STALL} s, since nobody states it`);
  const amps =
    peak !== undefined && (lasts ?? USUAL_STALL) > SUSTAINED ? { ...steady, max: Math.max(steady.max, peak) } : steady;
  return lowerTwoTerminal(input, {
    members: (circuit) => [
      { kind: 'current', part: `${circuit}.motor`, amps, ...(peak !== undefined && { peak }), origin: run.origin },
    ],
    inductive: true,
    part: (circuit) => `${circuit}.motor`,
    accounts: (circuit, path) =>
      stall
        ? []
        : [
            {
              id: `${circuit}.motor`,
              kind: 'input',
              title: `motor ${circuit}`,
              quantity: 'current',
              direction: 'at-most',
              circuits: [circuit],
              path,
              recipes: ['draw-most', 'draw-least'],
              read: () => undefined,
              limits: [],
              missing: {
                figure: 'stall',
                asks: `what does the motor ${circuit} draw when it starts or is blocked (its \`stall\` current)?`,
              },
              steps: () => [],
            },
          ],
    limitsItself: true,
  });
}

export const dcMotor: LoadType = { type: 'dc-motor', lower };
