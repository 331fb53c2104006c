/** What switches the coils of a board: a transistor, a bridge, or a row of stages such as a gate driver with its MOSFET. */
import { bridgeStage } from '../drivers/bridge-stage.js';
import { STAGES } from '../drivers/driver.js';
import { gateDriver } from '../drivers/gate-driver.js';
import type { Part } from '../drivers/row.js';
import type { StageType } from '../drivers/stage.js';
import type { Figures } from '../figures.js';
import type { LoadInput } from '../lowering.js';
import type { Coupling } from './board.js';

const OUTPUTS: Readonly<Record<string, StageType>> = { ...STAGES, 'h-bridge': bridgeStage };

/** An NPN unless the file says otherwise; none where inputs drive coils themselves, or nobody knows. */
export function outputOf(input: LoadInput, coupling: Coupling): readonly Part[] | undefined | 'unknown' {
  if (coupling !== 'opto' && coupling !== 'transistor') return undefined;
  const whole = input.figures.within('output');
  const stages = whole.rows('stages');
  const row = (stages.length > 0 ? stages : [whole]).map((figures, k) => partOf(input, figures, stages.length, k));
  const last = row.at(-1);
  if (last?.type === gateDriver) {
    last.figures.problem(
      stages.length > 0 ? 'stages' : 'type',
      `a gate driver moves the gate of a MOSFET and switches no coil, and the output of \`${input.id}\` ends with one`,
      '`output: { stages: [{ type: gate-driver, threshold: 0.8 to 2.4 V }, { part: nmos-ao3400a }] }`, or the MOSFET alone',
    );
    return 'unknown';
  }
  return row.some((part) => part === undefined) ? 'unknown' : (row as Part[]);
}

/** One stage of it. @param many stages in the row, none where the output is one part */
function partOf(input: LoadInput, figures: Figures, many: number, nth: number): Part | undefined {
  const all = input.bench.behind(figures, 'driver');
  const name = all.word('type') ?? 'npn';
  const type = Object.hasOwn(OUTPUTS, name) ? OUTPUTS[name] : undefined;
  if (type === bridgeStage && nth < many - 1) {
    figures.problem('type', 'a bridge switches the coil and drives no stage behind it', 'the bridge as the last stage');
    return undefined;
  }
  if (type !== undefined) return { type, figures: all, path: input.path };
  all.problem(
    'type',
    `an output of type \`${name}\` switches no coil of a relay board`,
    Object.keys(OUTPUTS)
      .map((each) => `\`${each}\``)
      .join(', '),
  );
  return undefined;
}
