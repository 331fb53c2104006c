/** Which supplies and regulators can stand at another end than all else in a question about some circuits, and where. */
import type { LineEnds } from '../loads/account-plan.js';
import type { BranchPlan, NetworkPlan } from '../loads/branch-plan.js';
import type { Project } from '../project/project.js';
import type { Circuitry } from './circuitry.js';
import type { Apart, Corner, End, Ends } from './corner.js';
import { opposite } from './corner.js';

/** For each node of the supply tree the supplies and regulators that feed it. */
export type Feeds = ReadonlyMap<string, ReadonlySet<string>>;

export function upstream({ project }: Circuitry): Feeds {
  const feeds = new Map<string, Set<string>>();
  for (const node of project.nodes) feeds.set(node.id, new Set(node.volts ? [node.id] : []));
  // Wires have nothing of their own that could pull anywhere.
  for (const link of project.links)
    feeds.set(link.to, new Set([...(feeds.get(link.from) ?? []), ...(link.kind === 'wire' ? [] : [link.id])]));
  return feeds;
}

/** What feeds one end of a line and not the other. */
export function endsOf({ from, at, below }: LineEnds, feeds: Feeds): Ends {
  const pushing = new Set(from.flatMap((node) => [...feeds.get(node)!]));
  const receiving = feeds.get(at)!;
  return {
    from: [...pushing].filter((id) => !receiving.has(id)),
    at: [...receiving].filter((id) => !pushing.has(id)),
    below: below === true,
  };
}

const isControl = (plan: NetworkPlan, { circuit }: BranchPlan): boolean =>
  plan.controls ? plan.controls.has(circuit) : plan.side === 'control';

/** Whether something hangs in a circuit's networks beside it that another supply or regulator feeds. */
export function isMixed(
  { networks, networksOf, project }: Circuitry,
  circuits: readonly number[],
  feeds: Feeds,
): boolean {
  const own = new Set(circuits.map((c) => project.circuits[c]!.id));
  const fedBy = (branches: readonly BranchPlan[]): Set<string> =>
    new Set(branches.flatMap(({ from, to }) => [...(feeds.get(from) ?? []), ...(feeds.get(to) ?? [])]));
  return circuits.some((c) =>
    networksOf[c]!.some((n) => {
      const { on, off, circuits: switching } = networks[n]!;
      if (switching.length < 2) return false;
      const branches = [...on.plans, ...off.plans].filter((b) => b.pin === undefined);
      const ours = fedBy(branches.filter((b) => own.has(b.circuit)));
      const theirs = fedBy(branches.filter((b) => !own.has(b.circuit)));
      return ours.size !== theirs.size || [...ours].some((id) => !theirs.has(id));
    }),
  );
}

/** A corner, and those in which regulators' outputs stand at one end and what feeds them at the other. */
export function crossed({ links }: Project, corner: Corner): readonly Corner[] {
  const regulated = (end: End): ReadonlyMap<string, End> =>
    new Map([...links.flatMap((l) => (l.volts ? [[l.id, end] as const] : [])), ...(corner.apart ?? [])]);
  const other = opposite(corner.sources);
  return [
    corner,
    { ...corner, apart: regulated(other) },
    {
      ...corner,
      sources: other,
      losses: opposite(corner.losses),
      rest: corner.rest === 'low' ? 'high' : 'low',
      apart: regulated(corner.sources),
    },
  ];
}

/** Supplies and regulators before the rails alone that some networks feed backwards. */
export function tornBy(
  { feeders, networks, project }: Circuitry,
  numbers: readonly number[],
  feeds: Feeds,
): readonly string[] {
  if (feeders.size === 0) return [];
  const own = numbers.flatMap((n) => [...networks[n]!.plan.on, ...networks[n]!.plan.off].filter((b) => feeders.has(b)));
  // Losses are tried at either end anyhow.
  const losses = new Set(project.links.flatMap((l) => (l.volts === undefined ? [l.id] : [])));
  return own.flatMap(({ from, to }) =>
    [...feeds.get(to)!].filter((id) => !feeds.get(from)!.has(id) && !losses.has(id)),
  );
}

/** A corner in which these stand at the other end than all else. */
export const partedBy = (ids: readonly string[], corner: Corner): Corner => ({
  ...corner,
  follows: true,
  apart: new Map([...(corner.apart ?? []), ...ids.map((id) => [id, opposite(corner.sources)] as const)]),
});

/** Supplies and regulators that feed a circuit's pins alone, or its control side alone. */
export function pullingApart(
  circuitry: Circuitry,
  circuits: readonly number[],
  feeds: Feeds,
  contacts: boolean,
): Apart {
  const [pins, control, load] = [new Set<string>(), new Set<string>(), new Set<string>()];
  const own = new Set(circuits.map((c) => circuitry.project.circuits[c]!.id));
  for (const c of circuits)
    for (const n of circuitry.networksOf[c]!) {
      const { on, off, plan } = circuitry.networks[n]!;
      if ((plan.contact === true) !== contacts) continue;
      const branches = [...on.plans, ...off.plans];
      const railOf = (b: BranchPlan): string | undefined => b.pin && (b.pin.outward === 1 ? b.from : b.to);
      const rails = new Set(branches.map(railOf));
      for (const branch of branches) {
        const rail = railOf(branch);
        // What else hangs on the pin is none of theirs.
        if (rail === undefined && !own.has(branch.circuit)) continue;
        // A pull-up belongs to its pin: it ends where the pin's own rail does.
        if (
          feeds.has(branch.from) &&
          rails.has(branch.from) &&
          branch.members.every((m) => m.kind === 'resistance' && (!m.load || isControl(plan, branch)))
        ) {
          pins.add(branch.from);
          continue;
        }
        for (const node of [branch.from, branch.to])
          if (feeds.has(node)) (node === rail ? pins : isControl(plan, branch) ? control : load).add(node);
      }
    }
  const fed = (nodes: Iterable<string>): string[] => [...new Set([...nodes].flatMap((node) => [...feeds.get(node)!]))];
  const less = (ids: readonly string[], others: readonly string[]): string[] =>
    ids.filter((id) => !others.includes(id));
  return {
    pins: less(fed(pins), fed([...control, ...load])),
    control: less(fed(control), fed([...pins, ...load])),
    both: less(fed(pins), fed(load)).filter((id) => fed(control).includes(id)),
  };
}
