/** What a contact is held to: its rating for the kind of load that hangs on it, or the share of the resistive one that practice allows. */
import { SHARE_OF_RESISTIVE, betweenPoints } from '../../circuit/contact.js';
import { formatValue } from '../../quantity/print.js';
import type { LimitPlan } from '../account-plan.js';
import type { Origin } from '../branch-plan.js';
import type { ContactLoad } from './contact-load.js';
import type { RatedFor, RatingRow } from './contact-rating.js';
import { rowsFor } from './contact-rating.js';
import { CATEGORIES } from './utilisation.js';

type Side = 'normally-open' | 'normally-closed';
type Missing = { readonly figure: string; readonly asks: string };

export interface Held {
  readonly limits: readonly LimitPlan[];
  readonly missing?: Missing;
}

const PRACTICE: Origin = { document: 'common practice, no source', basis: 'practice' };

/** A rating as it holds at a voltage: the row that covers it, and where only rows on either side do, how far it may reach. */
interface Covering {
  readonly row: RatingRow;
  /** The row below, with more current: the voltage lies between the two. */
  readonly below?: RatingRow;
  readonly reaches?: number;
}

/** The limits on the current of a contact. @param clamped a diode across a direct-current load lets its arc be that of a resistor */
export function currentLimits(
  load: ContactLoad,
  rows: readonly RatingRow[],
  side: Side,
  { about, clamped }: { readonly about: string; readonly clamped: boolean },
): Held {
  const { kind, amps } = load;
  const own = kind === 'resistive' ? undefined : covering(rows, kind, load, side);
  const resistive = covering(rows, 'resistive', load, side);
  const starting = startLimits(load, rows, side, own);
  if (own) return { limits: [ratedBy(own), ...starting] };
  if (resistive === undefined) return unknown(load, rows, side, about);
  if (kind === 'resistive') return { limits: [ratedBy(resistive), ...starting] };
  if (clamped && isClampable(load))
    return {
      limits: [
        {
          ...ratedBy(resistive),
          condition: 'with a diode across it an inductive load is switched off like a resistive one',
        },
        ...starting,
      ],
    };
  return {
    limits: [shareOf(resistive, kind), ratedBy(resistive), ...(amps === undefined ? [] : starting)],
  };
}

/** A diode can take its current over: only that of a coil on direct voltage, since a motor goes on turning. */
const isClampable = ({ kind, waveform }: ContactLoad): boolean => kind === 'inductive' && waveform === 'DC';

/**
 * Up to so many volts a contact breaks direct current as it breaks alternating current, so that a rating that says neither, or no
 * voltage at all, holds for loads up to there. Source: "Contact arc mitigation", R. Elliott, ESP, 2020: a gap of 0.4 mm breaks its
 * rated current at no more than 30 V DC.
 */
const EITHER = 30;

/** Whether a row is known to hold at so many volts. */
const reaches = ({ volts, waveform }: RatingRow, load: Pick<ContactLoad, 'volts' | 'waveform'>): boolean =>
  (volts === undefined || volts >= load.volts) &&
  (load.volts <= EITHER || (volts !== undefined && (waveform !== undefined || load.waveform === 'AC')));

/** The row that covers the load's voltage: of those that reach it the one with most current; undefined where none does. */
function covering(rows: readonly RatingRow[], of: RatedFor, load: ContactLoad, side: Side): Covering | undefined {
  const { volts, waveform } = load;
  const own = rowsFor(rows, of, side, waveform);
  const row = most(own.filter((r) => reaches(r, load)));
  if (row === undefined) return undefined;
  const below = own
    .filter((r) => r.waveform !== undefined && r.volts !== undefined && r.volts < volts && r.amps > row.amps)
    .sort((a, b) => b.volts! - a.volts!)[0];
  if (below === undefined || row.volts === undefined || row.volts === volts || waveform === 'AC') return { row };
  const point = (r: RatingRow) => ({ volts: r.volts!, amps: r.amps });
  return { row, below, reaches: betweenPoints(point(below), point(row), volts) };
}

/** The row with most current, and of those the one of lowest voltage: several hold for different lives. */
const most = (rows: readonly RatingRow[]): RatingRow | undefined =>
  [...rows].sort((a, b) => b.amps - a.amps || (a.volts ?? Infinity) - (b.volts ?? Infinity))[0];

const conditionOf = ({ row, below }: Covering): string | undefined =>
  below
    ? `between ${below.stated} and ${row.stated}`
    : row.category !== undefined && CATEGORIES[row.category] !== undefined
      ? `${row.category}, ${CATEGORIES[row.category]!.of}`
      : row.volts === undefined
        ? `no voltage is stated: taken for loads up to ${EITHER} V`
        : undefined;

/** A published rating. Between two points of a breaking curve the higher voltage is sure, and a straight line the most to hope for. */
function ratedBy(found: Covering): LimitPlan {
  const { row, reaches } = found;
  const condition = conditionOf(found);
  return {
    value: row.amps,
    stated: row.stated,
    grade: row.origin.basis === 'practice' ? 'practice' : 'operating',
    margin: 'current',
    origin: row.origin,
    ...(condition !== undefined && { condition }),
    ...(reaches !== undefined && { range: { min: row.amps, typ: (row.amps + reaches) / 2, max: reaches } }),
  };
}

function shareOf(found: Covering, kind: ContactLoad['kind']): LimitPlan {
  const share = SHARE_OF_RESISTIVE[kind];
  return {
    value: share * found.row.amps,
    stated: `${Math.round(share * 100)} % of ${found.row.stated}`,
    grade: 'practice',
    margin: 'current',
    origin: PRACTICE,
    condition: `no rating for a load of this kind (${kind}) is stated`,
  };
}

