/** A row of stages from the pin outwards: which of them conduct in which state, and each lowered behind the one before it. */
import type { Figures } from '../figures.js';
import type { LoadInput } from '../lowering.js';
import type { Drive, Level, State } from './drive.js';
import { pinDrive, stageDrive } from './drive.js';
import type { Driver, DriverSetting } from './driver.js';
import type { Stage, StageSetting, StageType } from './stage.js';
import { settled } from './stage.js';

/** A stage before it is lowered. */
export interface Part {
  readonly type: StageType;
  readonly figures: Figures;
  readonly path: readonly (string | number)[];
}

/** Whether the stages conduct with what drives the first at a level, each one's output driving the next. @param lit the level that lights a coupler there */
export function conduction(stages: readonly Part[], first: Level, lit: 'high' | 'low'): boolean[] {
  let level = first;
  return stages.map(({ type, figures }, k) => {
    // Behind another stage a coupler's LED hangs towards the level that the stage before it gives.
    const conducts = type.conducts(settled(level, figures), figures, k === 0 ? lit : undefined);
    level = type.gives(conducts, figures);
    return conducts;
  });
}

/** Lowers the stages from the pin outwards. @param said the level that the file says energises */
export function inRow(
  input: LoadInput,
  setting: DriverSetting,
  stages: readonly Part[],
  said: 'high' | 'low' | undefined,
): Driver | undefined {
  const { circuit, supply, expected } = setting;
  const states = (lit: 'high' | 'low') => ({
    high: conduction(stages, 'high', lit),
    low: conduction(stages, 'low', lit),
  });
  // A coupler's LED may hang either way on its pin: so that the level that the file says energises.
  const wired = states(said ?? 'high');
  const at = said !== undefined && !wired[said].at(-1)! ? states(said === 'high' ? 'low' : 'high') : wired;
  const [high, low] = [at.high.at(-1)!, at.low.at(-1)!];
  // A row that conducts at both levels, or at neither, has none that energises: its accounts tell.
  const real = high === low ? undefined : high ? ('high' as const) : ('low' as const);
  const active = real ?? said ?? 'high';
  const pin = input.bench.outputPin(setting.pin.name, setting.pin.path, circuit, active);
  if (pin === undefined) return undefined;
  const conducts = (k: number, state: State): boolean =>
    at[(state === 'on') === (active === 'high') ? 'high' : 'low'][k]!;
  const lowered = behind(stages, pinDrive(pin, active), conducts, { input, circuit, supply, expected });
  if (lowered === undefined) return undefined;
  const { members, shortfall, lossSteps, leak, leakSteps, darlington } = lowered.at(-1)!;
  const { type, figures } = stages.at(-1)!;
  return {
    by: 'driver',
    pin: pin.account,
    side: type.gives(true, figures) === 'high' ? 'high' : 'low',
    members,
    networks: lowered.flatMap((s) => s.networks),
    accounts: lowered.flatMap((s) => s.accounts),
    ends: lowered.flatMap((s) => s.ends ?? []),
    clamps: false,
    unlimited: lowered.flatMap((s) => s.unlimited),
    ...(said !== undefined && real !== undefined && said !== real && { inverted: { says: said } }),
    ...(darlington && { darlington }),
    ...(shortfall && { shortfall }),
    ...(lossSteps && { lossSteps }),
    leak,
    leakSteps,
  };
}

/** Stages behind a drive, each lowered behind the one before it; undefined with a problem. @param conducts whether stage `k` does in a state */
export function behind(
  stages: readonly Part[],
  first: Drive,
  conducts: (k: number, state: State) => boolean,
  { input, circuit, supply, expected, feed }: Pick<StageSetting, 'input' | 'circuit' | 'supply' | 'expected' | 'feed'>,
): readonly Stage[] | undefined {
  const ids = stages.map((_, k) => (k === stages.length - 1 ? `${circuit}.driver` : `${circuit}.stage-${k + 1}`));
  let drive = first;
  const lowered: Stage[] = [];
  for (const [k, { type, figures, path }] of stages.entries()) {
    const last = k === stages.length - 1;
    const id = ids[k]!;
    const stage = type.lower({
      input,
      figures,
      circuit,
      id,
      prefix: last ? circuit : id,
      title: last ? `driver of ${circuit}` : `stage ${k + 1} of the driver of ${circuit}`,
      path,
      drive,
      supply,
      ...(feed !== undefined && { feed }),
      expected: last ? expected : Math.min(expected / 10, USUAL_INPUT),
      conducts: !last && conducts(k, 'off') && !conducts(k, 'on') ? 'off' : 'on',
      loads: ids.slice(k + 1),
    });
    if (stage === undefined) return undefined;
    lowered.push(stage);
    const { rail = supply, members, most, steps, leak, leakSteps } = stage;
    drive = stageDrive(
      id,
      { level: (state) => type.gives(conducts(k, state), figures), rail, members },
      {
        pin: drive.pin,
        ...(most && { most }),
        ...((drive.ages ?? stage.ages) && { ages: true as const }),
        steps,
        leak,
        leakSteps,
      },
    );
  }
  return lowered;
}

/** Amperes that the input of a stage behind another is expected to take, for reading curves off at. */
const USUAL_INPUT = 0.01;
