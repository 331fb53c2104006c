/**
 * What loads a rail, its regulator, fuse, inlet or supply too much moves to another supply of the same voltage: one that is there,
 * or a new one. The heaviest load moves first, as few as will do.
 */
import { isMapping } from '../loads/figures.js';
import { beforeCables } from '../project/same-node.js';
import { partText } from './entries.js';
import type { Case, Way } from './cures.js';
import type { Change, Cure } from './prove.js';
import { rewired } from './rewire.js';
import type { CoilSupply } from './supply-for.js';
import { suppliesFor } from './supply-for.js';

const RULES = new Set([
  'supply-current',
  'supply-power',
  'fuse-holds',
  'regulator-heat',
  'regulator-current',
  'regulator-starved',
  'rail-current',
  'rail-voltage',
  'inlet-current',
  'series-current',
  'divider-sags',
  'load-voltage',
  'load-dip',
  'battery-sags',
]);
/** So many loads move at most. */
const MOST = 3;
/** Voltages that supplies are sold with (common practice, no source). */
const SOLD = [3.3, 5, 6, 9, 12, 24];
/** A supply of another node's voltage is one to within this share. */
const SAME_VOLTS = 0.06;

interface Moving {
  readonly owner: string;
  readonly from: string;
  readonly amps: number;
  readonly volts: number;
}

export const otherSupply: Way = (of) => {
  if (!RULES.has(of.finding.rule)) return [];
  const moving = loadsOn(of).slice(0, MOST);
  return moving.flatMap((_, k) => movesOf(of, moving.slice(0, k + 1)));
};

/** The loads fed over what the finding is about, the heaviest first. */
function loadsOn(of: Case): readonly Moving[] {
  const { finding, judgement, data } = of;
  const { project } = judgement;
  const loads = isMapping(data) && isMapping(data['loads']) ? data['loads'] : {};
  const flows = judgement.accounts.find((j) => j.account.id === finding.account?.id && j.account.entries.length > 0);
  const entries = (flows?.account ?? finding.account)?.entries ?? [];
  const sums = new Map<string, Moving>();
  for (const { circuit, max } of finding.rule === 'load-voltage' ? [{ circuit: finding.about, max: 1e-3 }] : entries) {
    const plan = project.circuits.find((c) => c.id === circuit);
    const entry = plan && loads[plan.owner];
    // Coils of boards and drivers have a way of their own; a load on a pin is fed by the pin.
    if (plan === undefined || !isMapping(entry) || typeof entry['supply'] !== 'string' || plan.wiring.board) continue;
    if (plan.wiring.by === 'pin' && entry['active'] === 'low') continue;
    const from = beforeCables(project, plan.wiring.supply ?? entry['supply']);
    const volts = nominal(of, from);
    if (volts === undefined || !(volts > 0)) continue;
    const known = sums.get(plan.owner);
    sums.set(plan.owner, { owner: plan.owner, from, volts, amps: (known?.amps ?? 0) + max });
  }
  return [...sums.values()].sort((a, b) => b.amps - a.amps);
}

/** The volts of a node as supplies are sold: what its source or regulator states, whatever is lost on the way. */
function nominal({ judgement: { project } }: Case, node: string): number | undefined {
  const feeds = new Map(project.links.map((l) => [l.to, l]));
  for (let at: string | undefined = node; at !== undefined; at = feeds.get(at)?.from) {
    const volts = project.nodes.find((n) => n.id === at)?.volts?.typ ?? feeds.get(at)?.volts?.typ;
    if (volts !== undefined) return SOLD.find((v) => Math.abs(v - volts) <= SAME_VOLTS * v) ?? volts;
  }
  return undefined;
}

function movesOf(of: Case, moving: readonly Moving[]): readonly Cure[] {
  const { judgement, data } = of;
  const [first] = moving;
  if (first === undefined || moving.some((m) => m.volts !== first.volts)) return [];
  const amps = moving.reduce((sum, m) => sum + m.amps, 0);
  const rails = judgement.project.nodes
    .filter((n) => n.kind === 'rail' && !moving.some((m) => m.from === n.id))
    .filter((n) => {
      const volts = judgement.project.links.find((l) => l.to === n.id && l.volts)?.volts?.typ;
      return volts !== undefined && Math.abs(volts - first.volts) <= SAME_VOLTS * volts;
    })
    .map((n): CoilSupply => ({ name: n.id, words: n.id, changes: [], isNew: false }));
  const supplies = suppliesFor(data, judgement, first.volts, amps, 'own-supply').filter(
    (s) => !moving.some((m) => m.from === s.name),
  );
  return [...rails, ...supplies].map((supply) => move(of, moving, supply, amps));
}

function move(
  { judgement: { project }, data, finding }: Case,
  moving: readonly Moving[],
  supply: CoilSupply,
  amps: number,
): Cure {
  const names = moving.map((m) => m.owner);
  const several = names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : names[0]!;
  const changes: Change[] = [
    ...supply.changes,
    ...moving.flatMap(({ owner }): Change[] => [
      { path: ['loads', owner, 'supply'], value: supply.name },
      ...rewired(data, project, owner, [supply.name]),
    ]),
  ];
  return {
    title: `Feed ${several} from ${supply.isNew ? `a supply of ${names.length > 1 ? 'their' : 'its'} own (${supply.words})` : supply.name}`,
    changes,
    parts: supply.isNew ? [`a supply of ${supply.words}`] : [],
    steps: [
      ...moving.map(
        ({ owner, from }) => `Take the plus of ${owner} off ${from} and put it on the plus of ${supply.name}.`,
      ),
      ...(supply.name.includes('.')
        ? []
        : [
            `Join the ground of ${supply.name} and that of the controller; it gives up to ${partText(amps, 'current')}.`,
          ]),
    ],
    watch: [...(finding.account ? [finding.account.id] : []), supply.name],
  };
}
