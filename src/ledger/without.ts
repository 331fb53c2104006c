/**
 * Dead supplies. A stated mode in which some are dead is solved without them; and each supply is tried dead by itself, for
 * what the circuits then do that live loads and the pins of a dead chip have in common.
 */
import type { BootState } from '../loads/circuit-plan.js';
import type { Project } from '../project/project.js';
import { headOf } from '../project/same-node.js';
import { deadNodes, feedOfLoad, takenOver, touchedBy, withoutSupplies } from '../project/without.js';
import type { Account } from './account.js';
import type { AtBoot } from './boot.js';
import { proofsOf, settleLoose } from './boot.js';
import type { Dead } from './dead-corners.js';
import type { WaysIntoDead } from './into-dead.js';
import { waysIntoDead } from './into-dead.js';
import { settleAccount } from './settle.js';
import type { ModeSearch } from './moments.js';
import { statesOf } from './moments.js';
import { questionsOf } from './questions.js';
import type { Solver } from './solver.js';
import { solver } from './solver.js';

/** A mode with dead supplies, each of its moments with what solves it. */
export type DeadMode = ModeSearch & { readonly bench: Solver };

/** The stated modes in which supplies are dead. @param only the name of the one mode to look at */
export function deadModes(project: Project, only?: string): readonly DeadMode[] {
  return project.modes
    .filter((m) => m.without.length > 0 && m.during === undefined && (only === undefined || m.name === only))
    .flatMap((mode) => {
      const over = takenOver(project, mode.without);
      const left = withoutSupplies(over, mode.without);
      const bench = solver(left);
      const touched = touchedBy(over, deadNodes(over, mode.without));
      return statesOf(left, [mode]).map(({ on, ...rest }): DeadMode => ({
        ...rest,
        bench,
        // What has lost its supply, or the chip that switches it, is on by no will of anybody's; a line may be driven all the same.
        on: Uint8Array.from(project.circuits, (c, k) => (touched.has(c.id) && !c.always && !c.signal ? 0 : on![k]!)),
      }));
    });
}

/** The accounts of those modes. */
export function deadAccounts(modes: readonly DeadMode[]): Account[] {
  const benches = new Set(modes.map((m) => m.bench));
  return [...benches].flatMap((bench) => {
    const mine = modes.filter((m) => m.bench === bench);
    return questionsOf(bench, mine)
      .flatMap((q) => settleAccount(bench, q, mine, false) ?? [])
      .filter((a) => a.limits.length > 0);
  });
}

/** What a circuit does while supplies are dead. */
export interface WhileDead extends AtBoot {
  readonly dead: readonly string[];
  /** The array whose clamps are the way. */
  readonly clamps?: string;
}

/** The supplies that are dead together: each source by itself, and those that a mode of the file says. */
export function deadSets({ nodes, modes }: Project): readonly Dead[] {
  const named = modes.flatMap((m) => (m.without.length > 0 ? [[...m.without].sort()] : []));
  const isStated = (dead: readonly string[]): boolean => named.some((set) => set.join() === dead.join());
  const sources = nodes.flatMap((n) => (n.kind === 'supply' && n.states === true ? [[n.id]] : []));
  const several = new Map(named.filter((set) => set.length > 1).map((set) => [set.join(), set]));
  return [...sources, ...several.values()].map((dead) => ({ dead, stated: isStated(dead) }));
}

/** What still lives and finds its way into rails that are dead. */
export function waysIntoAll(project: Project): WaysIntoDead {
  const all = deadSets(project).map((of) => waysIntoDead(project, of));
  return {
    lifted: all.flatMap((w) => w.lifted),
    pushed: all.flatMap((w) => w.pushed),
    fed: all.flatMap((w) => w.fed),
  };
}

/** The circuits whose load lives while the chip that switches it is dead, and what they do then. */
export function whileDead(whole: Project): WhileDead[] {
  return deadSets(whole).flatMap(({ dead }): WhileDead[] => {
    const project = takenOver(whole, dead);
    const nodes = deadNodes(project, dead);
    const pinOf = new Map(project.pins.map((p) => [p.id, p]));
    const circuits = project.circuits.flatMap((c): AtBoot[] => {
      const feed = feedOfLoad(c) ?? '';
      const pins = project.uses.filter((u) => u.by === c.id && u.as === 'output').map((u) => u.pin);
      const isDead = pins.length > 0 && pins.every((pin) => nodes.has(pinOf.get(pin)?.rail ?? ''));
      if (c.always || c.signal || !isDead || feed === '' || nodes.has(feed)) return [];
      return [
        { circuit: c.id, does: 'open', pins: pins.map((pin) => ({ pin, state: 'floating' satisfies BootState })) },
      ];
    });
    const held = clampedToDead(project, nodes).map((c) => ({ ...c, dead }));
    if (circuits.length === 0) return held;
    const loose = new Set(circuits.map((c) => c.circuit));
    const bench = solver({ ...withoutSupplies(project, dead), accounts: proofsOf(project, loose) });
    return [...held, ...settleLoose(bench, circuits).map(({ circuit, does, pins }) => ({ circuit, does, pins, dead }))];
  });
}

/** Volts that a clamp keeps for itself, and share of its voltage with which a load surely works (common practice, no source). */
const CLAMP = 1.2;
const WORKS = 0.75;

/** Loads that live while the common pin of their array's clamps is tied to a dead supply: the clamp is a way to 0 V past the switch. */
function clampedToDead(project: Project, nodes: ReadonlySet<string>): Omit<WhileDead, 'dead'>[] {
  return project.circuits.flatMap((c): Omit<WhileDead, 'dead'>[] => {
    const { clampedTo, supply = '', channels = [] } = c.wiring;
    if (clampedTo === undefined || !nodes.has(clampedTo.common) || nodes.has(supply)) return [];
    const volts = project.nodes.find((n) => n.id === headOf(project, supply))?.volts?.typ ?? 0;
    const pins = channels.map((pin): AtBoot['pins'][number] => ({ pin, state: 'floating' }));
    return [{ circuit: c.id, does: volts - CLAMP >= WORKS * volts ? 'on' : 'open', pins, clamps: clampedTo.array }];
  });
}