/** What it may close on: the inrush against what its maker lets it make, or else against its resistive rating. */
function startLimits(
  load: ContactLoad,
  rows: readonly RatingRow[],
  side: Side,
  own: Covering | undefined,
): LimitPlan[] {
  const { amps, peak } = load;
  if (peak === undefined || amps === undefined || amps.max <= 0 || peak <= amps.max) return [];
  const rated = closingLimit(load, rows, side, own?.row);
  if (rated === undefined) return [];
  const ratio = peak / amps.max;
  const times = `${Number(ratio.toPrecision(3))} times`;
  return [
    {
      ...rated,
      value: rated.value / ratio,
      condition: `it closes on ${times} as much, ${formatValue(peak, 'current')}`,
    },
  ];
}

/**
 * What a contact may close on for a moment: a published making current, or so many times its rating for that kind of load as its
 * category is proved with, or else its resistive rating as practice has it.
 *
 * @param own the row for its kind of load
 */
export function closingLimit(
  load: ContactLoad,
  rows: readonly RatingRow[],
  side: Side,
  own?: RatingRow,
): (LimitPlan & { readonly value: number }) | undefined {
  const stated = (row: RatingRow, value: number, says: string) => ({
    value,
    stated: `${row.stated} ${says}`,
    grade: row.origin.basis === 'practice' ? ('practice' as const) : ('operating' as const),
    margin: 'current' as const,
    origin: row.origin,
  });
  const making = most(
    rowsFor(rows, 'making', side, load.waveform).filter((r) => r.volts === undefined || reaches(r, load)),
  );
  if (making) return stated(making, making.amps, 'when it closes');
  const times = own?.category === undefined ? undefined : CATEGORIES[own.category]?.makes;
  if (own && times !== undefined) return stated(own, times * own.amps, `proved closing on ${times} times that`);
  const row = covering(rows, 'resistive', load, side)?.row;
  return row && { ...stated(row, row.amps, ''), stated: row.stated, grade: 'practice', origin: PRACTICE };
}

/** No row reaches the load's voltage: certain only where even a lower one allows less. */
function unknown(load: ContactLoad, rows: readonly RatingRow[], side: Side, about: string): Held {
  const { volts, waveform, amps, kind } = load;
  const at = `${Number(volts.toPrecision(4))} V ${waveform}`;
  const vague = [kind, 'resistive' as const]
    .flatMap((of) => rowsFor(rows, of, side, waveform))
    .find((r) => r.volts === undefined || (r.waveform === undefined && r.volts >= volts));
  const asks =
    rows.length === 0
      ? `what may the contact of ${about} switch (its \`contact-rating\`)?`
      : vague
        ? `at what voltage, with AC or DC, may the contact of ${about} switch ${vague.stated} (\`voltage\` in that row of its \`contact-rating\`)?`
        : `what may the contact of ${about} switch at ${at} (a row of its \`contact-rating\`)?`;
  // What says no voltage holds at its best one.
  const lower = most(
    rowsFor(rows, 'resistive', side, waveform).filter((r) => r.volts === undefined || r.volts < volts),
  );
  if (lower && amps && amps.min > lower.amps) return { limits: [ratedBy({ row: lower })] };
  return { limits: [], missing: { figure: 'contact-rating', asks } };
}

/** The row that says for most operations that the contact is good with its load; missing where none that covers it does. */
export function lifeRow(
  load: ContactLoad,
  rows: readonly RatingRow[],
  side: Side,
  clamped: boolean,
): RatingRow | undefined {
  const { kind, amps } = load;
  if (amps === undefined) return undefined;
  // Finder, 40 series, technical data: with a diode across it a load of DC-13 wears a contact no more than one of DC-1.
  const kinds = clamped && isClampable(load) ? [kind, 'resistive' as const] : [kind];
  return kinds
    .flatMap((of) =>
      rowsFor(
        rows.filter((r) => r.operations !== undefined),
        of,
        side,
        load.waveform,
      ),
    )
    .filter((r) => reaches(r, load) && amps.max <= r.amps)
    .sort((a, b) => b.operations! - a.operations!)[0];
}

/** Power relays want so much to keep their contacts clean (common practice: 100 mA at 5 V). */
const ENOUGH = { amps: 0.1, volts: 5 };

/** The least that a contact has to carry, and the voltage it has to stand at; missing where it carries little and nobody says. */
export function leastOf(
  load: ContactLoad,
  rows: readonly RatingRow[],
  side: Side,
  about: string,
): { readonly row?: RatingRow; readonly missing?: Missing } {
  const own = rowsFor(rows, 'minimum', side);
  const byVolts = [...own].sort((a, b) => (a.volts ?? 0) - (b.volts ?? 0));
  // Higher voltage breaks through more of what settles, so that less current will do: of the rows that hold, the one with least.
  const row = byVolts.filter((r) => (r.volts ?? 0) <= load.volts).sort((a, b) => a.amps - b.amps)[0] ?? byVolts[0];
  if (row) return { row };
  const little = load.amps !== undefined && (load.amps.min < ENOUGH.amps || load.volts < ENOUGH.volts);
  return little
    ? {
        missing: {
          figure: 'minimum',
          asks: `what is the least that the contact of ${about} is good for (a row \`{ minimum: … }\` of its \`contact-rating\`)?`,
        },
      }
    : {};
}
