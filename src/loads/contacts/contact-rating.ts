/** Rows of `contact-rating`: what a contact may switch, by kind of load and voltage, and how little it may carry. */
import type { ContactLoadKind } from '../../circuit/contact.js';
import { closed } from '../../quantity/quantity.js';
import type { Figures } from '../figures.js';
import type { Origin } from '../branch-plan.js';

export const LOAD_KINDS: readonly ContactLoadKind[] = ['resistive', 'inductive', 'motor', 'lamp', 'capacitive'];

/** What a row is about: a kind of load, the current it closes on, or the least that keeps it clean. */
export type RatedFor = ContactLoadKind | 'making' | 'minimum';

const KEYS: readonly RatedFor[] = [...LOAD_KINDS, 'making', 'minimum'];

export interface RatingRow {
  readonly of: RatedFor;
  readonly amps: number;
  /** Volts it holds up to (of a minimum: from which on); absent: any. */
  readonly volts?: number;
  readonly waveform?: 'AC' | 'DC';
  /** Of a changeover: the side it holds for; absent: either. */
  readonly wired?: 'normally-open' | 'normally-closed';
  /** It holds only while nothing hangs on the other side. */
  readonly alone?: true;
  /** Utilisation category of the standards, and the operations it is good for. */
  readonly category?: string;
  readonly operations?: number;
  /** '10 A 250 V AC'. */
  readonly stated: string;
  readonly origin: Origin;
}

/** All rows of an entry; a row that states several kinds is several rows. */
export function ratingRows(figures: Figures): readonly RatingRow[] {
  return figures.rows('contact-rating').flatMap((row) => {
    const voltage = row.figure('voltage', 'voltage')?.quantity;
    const wired = row.word('wired');
    const alone = row.word('other-side') === 'unloaded';
    const category = row.word('category');
    const operations = row.count('operations');
    return KEYS.flatMap((of): RatingRow[] => {
      const figure = row.figure(of, 'current');
      if (figure === undefined) return [];
      const amps = closed(figure.quantity);
      return [
        {
          of,
          // A rating written as a range is worth its careful end.
          amps: of === 'minimum' ? amps.max : amps.min,
          ...(voltage && { volts: closed(voltage).typ }),
          ...(voltage?.waveform && { waveform: voltage.waveform }),
          ...((wired === 'normally-open' || wired === 'normally-closed') && { wired }),
          ...(alone && { alone }),
          ...(category !== undefined && { category }),
          ...(operations !== undefined && { operations }),
          stated: [figure.quantity.stated, voltage?.stated, category].filter((text) => text !== undefined).join(', '),
          origin: row.rowOrigin(),
        },
      ];
    });
  });
}

/** The rows for one side of a contact and one sort of voltage: those that name the side, or else those that name none. */
export function rowsFor(
  rows: readonly RatingRow[],
  of: RatedFor,
  wired: 'normally-open' | 'normally-closed',
  waveform?: 'AC' | 'DC',
): readonly RatingRow[] {
  const own = rows.filter(
    (r) => r.of === of && (waveform === undefined || r.waveform === undefined || r.waveform === waveform),
  );
  const named = own.filter((r) => r.wired === wired);
  return named.length > 0 ? named : own.filter((r) => r.wired === undefined);
}
