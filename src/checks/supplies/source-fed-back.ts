/** A source into which current is pushed back, where it does not bear that. */
import { flowsOf } from '../../ledger/bookings.js';
import type { Corner } from '../../ledger/corner.js';
import type { Solution } from '../../ledger/solution.js';
import type { Link, TreeNode } from '../../project/tree-plan.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

/** Amperes that are worth no more than the note an injected current is (rule 18 of the format). */
const LITTLE = 1e-4;

/** What hangs on a source draws its least, with all supplies low or high. */
const LEAST: readonly Corner[] = (['low', 'high'] as const).flatMap((sources) =>
  (['cold', 'hot'] as const).map((ambient): Corner => ({
    ambient,
    sources,
    outputs: sources,
    losses: 'high',
    load: 'low',
    control: 'low',
    rest: 'low',
  })),
);

function find({ ledger: { project, solver } }: Judged): Finding[] {
  const sources = [...project.nodes, ...project.links].filter((source) => source.reverse === 'not-allowed');
  if (sources.length === 0) return [];
  // A clamp leads into a source while its circuit is off, a driver while it is on.
  const moments = [solver.resting, Uint8Array.from(project.circuits, () => 1)];
  const solutions = LEAST.flatMap((corner) =>
    moments.map((on) => solver.solve({ moment: { mode: 'least', on }, corner, focus: solver.nobody })),
  );
  const given = (s: Solution, source: TreeNode | Link): number =>
    ('from' in source ? s.currentOf(source) : flowsOf(s).get(source.id)) ?? 0;
  return sources.flatMap((source): Finding[] => {
    const { id, path, title } = source;
    const back = Math.max(...solutions.map((s) => -given(s, source) - injected(s)));
    if (!(back > LITTLE)) return [];
    const names = { amps: String(back), title };
    return [{ rule: 'source-fed-back', family: 'supplies', verdict: 'breach', about: id, path, names, related: [] }];
  });
}

/** Amperes that come in through the clamps of pins: what they do to a rail is a finding of its own. */
function injected(s: Solution): number {
  let amps = 0;
  for (let n = 0; n < s.circuitry.networks.length; n++) {
    const { fitted, currents } = s.network(n);
    fitted.plans.forEach((plan, b) => (amps += plan.line === 'clamp' ? Math.max(currents[b]!, 0) : 0));
  }
  return amps;
}

export default { name: 'source-fed-back', family: 'supplies', find } satisfies WiringRule;
