/**
 * What pins push into a rail has to be taken by what hangs on it: a regulator gives, and takes nothing back. Where more comes
 * in than the rail draws at the least, it rises above its voltage, and everything on it with it.
 */
import { flowsOf } from '../../ledger/bookings.js';
import type { Corner } from '../../ledger/corner.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

/** Everything draws its least, on the lowest supplies, while what pushes from outside stands highest. */
const LEAST: readonly Corner[] = (['cold', 'hot'] as const).map((ambient) => ({
  ambient,
  sources: 'low',
  outputs: 'low',
  losses: 'high',
  load: 'low',
  control: 'low',
  rest: 'low',
}));

/** Amperes, all pins together, that are worth no more than the note a single pin is (rule 18 of the format). */
const LITTLE = 1e-4;

function find({ ledger: { project, solver }, accounts }: Judged): Finding[] {
  const pushed = accounts.filter(({ account: a }) => a.direction === 'injected' && a.entries.length > 0);
  if (pushed.length === 0) return [];
  // Every line that can be driven is, and nothing else is on.
  const on = Uint8Array.from(project.circuits, (c) => (c.always || c.signal ? 1 : 0));
  const clamped = new Set(project.networks.flatMap((n) => n.on.flatMap((b) => (b.line === 'clamp' ? [b.to] : []))));
  const rails = project.nodes.filter((n) => clamped.has(n.id));
  const least = new Map<string, number>();
  for (const corner of LEAST) {
    const flows = flowsOf(solver.solve({ moment: { mode: 'least', on }, corner, focus: solver.nobody }));
    for (const { id } of rails) least.set(id, Math.min(least.get(id) ?? Infinity, flows.get(id) ?? 0));
  }
  return rails.flatMap(({ id, path }): Finding[] => {
    const back = -(least.get(id) ?? 0);
    if (!(back > 0) || pushed.reduce((sum, { account: a }) => sum + a.draw!.max, 0) <= LITTLE) return [];
    return [
      {
        rule: 'rail-lifted',
        family: 'pins',
        verdict: 'strain',
        about: id,
        path,
        names: { amps: String(back), pins: String(pushed.length) },
        related: pushed.map(({ account: a }) => ({ path: a.path, name: a.id })),
      },
    ];
  });
}

export default { name: 'rail-lifted', family: 'pins', find } satisfies WiringRule;
