/** What a supply says of itself as a battery: its charge, how long it is wanted to last, when it counts as empty. */
import type { Figures } from '../loads/figures.js';
import type { LimitPlan } from '../loads/account-plan.js';
import type { Interval } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import type { BatteryPlan } from './tree-plan.js';

/** Seconds in which what is usual is lost: thirty days. */
const MONTH = 30 * 86400;
/** Shares of their charge that cells lose in that time by themselves at room temperature. Common practice, no source. */
const USUAL_LOSS: { readonly [chemistry: string]: Interval } = {
  alkaline: { min: 0.001, typ: 0.0025, max: 0.005 },
  'zinc-carbon': { min: 0.005, typ: 0.01, max: 0.02 },
  lithium: { min: 0.0005, typ: 0.001, max: 0.002 },
  'lithium-ion': { min: 0.01, typ: 0.02, max: 0.05 },
  'nickel-metal-hydride': { min: 0.01, typ: 0.15, max: 0.3 },
  'lead-acid': { min: 0.02, typ: 0.04, max: 0.06 },
};

/** What a battery loses by itself; nothing where neither figure nor chemistry tells. */
function lossOf(figures: Figures, chemistry: string | undefined): BatteryPlan['loses'] {
  const stated = figures.curve('self-discharge', 'ratio', 'time')?.points.at(-1);
  const usual = chemistry === undefined ? undefined : USUAL_LOSS[chemistry];
  if (stated && stated.at > 0) return { share: stated.value, over: stated.at };
  if (figures.says('self-discharge'))
    figures.problem(
      'self-discharge',
      'it needs the time that it takes',
      '`self-discharge: { value: 5 %, at: 30 days }`',
    );
  if (usual === undefined) {
    figures.assume('loses nothing by itself, since nobody states its `self-discharge`');
    return undefined;
  }
  figures.assume(
    `loses ${percent(usual.min)} to ${percent(usual.max)} % of its charge in 30 days by itself, as batteries of its kind do`,
  );
  return { share: usual, over: MONTH };
}

const percent = (share: number): number => Math.round(share * 1e4) / 100;
/** @param id the supply's name @param shared the file says how its time is shared, so that what a battery gives has a mean */
export function batteryOf(figures: Figures, id: string, shared: boolean): BatteryPlan | undefined {
  const capacity = figures.curve('capacity', 'charge', 'current');
  const wanted = figures.figure('wanted-life', 'time');
  const end = figures.figure('end-voltage', 'voltage');
  const chemistry = figures.word('chemistry');
  if (!capacity && !wanted && !end && chemistry === undefined) return undefined;
  const empty = end && closed(end.quantity);
  const life = wanted && closed(wanted.quantity);
  const works = { grade: 'operating' as const, isFunction: true as const, margin: 'none' as const };
  const wants: LimitPlan | undefined = wanted &&
    life && {
      ...works,
      value: (s) => (s.typical ? life.typ : life.max),
      stated: wanted.quantity.stated,
      origin: wanted.origin,
    };
  const empties: LimitPlan | undefined = end &&
    empty && {
      ...works,
      margin: 'window',
      value: (s) => (s.typical ? empty.typ : empty.max),
      stated: end.quantity.stated,
      origin: end.origin,
      condition: 'the voltage at which it counts as empty',
    };
  const resistance = figures.figure('resistance', 'resistance');
  if (end && !resistance) figures.assume('loses no voltage inside, since nobody states its resistance');
  const isTold = wants !== undefined || (capacity !== undefined && shared);
  const loses = isTold && capacity ? lossOf(figures, chemistry) : undefined;
  return {
    ...(loses && { loses }),
    ...(capacity && { capacity: capacity.points, origin: capacity.origin }),
    ...(wants && { wanted: wants }),
    ...(isTold && { isTold }),
    ...(wants && !capacity && { asks: `what charge does the battery ${id} hold (its \`capacity\`)?` }),
    ...(empties && resistance && { empty: empties }),
    ...(chemistry !== undefined && { chemistry }),
  };
}
