/**
 * A wire that carries too much, or loses too much on its way, is replaced by the next thicker ones; a plug that is rated for less
 * than it carries by one for more.
 */
import { awgArea, wireOhms } from '../circuit/wire.js';
import { isMapping } from '../loads/figures.js';
import type { Link } from '../project/tree-plan.js';
import type { Case, Way } from './cures.js';
import { figureIn, valueAt } from './entries.js';
import type { Cure } from './prove.js';

/** American gauges and cross-sections in mm² that wires are sold in (IEC 60228 from 0.5 mm² on, from memory). */
const GAUGES = [30, 28, 26, 24, 22, 20, 18, 16, 14, 12, 10];
const SECTIONS = [0.14, 0.25, 0.34, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10];
/** Currents that plugs and headers are sold for, amperes (common practice, no source). */
const PLUGS = [1, 2, 3, 5, 8, 10, 16];

/** What a wire's drop can bring about. */
const STARVED = new Set([
  'coil-pull-in',
  'load-voltage',
  'rail-voltage',
  'load-needs',
  'driver-drive',
  'regulator-dropout',
  'regulator-starved',
]);

export const thickerWire: Way = (of) => {
  const { finding, data } = of;
  const at = wireAt(of);
  const raw = at === undefined ? undefined : valueAt(data, ['wires', at]);
  if (at === undefined || !isMapping(raw)) return [];
  const name = String(raw['name'] ?? `from ${String(raw['from'])} to ${[raw['to']].flat().join(', ')}`);
  const path = ['wires', at] as const;
  const sort = raw['gauge'] === undefined && raw['part'] !== undefined;
  const thicker = sort ? lessOhmsThan(of, at) : thickerThan(raw['gauge']);
  const gauges: Cure[] = thicker.map((gauge) => ({
    title: `Run the wire ${name} in ${gauge}`,
    // A sort of wire has one gauge.
    changes: [
      ...(sort ? [{ path: [...path, 'part'], value: undefined }] : []),
      { path: [...path, 'gauge'], value: gauge },
    ],
    parts: [`wire of ${gauge}`],
    steps: [`Replace the wire ${name} by one of ${gauge}, both conductors, over the same way.`],
    watch: finding.account ? [finding.account.id] : [],
  }));
  const rating = figureIn(raw['rating'], 'current');
  if (finding.rule !== 'wire-current' || rating === undefined) return gauges;
  const plugs: Cure[] = PLUGS.filter((amps) => amps > rating).map((amps) => ({
    title: `Give the wire ${name} plugs for ${amps} A`,
    changes: [{ path: [...path, 'rating'], value: `${amps} A` }],
    parts: [`plugs for ${amps} A`],
    steps: [`Replace the plugs of the wire ${name} by ones that are rated for ${amps} A, or solder it.`],
    watch: finding.account ? [finding.account.id] : [],
  }));
  return [...plugs, ...gauges];
};

/** The wire of the file that the finding is about, or the first one on the way to what it is about. */
function wireAt({ finding, judgement: { project } }: Case): number | undefined {
  if (finding.rule === 'wire-current') return finding.path[0] === 'wires' ? Number(finding.path[1]) : undefined;
  if (!STARVED.has(finding.rule)) return undefined;
  const circuit = project.circuits.find((c) => c.id === finding.about);
  const feeds = new Map(project.links.map((l) => [l.to, l]));
  let link: Link | undefined = feeds.get(circuit?.wiring.supply ?? finding.about);
  while (link !== undefined && !(link.kind === 'cable' && link.path[0] === 'wires')) link = feeds.get(link.from);
  return link && Number(link.path[1]);
}

/** The gauges that have fewer ohms a metre than the sort of wire that a row names. */
function lessOhmsThan({ judgement: { project } }: Case, at: number): readonly string[] {
  const copper = project.links.find(
    (l) => l.kind === 'cable' && l.path[0] === 'wires' && Number(l.path[1]) === at,
  )?.copper;
  if (copper === undefined) return [];
  const metre = 'perMetre' in copper ? copper.perMetre.min : wireOhms(1, copper.area.max);
  return GAUGES.filter((g) => wireOhms(1, awgArea(g)) < metre * 0.98).map((g) => `AWG ${g}`);
}

/** The gauges after one, as they are written. */
function thickerThan(raw: unknown): readonly string[] {
  const text = String(raw ?? '');
  const area = /mm/i.test(text) ? figureIn(text, 'area') : undefined;
  if (area !== undefined) return SECTIONS.filter((mm2) => mm2 * 1e-6 > area * 1.001).map((mm2) => `${mm2} mm²`);
  const gauge = raw === undefined ? undefined : figureIn(text, 'gauge');
  return gauge === undefined ? [] : GAUGES.filter((g) => g < gauge).map((g) => `AWG ${g}`);
}
