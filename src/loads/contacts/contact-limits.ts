/** What a contact is held to: its rating for the kind of load that hangs on it, or the share of the resistive one that practice allows. */
import { SHARE_OF_RESISTIVE, betweenPoints } from '../../circuit/contact.js';
import { formatValue } from '../../quantity/print.js';
import type { LimitPlan } from '../account-plan.js';
import type { Origin } from '../branch-plan.js';
import type { ContactLoad } from './contact-load.js';
import type { RatedFor, RatingRow } from './contact-rating.js';
import { rowsFor } from './contact-rating.js';

type Side = 'normally-open' | 'normally-closed';
type Missing = { readonly figure: string; readonly asks: string };

export interface Held {
  readonly limits: readonly LimitPlan[];
  readonly missing?: Missing;
}

/** What the standards' utilisation categories stand for (IEC 60947-4-1 and IEC 60947-5-1). */
const CATEGORIES: { readonly [category: string]: string } = {
  'AC-1': 'hardly inductive loads',
  'AC-3': 'squirrel-cage motors',
  'AC-5a': 'discharge lamps',
  'AC-5b': 'incandescent lamps',
  'AC-6b': 'capacitor banks',
  'AC-7a': 'hardly inductive household loads',
  'AC-7b': 'household motors',
  'AC-12': 'resistive loads',
  'AC-14': 'electromagnets up to 72 VA',
  'AC-15': 'electromagnets above 72 VA',
  'DC-1': 'hardly inductive loads',
  'DC-3': 'shunt motors',
  'DC-5': 'series motors',
  'DC-6': 'incandescent lamps',
  'DC-12': 'resistive loads',
  'DC-13': 'electromagnets',
};

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
  const found = kind === 'resistive' ? undefined : covering(rows, kind, load, side);
  const resistive = covering(rows, 'resistive', load, side);
  const starting = startLimits(load, rows, side);
  if (found) return { limits: [ratedBy(found), ...starting] };
  if (resistive === undefined) return unknown(load, rows, side, about);
  if (kind === 'resistive') return { limits: [ratedBy(resistive), ...starting] };
  if (clamped && kind === 'inductive' && load.waveform === 'DC')
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

/** The row that covers the load's voltage: of those that reach it the lowest; undefined where none does. */
function covering(
  rows: readonly RatingRow[],
  of: RatedFor,
  { volts, waveform }: ContactLoad,
  side: Side,
): Covering | undefined {
  const own = rowsFor(rows, of, side, waveform);
  const row = nearest(own.filter((r) => r.volts === undefined || r.volts >= volts));
  if (row === undefined) return undefined;
  const below = own
    .filter((r) => r.volts !== undefined && r.volts < volts && r.amps > row.amps)
    .sort((a, b) => b.volts! - a.volts!)[0];
  if (below === undefined || row.volts === undefined || row.volts === volts || waveform === 'AC') return { row };
  const point = (r: RatingRow) => ({ volts: r.volts!, amps: r.amps });
  return { row, below, reaches: betweenPoints(point(below), point(row), volts) };
}

/** The row of lowest voltage; of several the one with most current: they hold for different lives. */
const nearest = (rows: readonly RatingRow[]): RatingRow | undefined =>
  [...rows].sort((a, b) => (a.volts ?? Infinity) - (b.volts ?? Infinity) || b.amps - a.amps)[0];

const conditionOf = ({ row, below }: Covering): string | undefined =>
  below
    ? `between ${below.stated} and ${row.stated}`
    : row.category !== undefined && CATEGORIES[row.category] !== undefined
      ? `${row.category}: ${CATEGORIES[row.category]!}`
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
function startLimits(load: ContactLoad, rows: readonly RatingRow[], side: Side): LimitPlan[] {
  const { amps, peak } = load;
  if (peak === undefined || amps === undefined || amps.max <= 0 || peak <= amps.max) return [];
  const rated = closingLimit(load, rows, side);
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

/** What a contact may close on for a moment: a published making current, or else its resistive rating as practice has it. */
export function closingLimit(
  load: ContactLoad,
  rows: readonly RatingRow[],
  side: Side,
): (LimitPlan & { readonly value: number }) | undefined {
  const making = nearest(rowsFor(rows, 'making', side, load.waveform));
  const row = making ?? covering(rows, 'resistive', load, side)?.row;
  if (row === undefined) return undefined;
  const published = making !== undefined && row.origin.basis !== 'practice';
  return {
    value: row.amps,
    stated: making ? `${row.stated} when it closes` : row.stated,
    grade: published ? 'operating' : 'practice',
    margin: 'current',
    origin: making ? row.origin : PRACTICE,
  };
}

/** No row reaches the load's voltage: certain only where even a lower one allows less. */
function unknown({ volts, waveform, amps }: ContactLoad, rows: readonly RatingRow[], side: Side, about: string): Held {
  const at = `${Number(volts.toPrecision(4))} V ${waveform}`;
  const asks =
    rows.length === 0
      ? `what may the contact of ${about} switch (its \`contact-rating\`)?`
      : `what may the contact of ${about} switch at ${at} (a row of its \`contact-rating\`)?`;
  const lower = rowsFor(rows, 'resistive', side, waveform).filter((r) => r.volts !== undefined && r.volts < volts);
  const most = [...lower].sort((a, b) => b.amps - a.amps)[0];
  if (most && amps && amps.min > most.amps) return { limits: [ratedBy({ row: most })] };
  return { limits: [], missing: { figure: 'contact-rating', asks } };
}

/** The row that says for how many operations the contact is good with its load; missing where none that covers it does. */
export function lifeRow(load: ContactLoad, rows: readonly RatingRow[], side: Side): RatingRow | undefined {
  const lasting = rows.filter((r) => r.operations !== undefined);
  const row = covering(lasting, load.kind, load, side)?.row;
  return row !== undefined && load.amps !== undefined && load.amps.max <= row.amps ? row : undefined;
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
  const row = nearest(rowsFor(rows, 'minimum', side));
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
