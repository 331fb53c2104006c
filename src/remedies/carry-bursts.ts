/** A burst that a supply does not carry: a capacitor, or a larger one, where the supply feeds what bursts. */
import { isMapping } from '../loads/figures.js';
import type { Case, Way } from './cures.js';
import { entryOf, figureIn, partText, valueAt } from './entries.js';
import type { Cure } from './prove.js';

const AT_NODE = new Set(['rail-voltage', 'battery-sags', 'supply-current']);
const AT_LOAD = new Set(['load-voltage', 'load-dip']);

/** Electrolytic capacitors that everybody sells, farads, each several times the one before (common practice, no source). */
const SOLD = [100e-6, 470e-6, 2200e-6];

/** The supply or rail whose voltage, or current, the finding is about. */
function nodeOf({ finding, judgement: { project } }: Case): string | undefined {
  if (AT_NODE.has(finding.rule)) return finding.about;
  if (!AT_LOAD.has(finding.rule)) return undefined;
  return project.circuits.find((c) => c.id === finding.about)?.wiring.supply;
}

/** Where the file says what lies on it: a supply's own entry, or a rail of a controller. */
function placeIn(data: unknown, node: string): readonly string[] | undefined {
  if (entryOf(data, 'supplies', node)) return ['supplies', node];
  const dot = node.indexOf('.');
  const owner = node.slice(0, Math.max(dot, 0));
  return entryOf(data, 'controllers', owner) ? ['controllers', owner, 'rails', node.slice(dot + 1)] : undefined;
}

export const carryBursts: Way = (of) => {
  const { finding, judgement, data } = of;
  const node = nodeOf(of);
  const worst = finding.by?.solution;
  // Only what comes and goes is carried by a capacitor.
  if (node === undefined || !(worst?.peak === true || worst?.before)) return [];
  const known = judgement.project.nodes.find((n) => n.id === node);
  const place = known && (known.kind === 'supply' || known.kind === 'rail') ? placeIn(data, node) : undefined;
  if (place === undefined) return [];
  const entry = valueAt(data, place);
  const now = (isMapping(entry) && figureIn(entry['capacitance'], 'capacitance')) || 0;
  return SOLD.filter((farads) => farads > 2 * now).map((farads): Cure => {
    const part = partText(farads, 'capacitance');
    return {
      title: `Put ${part} across ${node}${now > 0 ? `, in place of ${partText(now, 'capacitance')}` : ''}`,
      changes: [{ path: [...place, 'capacitance'], value: `${part} ±20 %` }],
      parts: [`${part}, for more than its voltage`],
      steps: [
        `Put it close to what bursts, its plus on ${node} and its minus on ground.`,
        ...(known?.battery ? ['Take one of low leakage: what leaks empties the battery.'] : []),
      ],
      watch: [node],
    };
  });
};
