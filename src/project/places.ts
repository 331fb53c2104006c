/** Places with an ambient of their own, and what stands in which. */
import { isMapping } from '../loads/figures.js';
import type { Interval } from '../quantity/interval.js';
import { parseQuantity } from '../quantity/parse.js';
import { closed } from '../quantity/quantity.js';
import { didYouMean, oneOf } from '../source/did-you-mean.js';
import type { Path } from '../source/place.js';
import type { Project } from './project.js';
import type { Gathered } from './remarks.js';

/** What stands where, while a project is resolved. */
export interface Places {
  /** °C by the place's name. */
  readonly ambients: ReadonlyMap<string, Interval>;
  readonly located: ReadonlyMap<string, string | undefined>;
  /** Puts an entry into the place that it says; one that says none stands in the project's own ambient. */
  put(owner: string, raw: unknown, path: Path): void;
  /** The same for what need not say it itself. */
  settle(owner: string, place: string | undefined): void;
  /** Hottest ambient of what has a name, °C. */
  hottest(owner: string): number;
}

/** @param ambient of the project, °C */
export function placesOf(raw: unknown, ambient: Interval, remarks: Gathered): Places {
  const ambients = new Map<string, Interval>();
  for (const [name, place] of Object.entries(isMapping(raw) ? raw : {})) {
    const stated = isMapping(place) ? place['ambient'] : undefined;
    if (stated === undefined) continue; // the frame has said so
    ambients.set(name, ambientFrom(stated, ['places', name, 'ambient'], remarks) ?? ambient);
  }
  const located = new Map<string, string | undefined>();
  return {
    ambients,
    located,
    put(owner, place, path) {
      if (place === undefined) return;
      const name = String(place);
      if (ambients.has(name)) {
        located.set(owner, name);
        return;
      }
      const known = [...ambients.keys()];
      remarks.problem({
        path,
        on: 'value',
        says: `there is no place \`${name}\``,
        expected: didYouMean(
          name,
          known,
          known.length > 0
            ? oneOf(known)
            : `an entry in \`places:\`, as in \`places: { ${name}: { ambient: 30 to 60 °C } }\``,
        ),
      });
    },
    settle: (owner, place) => void located.set(owner, place),
    hottest: (owner) => (ambients.get(located.get(owner) ?? '') ?? ambient).max,
  };
}

/** An ambient in °C; typical is the middle of it. */
export function ambientFrom(raw: unknown, path: Path, remarks: Gathered): Interval | undefined {
  const parsed = parseQuantity(raw as string, 'temperature');
  if ('quantity' in parsed) {
    const { min, max } = closed(parsed.quantity);
    return { min, typ: (min + max) / 2, max };
  }
  remarks.problem({ path, on: 'value', says: parsed.problem, expected: parsed.expected });
  return undefined;
}

/** The place of anything with a name, or of the entry that it belongs to: 'vents.2', 'main.5v', 'brick:inside'. */
export function placeOf({ located }: Pick<Project, 'located'>, name: string): string | undefined {
  if (located.size === 0) return undefined;
  if (located.has(name)) return located.get(name);
  return located.get(/^[^.:]*/.exec(name)![0]);
}
