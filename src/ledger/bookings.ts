/**
 * Bookings: whose current it is. Every branch's current is booked for a circuit (or a part that draws for itself); along
 * the supply tree it is handed up link by link, so that the entries of any account add up to what flows through it.
 */
import type { BranchPlan } from '../loads/branch-plan.js';
import type { Solution } from './solution.js';

/** Amperes by circuit. */
export type Shares = ReadonlyMap<string, number>;

export interface Books {
  /** Amperes out of each link, and out of each supply. */
  readonly links: ReadonlyMap<string, Shares>;
  readonly nodes: ReadonlyMap<string, Shares>;
}

/** The books of a settled solution. */
export const booksOf = (solution: Solution): Books => (solution.books ??= write(solution));

function add(shares: Map<string, number>, circuit: string, amps: number): void {
  if (amps !== 0) shares.set(circuit, (shares.get(circuit) ?? 0) + amps);
}

function write(solution: Solution): Books {
  const { networks, linkIndex, project } = solution.circuitry;
  const drawn = new Map<string, Map<string, number>>();
  for (const { id } of project.nodes) drawn.set(id, new Map());
  for (let n = 0; n < networks.length; n++) {
    const { fitted, currents } = solution.network(n);
    fitted.plans.forEach((plan, b) => {
      const [from, to] = [drawn.get(plan.from), drawn.get(plan.to)];
      const portion = portionOf(plan, b, currents, fitted.plans);
      for (const k of plan.carries ?? [b]) {
        const { circuit } = fitted.plans[k]!;
        const amps = k === b ? currents[k]! : portion * along(plan, fitted.plans[k]!) * currents[k]!;
        if (from) add(from, circuit, amps);
        if (to) add(to, circuit, -amps);
      }
    });
  }
  const links = new Map<string, Shares>();
  for (const link of project.links.toReversed()) {
    const k = linkIndex.get(link);
    // Of several that lead to a node one carries all.
    if (k !== undefined && !solution.isLive(k)) {
      links.set(link.id, new Map());
      continue;
    }
    const out = drawn.get(link.to)!;
    const into = drawn.get(link.from)!;
    links.set(link.id, new Map(out));
    // A wire takes what it gives; a regulator takes its own current besides, and a switching one another share of the rest.
    const own = k === undefined ? 0 : solution.ownCurrent(link);
    const through = k === undefined ? 0 : solution.linkCurrents[k]!;
    const scale = k === undefined || through === 0 ? 1 : (solution.linkInputs[k]! - own) / through;
    for (const [circuit, amps] of out) add(into, circuit, amps * scale);
    add(into, link.id, own);
  }
  return { links, nodes: drawn };
}

/** What flows through each node of the supply tree, amperes: the books' sums without the books. */
export const flowsOf = (solution: Solution): ReadonlyMap<string, number> => (solution.sums ??= sumUp(solution));

function sumUp(solution: Solution): ReadonlyMap<string, number> {
  const { networks, links: numbered, project } = solution.circuitry;
  const flows = new Map<string, number>();
  const book = (node: string, amps: number): void => void flows.set(node, (flows.get(node) ?? 0) + amps);
  for (let n = 0; n < networks.length; n++) {
    const { fitted, currents } = solution.network(n);
    for (let b = 0; b < currents.length; b++) {
      book(fitted.plans[b]!.from, currents[b]!);
      book(fitted.plans[b]!.to, -currents[b]!);
    }
  }
  let k = numbered.length;
  for (let l = project.links.length - 1; l >= 0; l--) {
    const { from, to, kind } = project.links[l]!;
    if (kind === 'wire') book(from, flows.get(to) ?? 0);
    else book(from, solution.linkInputs[--k]!);
  }
  return flows;
}

/** What a pin's own branch carries for one that hangs on its node: +1 when their currents go the same way. */
export function along(through: BranchPlan, hanging: BranchPlan): 1 | -1 {
  const high = through.pin?.level === 'high';
  const leaves = hanging.from === (high ? through.to : through.from);
  return leaves === high ? 1 : -1;
}

/** The share that one of several joined pins has in what hangs on them; all of it where there is one pin. */
export function portionOf(
  plan: BranchPlan,
  branch: number,
  currents: readonly number[],
  plans: readonly BranchPlan[],
): number {
  if (plan.pin?.joined === undefined) return 1;
  let whole = 0;
  for (const k of plan.carries!) whole += along(plan, plans[k]!) * currents[k]!;
  return Math.abs(whole) < 1e-15 ? 1 / plan.pin.joined.length : currents[branch]! / whole;
}

/** Sum of shares, amperes. */
export const total = (shares: Shares | undefined): number => {
  let sum = 0;
  if (shares) for (const amps of shares.values()) sum += amps;
  return sum;
};
