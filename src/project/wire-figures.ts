/** The figures of a wire: its resistance, how it moves with the temperature, and what it may carry. */
import { ampacity } from '../circuit/ampacity.js';
import { awgArea, COPPER_RESISTIVITY, wireOhms } from '../circuit/wire.js';
import type { Catalogue } from '../catalogue/catalogue.js';
import type { Profile, ProfileKind } from '../catalogue/profile.js';
import type { Figure } from '../loads/figures.js';
import { Figures } from '../loads/figures.js';
import { rating } from '../loads/limits.js';
import type { LimitPlan } from '../loads/account-plan.js';
import type { Interval } from '../quantity/interval.js';
import { exactly } from '../quantity/interval.js';
import { closed } from '../quantity/quantity.js';
import { formatValue } from '../quantity/print.js';
import type { Path } from '../source/place.js';
import { reportPart } from './bench.js';
import type { Link } from './tree-plan.js';
import type { Gathered } from './remarks.js';

type Raw = Readonly<Record<string, unknown>>;

export type WireFigures = Pick<Link, 'ohms' | 'contact' | 'returns' | 'copper' | 'limits' | 'missing'>;

/** Figures of an entry of `wires`; undefined with a problem when it does not say how much resistance there is. */
export function wireFigures(
  raw: Raw,
  id: string,
  path: Path,
  ground: boolean,
  catalogue: Catalogue,
  remarks: Gathered,
): WireFigures | undefined {
  const own = new Figures(id, path, [{ data: raw, path }], remarks);
  const named = (name: unknown, kind: ProfileKind, at: Path) => profileOf(name, kind, at, { catalogue, remarks });
  const figures = own.over(named(raw['part'], 'wire', [...path, 'part']));
  const conductors = ground || figures.count('conductors') === 1 ? 1 : 2;
  const connectors = (Array.isArray(raw['connectors']) ? raw['connectors'] : []).flatMap((name: unknown, k) => {
    const profile = named(name, 'connector', [...path, 'connectors', k]);
    return profile ? [{ profile, figures: new Figures(id, path, [], remarks).over(profile) }] : [];
  });
  const plugs = figures.interval('contact-resistance', 'resistance');
  const contact = sumOf([
    ...(plugs ? [plugs] : []),
    ...connectors.flatMap((c) => {
      const one = c.figures.figure('contact-resistance', 'resistance');
      // One contact in each conductor; what has at most so much may have next to nothing.
      return one ? [times(conductors, closed(one.quantity, { min: () => 0 }))] : [];
    }),
  ]);
  const stated = figures.interval('resistance', 'resistance');
  const length = figures.interval('length', 'length');
  const area = crossSection(figures);
  const metre =
    figures.nearest('resistance-per-metre', 'gauge') === 'resistance-per-metre'
      ? figures.figure('resistance-per-metre', 'resistance')
      : undefined;
  const incomplete = (says: string, expected: string): undefined => {
    if (remarks.problems.every((p) => !path.every((step, k) => p.path[k] === step)))
      remarks.problem({ path, on: 'key', says, expected });
    return undefined;
  };
  if (stated === undefined && length !== undefined && area === undefined && metre === undefined)
    return incomplete(
      `nothing says how thick the wire \`${id}\` is`,
      '`gauge: AWG 24`, `gauge: 0.25 mm²`, or a `part:` of the catalogue',
    );
  if (stated === undefined && length === undefined && (area !== undefined || metre !== undefined))
    return incomplete(`nothing says how long the wire \`${id}\` is`, '`length: 2 m`, one way');
  if (stated === undefined && length === undefined && contact === undefined)
    return incomplete(
      `nothing says what resistance the wire \`${id}\` has`,
      '`length` and `gauge`, or `resistance`, or the `contact-resistance` of a plug, or `connectors`',
    );
  if (area && area.min <= 0) {
    figures.problem('gauge', 'a wire has to be thicker than nothing', '`gauge: AWG 24`, or `gauge: 0.25 mm²`');
    return undefined;
  }
  const copper = stated === undefined && length ? copperOf(length, conductors, area, metre) : undefined;
  const ohms = stated ?? copper?.ohms ?? exactly(0);
  if (copper && 'area' in copper.from)
    figures.assume('taken as plain copper of just that thickness: a stranded wire may have up to a tenth more ohms');
  if (stated) figures.assume('its resistance is taken to hold at 20 °C and to follow the temperature as copper does');
  // Copper of that length and resistance is no thinner than this.
  const least = area?.min ?? (length && ohms.max > 0 ? (COPPER_RESISTIVITY * conductors * length.min) / ohms.max : 0);
  const limits = [
    rating(figures, 'rating', 'current', { grade: 'operating' }) ?? [],
    connectors.flatMap(({ profile, figures: each }) => {
      const limit = rating(each, 'rating', 'current', { grade: 'operating' });
      return limit ? { ...limit, condition: profile.title } : [];
    }),
    least > 0 ? ampacityLimit(least, figures.flag('bundled')) : [],
  ].flat();
  return {
    ohms,
    ...(contact && { contact }),
    ...(copper && { copper: copper.from }),
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

/** What a wire or connector of the catalogue is called in the file; undefined with a problem when there is none. */
function profileOf(
  name: unknown,
  kind: ProfileKind,
  at: Path,
  around: { readonly catalogue: Catalogue; readonly remarks: Gathered },
): Profile | undefined {
  if (typeof name !== 'string') return undefined;
  const profile = around.catalogue.profile(name);
  if (profile?.kind === kind) return profile;
  reportPart(around, name, at, kind);
  return undefined;
}

const times = (n: number, { min, typ, max }: Interval): Interval => ({ min: n * min, typ: n * typ, max: n * max });

/** Resistances in a row; undefined of none. */
function sumOf(some: readonly Interval[]): Interval | undefined {
  if (some.length === 0) return undefined;
  const sum = (end: 'min' | 'typ' | 'max'): number => some.reduce((total, each) => total + each[end], 0);
  return { min: sum('min'), typ: sum('typ'), max: sum('max') };
}

/** What a length of wire comes to, by what a metre of it has where that is stated, else by how thick it is. */
function copperOf(
  length: Interval,
  conductors: number,
  area: Interval | undefined,
  metre: Figure | undefined,
): { readonly ohms: Interval; readonly from: NonNullable<Link['copper']> } | undefined {
  if (metre) {
    const perMetre = closed(metre.quantity);
    const ohms = {
      min: conductors * length.min * perMetre.min,
      typ: conductors * length.typ * perMetre.typ,
      max: conductors * length.max * perMetre.max,
    };
    return { ohms, from: { length, conductors, perMetre, origin: metre.origin } };
  }
  return area && { ohms: wholeOhms(length, area, conductors), from: { length, conductors, area } };
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
