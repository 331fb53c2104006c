/**
 * What takes a constant power collapses together with its source where that cannot give so much: there is no rest then. A
 * source by itself gives the most at half of what it stands at with nothing drawn. Below that, what takes a constant power
 * is taken to draw no more, so that a rest is found and the books show by how much too much is asked. Where other loads
 * pull the source down there, it may find a rest below half as well: from the one so found it is followed down.
 */
import { isFalling } from '../loads/branch-plan.js';
import type { Circuitry } from './circuitry.js';
import type { FittedNetwork } from './fitted.js';
import type { FittedLink } from './fitted-links.js';
import type { Flows } from './network-flows.js';

/** Shares of what a source stands at: where it gives the most by itself, and how far down something is followed. */
export const MOST_AT = 0.5;
const FOLLOWED_TO = 0.1;

/** A node that something hangs on which takes more from less. */
export interface Converter {
  readonly node: number;
  /** Volts below which it takes no more. */
  readonly least: number;
}

export function convertersOf({
  links,
  networks,
  nodeIndex,
  open,
}: Pick<Circuitry, 'links' | 'networks' | 'nodeIndex' | 'open'>): readonly Converter[] {
  const nodes = new Set([
    ...links.flatMap(({ link, from }) => (link.kind === 'switching-regulator' ? [from] : [])),
    ...networks.flatMap(({ plan }) => [...plan.on, ...plan.off].filter(isFalling).map((b) => nodeIndex.get(b.from)!)),
  ]);
  return [...nodes].flatMap((node) => (open[node] ? [{ node, least: MOST_AT * open[node].min }] : []));
}

/** Whether anything gets so little that it takes no more. @param share of the volts at which that begins */
function isShort({ converters }: Circuitry, volts: readonly number[], share = 1): boolean {
  for (const { node, least } of converters) if (volts[node]! < share * least) return true;
  return false;
}

/** Whether anything may have a rest further down. */
export const mayFollow = (circuitry: Circuitry, volts: readonly number[]): boolean => isShort(circuitry, volts);

/** Whether anything that is followed down finds no rest: it would take no more where it got to. */
export function isSunk(circuitry: Circuitry, volts: readonly number[], flows: readonly (Flows | undefined)[]): boolean {
  const capped = ({ fitted, currents, conductances }: Flows): boolean =>
    fitted.plans.some((plan, k) => isFalling(plan) && currents[k]! > 0 && conductances[k] === 0);
  return isShort(circuitry, volts, FOLLOWED_TO / MOST_AT) || flows.some((each) => each !== undefined && capped(each));
}

const further = <T extends { readonly least: number }>(of: T): T => ({
  ...of,
  least: (of.least * FOLLOWED_TO) / MOST_AT,
});

/** Links whose regulators are followed further down. */
export const followedLinks = (links: readonly FittedLink[]): readonly FittedLink[] => links.map(further);

/** A network whose loads are. */
export function followedNetwork(fitted: FittedNetwork): FittedNetwork {
  if (!fitted.plans.some(isFalling)) return fitted;
  const edges = fitted.edges.map((edge) => {
    const { power } = edge.branch;
    return power === undefined ? edge : { ...edge, branch: { ...edge.branch, power: further(power) } };
  });
  return { ...fitted, edges };
}
