/** LEDs in strings and side by side, as one junction with a spread, and what of it one of them may have to carry. */
import type { Junction } from '../circuit/junction.js';
import { junctionAt, junctionVoltage } from '../circuit/junction.js';
import { besideOthers, junctionCurrent } from '../circuit/side-by-side.js';
import type { Reading } from './account-plan.js';
import type { JunctionSpread } from './branch-plan.js';

const each = ({ min, typ, max }: JunctionSpread, change: (j: Junction) => Junction): JunctionSpread => ({
  min: change(min),
  typ: change(typ),
  max: change(max),
});

/** So many in a row: at one current their voltages add. */
export const inARow = (spread: JunctionSpread, count: number): JunctionSpread =>
  count === 1
    ? spread
    : each(spread, (j) => ({
        ...j,
        slope: count * j.slope,
        series: count * j.series,
        perKelvin: count * j.perKelvin,
      }));

/** So many side by side, all alike: at one voltage their currents add. */
export const sideBySide = (spread: JunctionSpread, count: number): JunctionSpread =>
  count === 1
    ? spread
    : each(spread, (j) => ({
        ...j,
        logSaturation: j.logSaturation + Math.log(count),
        series: j.series / count,
        referenceCurrent: count * j.referenceCurrent,
      }));

/**
 * What one of several side by side carries: in a build that draws much the one of least forward voltage beside others of the
 * highest, in one that draws little the other way round; of a typical build all are alike.
 */
export function worstShare(s: Reading, part: string, string: JunctionSpread, beside: number) {
  const branch = s.branch(part);
  const own = s.current(part);
  if (branch === undefined || own <= 0) return { amps: 0, volts: 0, total: 0, other: 0 };
  const rest = branch.members.filter(({ member }) => member.part !== part);
  const ohms = rest.reduce((sum, m) => sum + (m.ohms ?? 0), 0);
  const drops = rest.reduce((sum, m) => sum + (m.ohms === undefined ? m.volts : 0), 0);
  const [low, typ, high] = [string.min, string.typ, string.max].map((j) => junctionAt(j, s.ambient)) as [
    Junction,
    Junction,
    Junction,
  ];
  const middle = (junctionVoltage(low, own / beside) + junctionVoltage(high, own / beside)) / 2;
  const [one, others] = s.typical ? [typ, typ] : s.across(part) <= middle ? [low, high] : [high, low];
  const taken = (whole: number) => besideOthers(whole - drops, ohms, one, others, beside - 1);
  const found = taken(
    s.voltsAt(
      part,
      answered((amps) => taken(s.voltsAt(part, amps)).total, own),
    ),
  );
  return { ...found, other: junctionCurrent(others, found.volts) };
}

/** Share of a current to which it is found. */
const NEAR = 1e-10;

/**
 * The amperes that a group takes of what it leaves itself: the more it takes, the less its pin has left for it, where
 * others hang on that, too. By false position, the stuck end's weight halved.
 *
 * @param taken amperes it takes at what is left when it takes so many; falling @param own a first guess
 */
function answered(taken: (amps: number) => number, own: number): number {
  const at = taken(own);
  if (Math.abs(at - own) <= NEAR * own) return own;
  let [low, high] = at > own ? [own, at] : [at, own];
  let [over, under] = [taken(low) - low, taken(high) - high];
  for (let k = 0; k < 60 && high - low > NEAR * high && over > under; k++) {
    const amps = (low * under - high * over) / (under - over);
    const more = taken(amps) - amps;
    if (more === 0) return amps;
    if (more > 0) [low, over, under] = [amps, more, under / 2];
    else [high, under, over] = [amps, more, over / 2];
  }
  return (low + high) / 2;
}
