/**
 * The ways that conduct only while a supply is dead, put into a network: each leads off from a node of the tree, or from where
 * two parts of a branch meet, which becomes a node for that.
 */
import type { BranchPlan, DeadWay } from '../loads/branch-plan.js';
import { wired, yielding } from './loose-pins.js';

/** The name of the node that lies behind a part. */
const nodeAfter = (part: string): string => `${part}:behind`;

/** @param plans the branches of one state @param inner the network's own nodes, to which those are added that it takes */
export function withDeadWays(
  plans: readonly BranchPlan[],
  ways: readonly DeadWay[],
  inner: Set<string>,
): readonly BranchPlan[] {
  let all = plans;
  const leading = ways.flatMap(({ from, to, members, circuit }): BranchPlan[] => {
    if ('node' in from) return [{ from: from.node, to, circuit, members: members.map(yielding) }];
    const parted = partedAfter(all, from.after, inner);
    if (parted === undefined) return [];
    all = parted.plans;
    return [{ from: parted.node, to, circuit, members: wired(members.map(yielding), `${from.after}.lead`) }];
  });
  return [...all, ...leading];
}

/** The branches with the one that a part lies in cut in two behind it. */
function partedAfter(plans: readonly BranchPlan[], part: string, inner: Set<string>) {
  const number = plans.findIndex((b) => b.members.some((m) => m.part === part));
  const branch = plans[number];
  // What leads from a node back to it carries nothing: a pin at ground, with what hangs on it towards ground.
  if (branch === undefined || branch.from === branch.to) return undefined;
  const until = branch.members.findIndex((m) => m.part === part) + 1;
  const behind = branch.members.slice(until);
  if (behind.length === 0) return { plans, node: branch.to };
  const node = nodeAfter(part);
  inner.add(node);
  const { circuit } = branch;
  const first: BranchPlan = { ...branch, to: node, members: wired(branch.members.slice(0, until), `${part}.wire`) };
  const rest: BranchPlan = { from: node, to: branch.to, circuit, members: wired(behind, `${part}.rest`) };
  return { plans: [...plans.map((b, k) => (k === number ? first : b)), rest], node };
}
