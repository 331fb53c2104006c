/** A supply for coils: one that is there and fits, or a new one of the next standard rating. */
import { isMapping } from '../loads/figures.js';
import type { Judgement } from '../checks/judge.js';
import { formatValue } from '../quantity/print.js';
import { trimmed } from '../wording/phrases.js';
import type { Change } from './prove.js';

/** Ratings that supplies are sold in, amperes (common practice, no source). */
const RATINGS = [0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

/** A supply to feed coils from. */
export interface CoilSupply {
  readonly name: string;
  /** In words: '5 V ±5 %, 1 A'. */
  readonly words: string;
  /** Changes that bring it into the project; none when it is there. */
  readonly changes: readonly Change[];
  readonly isNew: boolean;
}

/** The next standard rating for a worst-case current, with the policy's margin in hand. */
export const ratingFor = (amps: number, margin: number): number | undefined =>
  RATINGS.find((r) => r * (1 - margin) >= amps);

/**
 * Supplies to try for coils of a nominal voltage, in order: those of the project that stand apart from the controllers and
 * have the voltage, then a new one, tighter in voltage at each try.
 *
 * @param volts nominal coil voltage @param amps worst-case current of the coils
 * @param wish the name that a new one gets, where it is free
 */
export function suppliesFor(
  data: unknown,
  judgement: Judgement,
  volts: number,
  amps: number,
  wish = 'coil-supply',
): CoilSupply[] {
  const { project } = judgement;
  // A cable leads to a load, or on to a controller.
  const feedsController = (id: string): boolean =>
    project.links.some((l) => l.from === id && (l.kind === 'cable' ? feedsController(l.to) : true));
  const there = project.nodes
    .filter(
      (n) =>
        n.kind === 'supply' &&
        n.volts &&
        !n.id.includes('.') &&
        !feedsController(n.id) &&
        Math.abs(n.volts.typ - volts) <= 0.06 * volts,
    )
    .map((n): CoilSupply => ({ name: n.id, words: `${n.id}`, changes: [], isNew: false }));
  const rating = ratingFor(amps, project.policy.current);
  if (rating === undefined) return there;
  const name = freeName(data, wish);
  const fresh = (voltage: string): CoilSupply => ({
    name,
    words: `${voltage}, ${trimmed(formatValue(rating, 'current'))}`,
    changes: [{ path: ['supplies', name], value: { voltage, current: `${rating} A` } }],
    isNew: true,
  });
  return [
    ...there,
    fresh(`${volts} V ±5 %`),
    fresh(`${volts} V ±2 %`),
    fresh(`${Math.round(volts * 104) / 100} V ±2 %`),
  ];
}

/** A name that no entry of the project has. */
function freeName(data: unknown, wish: string): string {
  const sections = isMapping(data) ? Object.values(data).filter(isMapping) : [];
  const taken = (name: string): boolean => sections.some((s) => Object.hasOwn(s, name));
  for (let k = 1; ; k++) {
    const name = k === 1 ? wish : `${wish}-${k}`;
    if (!taken(name)) return name;
  }
}
