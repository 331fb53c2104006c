/** Each network with its figures put in, once for each lean and ambient that is asked for. */
import type { BranchPlan } from '../loads/branch-plan.js';
import type { Build } from './builds.js';
import type { NetworkIndex } from './circuitry.js';
import type { Ambient, AskedLean, Lean } from './corner.js';
import type { FittedNetwork } from './fitted.js';
import { buildBranch, fitBranch } from './fitted-branch.js';
import { TURNED, leaning } from './leaning.js';

const LEANS: readonly AskedLean[] = [
  ...(['low', 'typ', 'high', 'peak', 'second', 'starved', 'stalled', 'flooded', 'warm'] as const),
  ...(['calm', 'calm-starved'] as const),
  ...(['raised', 'lowered', 'pressed', 'loaded', 'braked', 'eased', 'idle', 'lifted', 'sunk'] as const),
];
const AMBIENTS = ['cold', 'typ', 'hot'] as const;

/**
 * The network in a state with its figures put in for a lean, a lean of the pins and an ambient; made once, then kept.
 *
 * @param turned branches that lean the other way
 */
export function fit(
  network: NetworkIndex,
  on: boolean,
  lean: AskedLean,
  pins: AskedLean,
  ambient: Ambient,
  celsius: number,
  turned?: ReadonlySet<BranchPlan>,
): FittedNetwork {
  const state = on ? network.on : network.off;
  const leans = (LEANS.indexOf(lean) * LEANS.length + LEANS.indexOf(pins)) * 3 + AMBIENTS.indexOf(ambient);
  const key = turned ? -1 - leans : leans;
  let fitted = state.fitted.get(key);
  if (fitted === undefined) {
    fitted = fitNetwork(
      network,
      on,
      (plan) => turnedOver(lean, plan, turned),
      pins,
      () => celsius,
    );
    state.fitted.set(key, fitted);
  }
  return fitted;
}

/** The lean of a branch, where some lean the other way. */
export const turnedOver = (
  lean: AskedLean,
  plan: BranchPlan,
  turned: ReadonlySet<BranchPlan> | undefined,
): AskedLean => (turned?.has(plan) ? (TURNED[lean as Lean] ?? lean) : lean);

/** The same where its circuits lean each its own way: a load in question beside others on the same pin. */
export function fitNetwork(
  network: NetworkIndex,
  on: boolean,
  leanOf: (branch: BranchPlan) => AskedLean,
  pins: AskedLean,
  celsiusOf: (branch: BranchPlan) => number,
  build?: Build,
): FittedNetwork {
  const { plans, branches, boundary } = on ? network.on : network.off;
  const fitted = branches.map((index) => {
    const { plan } = index;
    const lean = leaning(leanOf(plan), plan, on, network.inner);
    const celsius = celsiusOf(plan);
    if (build) return buildBranch(index, lean, build, celsius);
    return fitBranch(index, lean, leaning(pins, plan, on, network.inner), celsius);
  });
  return {
    plans,
    members: fitted.map((branch) => branch.members),
    boundary,
    inner: network.inner.size,
    edges: fitted.map((branch) => branch.edge),
  };
}

/** A fitted network with one resistance at another value, ohms; the network itself where it does not have the part. */
export function retuned(fitted: FittedNetwork, part: string, ohms: number): FittedNetwork {
  const b = fitted.members.findIndex((members) => members.some((m) => m.member.part === part));
  if (b < 0) return fitted;
  const old = fitted.members[b]!.find((m) => m.member.part === part)!;
  const { branch, ...ends } = fitted.edges[b]!;
  const edge = { ...ends, branch: { ...branch, resistance: branch.resistance + ohms - old.ohms } };
  const members = fitted.members[b]!.map((m) => (m === old ? { ...m, ohms } : m));
  return { ...fitted, edges: fitted.edges.with(b, edge), members: fitted.members.with(b, members) };
}
