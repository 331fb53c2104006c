/** The figures of a wire: its resistance, how it moves with the temperature, and what it may carry. */
import { ampacity } from '../circuit/ampacity.js';
import { awgArea, COPPER_RESISTIVITY, wireOhms } from '../circuit/wire.js';
import { Figures } from '../loads/figures.js';
import { rating } from '../loads/limits.js';
import type { LimitPlan } from '../loads/plan.js';
import type { Interval } from '../quantity/interval.js';
import { exactly } from '../quantity/interval.js';
import { formatValue } from '../quantity/print.js';
import type { Path } from '../source/place.js';
import type { Link } from './project.js';
import type { Gathered } from './remarks.js';

type Raw = Readonly<Record<string, unknown>>;

export type WireFigures = Pick<Link, 'ohms' | 'contact' | 'returns' | 'copper' | 'limits' | 'missing'>;

/** Figures of an entry of `wires`; undefined with a problem when it does not say how much resistance there is. */
export function wireFigures(
  raw: Raw,
  id: string,
  path: Path,
  ground: boolean,
  remarks: Gathered,
): WireFigures | undefined {
  const figures = new Figures(id, path, [{ data: raw, path }], remarks);
  const conductors = ground || figures.count('conductors') === 1 ? 1 : 2;
  const contact = figures.interval('contact-resistance', 'resistance');
  const stated = figures.interval('resistance', 'resistance');
  const length = figures.interval('length', 'length');
  const area = crossSection(figures);
  const incomplete = (says: string, expected: string): undefined => {
    if (remarks.problems.every((p) => !path.every((step, k) => p.path[k] === step)))
      remarks.problem({ path, on: 'key', says, expected });
    return undefined;
  };
  if (stated === undefined && length !== undefined && area === undefined)
    return incomplete(`nothing says how thick the wire \`${id}\` is`, '`gauge: AWG 24`, or `gauge: 0.25 mm²`');
  if (stated === undefined && length === undefined && area !== undefined)
    return incomplete(`nothing says how long the wire \`${id}\` is`, '`length: 2 m`, one way');
  if (stated === undefined && length === undefined && contact === undefined)
    return incomplete(
      `nothing says what resistance the wire \`${id}\` has`,
      '`length` and `gauge`, or `resistance`, or the `contact-resistance` of a plug',
    );
  if (area && area.min <= 0) {
    figures.problem('gauge', 'a wire has to be thicker than nothing', '`gauge: AWG 24`, or `gauge: 0.25 mm²`');
    return undefined;
  }
  const ohms = stated ?? (length && area ? wholeOhms(length, area, conductors) : exactly(0));
  if (stated === undefined && length && area)
    figures.assume('taken as plain copper of just that thickness: a stranded wire may have up to a tenth more ohms');
  if (stated) figures.assume('its resistance is taken to hold at 20 °C and to follow the temperature as copper does');
  // Copper of that length and resistance is no thinner than this.
  const least =
    area?.min ?? (stated && length && stated.max > 0 ? (COPPER_RESISTIVITY * conductors * length.min) / stated.max : 0);
  const limits = [
    rating(figures, 'rating', 'current', { grade: 'operating' }) ?? [],
    least > 0 ? ampacityLimit(least, figures.flag('bundled')) : [],
  ].flat();
  return {
    ohms,
    ...(contact && { contact }),
    ...(length && area && stated === undefined && { copper: { length, area, conductors } }),
    // A ground wire is all return; of a pair, half of it is.
    returns: ground ? 1 : conductors === 2 ? 0.5 : 0,
    limits,
    ...(limits.length === 0 && {
      missing: {
        figure: 'gauge',
        asks: `how thick is the wire ${id} (its \`gauge\`), or what may its plugs carry (its \`rating\`)?`,
      },
    }),
  };
}

/** Cross-section in m², from a gauge number or written as one. */
function crossSection(figures: Figures): Interval | undefined {
  const text = figures.text('gauge');
  if (text === undefined) return undefined;
  if (/mm/i.test(text)) return figures.interval('gauge', 'area');
  const gauge = figures.interval('gauge', 'gauge');
  // The higher the number, the thinner the wire.
  return gauge && { min: awgArea(gauge.max), typ: awgArea(gauge.typ), max: awgArea(gauge.min) };
}

const wholeOhms = (length: Interval, area: Interval, conductors: number): Interval => ({
  min: conductors * wireOhms(length.min, area.max),
  typ: conductors * wireOhms(length.typ, area.typ),
  max: conductors * wireOhms(length.max, area.min),
});

function ampacityLimit(area: number, bundled: boolean): LimitPlan {
  const amps = ampacity(area, bundled);
  return {
    value: amps,
    stated: formatValue(amps, 'current'),
    grade: 'practice',
    margin: 'none',
    condition: bundled
      ? 'copper of that thickness among other wires'
      : 'copper of that thickness, one wire in free air',
    origin: bundled
      ? { document: 'ARRL Handbook, copper wire table', where: 'wires in bundles, after MIL-W-5088', basis: 'practice' }
      : { document: 'Handbook of Electronic Tables and Formulas', where: 'chassis wiring', basis: 'practice' },
  };
}
