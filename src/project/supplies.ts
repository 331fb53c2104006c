/** Supplies: a type from the catalogue, figures of the project's own, or both. */
import type { Catalogue } from '../catalogue/catalogue.js';
import { Figures, isMapping } from '../loads/figures.js';
import { closed } from '../quantity/quantity.js';
import { checkEntry } from '../source/check.js';
import { nearestSpelling } from '../source/nearest-spelling.js';
import type { Path } from '../source/place.js';
import type { Places } from './places.js';
import type { Gathered } from './remarks.js';
import { supplyLimits } from './supply-limits.js';
import type { Tree } from './tree.js';

interface Surroundings {
  readonly tree: Tree;
  readonly catalogue: Catalogue;
  readonly remarks: Gathered;
  readonly places: Places;
}

/** Puts a supply into the tree under its name. */
export function addSupply(
  { tree, catalogue, remarks, places }: Surroundings,
  id: string,
  raw: unknown,
  path: Path,
): void {
  if (!isMapping(raw)) return;
  places.put(id, raw['place'], [...path, 'place']);
  checkEntry('supply', raw, path).forEach(remarks.problem);
  const profile = profileOf(catalogue, remarks, raw, path);
  const figures = new Figures(id, path, [{ data: raw, path }], remarks).over(profile);
  const voltage = figures.figure('voltage', 'voltage');
  if (voltage === undefined) {
    if (!figures.says('voltage'))
      remarks.problem({
        path,
        on: 'key',
        says: `supply \`${id}\` has no voltage`,
        expected: '`voltage: 5 V ±5 %`, or a `type:` from the catalogue',
      });
    tree.add({ id, kind: 'supply', title: `supply ${id}`, path, limits: [], volts: { min: 0, typ: 0, max: 0 } });
    return;
  }
  const volts = closed(voltage.quantity);
  const resistance = figures.interval('resistance', 'resistance');
  const shape = {
    id,
    kind: 'supply' as const,
    title: `supply ${id}`,
    path,
    ...supplyLimits(figures, id),
    origin: voltage.origin,
    ...(figures.says('regulated') && !figures.flag('regulated') && { unsteady: true as const }),
  };
  if (resistance === undefined) {
    tree.add({ ...shape, volts });
    return;
  }
  // Its own resistance stands between an ideal source and its terminals.
  tree.add({ id: `${id}:inside`, kind: 'joint', title: `inside ${id}`, path, limits: [], volts });
  tree.add(shape);
  tree.link({
    id: `${id}:resistance`,
    kind: 'fuse',
    title: `inner resistance of ${id}`,
    from: `${id}:inside`,
    to: id,
    path,
    ohms: resistance,
    limits: [],
    inner: true,
  });
}

function profileOf(catalogue: Catalogue, remarks: Gathered, raw: Readonly<Record<string, unknown>>, path: Path) {
  const type = raw['type'];
  if (typeof type !== 'string') return undefined;
  const profile = catalogue.profile(type);
  if (profile?.kind === 'supply') return profile;
  const nearest = nearestSpelling(type, catalogue.ids('supply'));
  remarks.problem({
    path: [...path, 'type'],
    on: 'value',
    says: `no supply \`${type}\` is in the catalogue`,
    expected:
      nearest === undefined
        ? 'a type from the catalogue, or `voltage` and `current` spelled out'
        : `did you mean \`${nearest}\`?`,
  });
  return undefined;
}
