/** Supplies: a type from the catalogue, figures of the project's own, or fed by other supplies. */
import { insideOhms } from '../circuit/battery.js';
import type { Catalogue } from '../catalogue/catalogue.js';
import { Figures, isMapping } from '../loads/figures.js';
import type { NetworkSketch } from '../loads/lowering.js';
import type { Interval } from '../quantity/interval.js';
import { exactly } from '../quantity/interval.js';
import type { Quantity } from '../quantity/quantity.js';
import { closed } from '../quantity/quantity.js';
import { checkEntry } from '../source/check.js';
import { didYouMean } from '../source/did-you-mean.js';
import type { Path } from '../source/place.js';
import { batteryOf } from './battery-figures.js';
import { DERIVED_TYPES, isDerivedType, supplyProfile, typeOfPart } from './between.js';
import { BETWEEN_KEYS, addDerived } from './derived-supplies.js';
import type { Places } from './places.js';
import type { Reverse } from './tree-plan.js';
import type { Gathered } from './remarks.js';
import { supplyLimits } from './supply-limits.js';
import type { SupplyStates } from './supply-states.js';
import type { Tree } from './tree.js';
import type { Wires } from './wires.js';

interface Surroundings {
  readonly tree: Tree;
  readonly catalogue: Catalogue;
  readonly remarks: Gathered;
  readonly places: Places;
  readonly wires: Wires;
  readonly controllers: readonly string[];
  readonly states: SupplyStates;
  /** The modes in which no firmware runs yet. */
  readonly starts: ReadonlySet<string>;
  /** The modes of the file share its time. */
  readonly shared: boolean;
}

/** Puts a supply into the tree under its name. @returns what flows in it besides: through the lower half of a divider */
export function supply(around: Surroundings, id: string, raw: unknown, path: Path): readonly NetworkSketch[] {
  if (isMapping(raw) && raw['from'] !== undefined) return addDerived(around, id, raw, path);
  addSource(around, id, raw, path);
  return [];
}

/** A supply that nothing else feeds. */
function addSource(
  { tree, catalogue, remarks, places, states, starts, shared }: Surroundings,
  id: string,
  raw: unknown,
  path: Path,
): void {
  if (!isMapping(raw)) return;
  places.put(id, raw['place'], [...path, 'place']);
  checkEntry('supply', raw, path).forEach(remarks.problem);
  const between = isDerivedType(raw['type']) ? raw['type'] : typeOfPart(supplyProfile(catalogue, raw));
  if (between !== undefined) {
    remarks.problem({
      path,
      on: 'key',
      says: `nothing feeds the ${between} \`${id}\``,
      expected: '`from:` with the name of what feeds it',
    });
    tree.add({ id, kind: 'supply', title: `supply ${id}`, path, limits: [], volts: { min: 0, typ: 0, max: 0 } });
    return;
  }
  for (const key of [...BETWEEN_KEYS, 'input-capacitance', 'part'])
    if (raw[key] !== undefined)
      remarks.problem({
        path: [...path, key],
        on: 'key',
        says: `\`${key}\` belongs to a supply that another one feeds`,
        expected:
          key === 'part'
            ? '`type:` with the name of a source in the catalogue, or `from:` with what feeds it'
            : '`from:` with the name of what feeds it, and a `type:` such as linear-regulator',
      });
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
  const inside = insideOf(figures, voltage.quantity);
  const volts = inside.volts;
  // Below ground every transistor would conduct through its own junctions, and nothing here reckons with that.
  if (volts.min <= 0)
    figures.problem(
      'voltage',
      `supply \`${id}\` has to stand above ground`,
      'a voltage above zero, from ground to its plus',
    );
  const { resistance } = inside;
  const battery = batteryOf(figures, id, shared);
  const reverse = figures.word('reverse') as Reverse | undefined;
  const shape = {
    id,
    kind: 'supply' as const,
    title: `supply ${id}`,
    path,
    ...supplyLimits(figures, id, { byMode: states.get(id), starts }),
    states: true as const,
    origin: voltage.origin,
    ...(figures.says('regulated') && !figures.flag('regulated') && { unsteady: true as const }),
    ...(reverse && { reverse, reverseOrigin: figures.wordOrigin('reverse')! }),
    ...(battery && { battery }),
  };
  // What stands between an ideal source and its terminals: its own resistance, and what lets nothing flow back.
  const inner = [
    ...(resistance ? [{ name: 'resistance', kind: 'fuse' as const, ohms: resistance }] : []),
    ...(reverse === 'blocked' ? [{ name: 'blocking', kind: 'diode' as const, drop: exactly(0) }] : []),
  ];
  if (inner.length === 0) {
    tree.add({ ...shape, volts });
    return;
  }
  tree.add({ id: `${id}:inside`, kind: 'joint', title: `inside ${id}`, path, limits: [], volts });
  inner.forEach(({ name, ...part }, k) => {
    const from = k === 0 ? `${id}:inside` : `${id}:${inner[k - 1]!.name}`;
    const to = k === inner.length - 1 ? id : `${id}:${name}`;
    if (to === id) tree.add(shape);
    else tree.add({ id: to, kind: 'joint', title: `inside ${id}`, path, limits: [] });
    const title = name === 'resistance' ? `inner resistance of ${id}` : `blocking of ${id}`;
    tree.link({ ...part, id: `${id}:${name}`, title, from, to, path, limits: [], inner: true });
  });
}

/** The ideal source inside a supply, volts, and the ohms before its terminals: stated, or told by its voltage without load. */
function insideOf(figures: Figures, rated: Quantity): { readonly volts: Interval; readonly resistance?: Interval } {
  const resistance = figures.interval('resistance', 'resistance');
  const open = figures.interval('open-voltage', 'voltage');
  const stated = figures.interval('current', 'current')?.min;
  const amps = stated !== undefined && stated > 0 ? stated : undefined;
  if (open === undefined) return { volts: closed(rated), ...(resistance && { resistance }) };
  if (resistance === undefined && amps === undefined)
    figures.problem(
      'open-voltage',
      `\`${figures.about}\` stands at that with nothing drawn, and nothing says at what current it is down to its \`voltage\``,
      '`current:` with the rating on its label, or its `resistance`',
    );
  return { volts: open, resistance: resistance ?? insideOhms(open, closed(rated), amps ?? 1) };
}

function profileOf(catalogue: Catalogue, remarks: Gathered, raw: Readonly<Record<string, unknown>>, path: Path) {
  const type = raw['type'];
  if (typeof type !== 'string') return undefined;
  const profile = catalogue.profile(type);
  if (profile?.kind === 'supply') return profile;
  const known = [...catalogue.ids('supply'), ...DERIVED_TYPES];
  remarks.problem({
    path: [...path, 'type'],
    on: 'value',
    says: `no supply \`${type}\` is in the catalogue`,
    expected: didYouMean(type, known, 'a type from the catalogue, or `voltage` and `current` spelled out'),
  });
  return undefined;
}
