/**
 * Capacitance that hangs on the nodes of the supply tree: reservoirs at the outputs of supplies, at inlets and on rails, and
 * what loads, regulators and modules have at their inputs.
 */
import type { Catalogue } from '../catalogue/catalogue.js';
import { Figures, isMapping } from '../loads/figures.js';
import { closed } from '../quantity/quantity.js';
import type { Path } from '../source/place.js';
import { supplyProfile } from './between.js';
import type { Capacitance, Link } from './tree-plan.js';
import type { Gathered } from './remarks.js';
import type { Tree } from './tree.js';

type Raw = Readonly<Record<string, unknown>>;

interface Surroundings {
  readonly tree: Tree;
  readonly catalogue: Catalogue;
  readonly remarks: Gathered;
}

/** All that supplies and boards have; loads bring their own. */
export function capacitancesOf(data: Raw, around: Surroundings): readonly Capacitance[] {
  return [
    ...entries(data['supplies']).flatMap(([id, raw]) => ofSupply(around, id, raw, ['supplies', id])),
    ...entries(data['controllers']).flatMap(([id, raw]) => ofBoard(around, id, raw, ['controllers', id])),
  ];
}

/** @param figure as stated @param own whether a profile states it, so that the file has not put it there */
const capacitance = (figures: Figures, key: string, about: string, node: string): Capacitance[] => {
  const figure = figures.figure(key, 'capacitance');
  if (figure === undefined) return [];
  const { quantity, origin } = figure;
  return [
    {
      about,
      node,
      farads: closed(quantity),
      stated: quantity.stated,
      origin,
      reservoir: key === 'capacitance',
      builtIn: figure.path === undefined,
    },
  ];
};

function ofSupply({ tree, catalogue, remarks }: Surroundings, id: string, raw: unknown, path: Path): Capacitance[] {
  if (!isMapping(raw) || !tree.has(id)) return [];
  const figures = new Figures(id, path, [{ data: raw, path }], remarks).over(supplyProfile(catalogue, raw));
  const feed = tree.inOrder().find((link) => link.to === id || link.id === id);
  return [
    ...capacitance(figures, 'capacitance', id, id),
    ...(feed ? capacitance(figures, 'input-capacitance', id, feed.from) : []),
  ];
}

/** A board's own reservoirs, and those that the file puts on its rails; a supply spelled out at an inlet. */
function ofBoard(around: Surroundings, id: string, raw: unknown, path: Path): Capacitance[] {
  const { tree, catalogue, remarks } = around;
  if (!isMapping(raw)) return [];
  const profile = typeof raw['board'] === 'string' ? catalogue.profile(raw['board']) : undefined;
  const figures = new Figures(id, path, [{ data: raw, path }], remarks).over(profile);
  const names = (key: string): string[] => [
    ...new Set([...entries(profile?.[key]), ...entries(raw[key])].map(([name]) => name)),
  ];
  const at = (section: 'inlets' | 'rails') =>
    names(section).flatMap((name) => {
      const node = `${id}.${name}`;
      return tree.has(node) ? capacitance(figures.within(section).within(name), 'capacitance', node, node) : [];
    });
  const inputs = entries(profile?.['parts']).flatMap(([part]) => {
    const link = tree.inOrder().find((l) => l.id === `${id}.${part}`);
    return link ? capacitance(figures.within('parts').within(part), 'input-capacitance', link.id, link.from) : [];
  });
  const supplies = entries(raw['powered']).flatMap(([inlet, supply]) =>
    ofSupply(around, `${id}.${inlet}-supply`, supply, [...path, 'powered', inlet]),
  );
  return [...at('inlets'), ...at('rails'), ...inputs, ...supplies];
}

const entries = (raw: unknown): [string, unknown][] => (isMapping(raw) ? Object.entries(raw) : []);

/** What a load has at its input. @param node that feeds it @param count of its circuits that have it */
export const ofLoad = (figures: Figures, about: string, node: string): readonly Capacitance[] =>
  capacitance(figures, 'input-capacitance', about, node);

/** Everything that charges together with a node: over ideal joints, wires, fuses and diodes, up to the next regulator. */
export function chargedBy(links: readonly Link[], node: string): ReadonlySet<string> {
  const nodes = new Set([node]);
  // Upstream links come first.
  for (const link of links) if (nodes.has(link.from) && link.volts === undefined) nodes.add(link.to);
  return nodes;
}

/** The capacitance that a supply has to charge: all that hangs on it, its own reservoir left out. */
export function chargedFrom(
  { links, capacitances }: { readonly links: readonly Link[]; readonly capacitances: readonly Capacitance[] },
  supply: string,
): readonly Capacitance[] {
  const nodes = chargedBy(links, supply);
  return capacitances.filter((c) => nodes.has(c.node) && !(c.node === supply && c.reservoir && c.about === supply));
}
