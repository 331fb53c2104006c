/** Protects a bridge: a diode across a load that is driven either way is a short in one of them. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.circuits.flatMap((c): Finding[] =>
    c.wiring.bridged && (c.wiring.clamp === 'fitted' || c.wiring.clamp === 'reversed')
      ? [
          {
            rule: 'clamp-on-bridge',
            family: 'drivers',
            verdict: 'breach',
            about: c.id,
            path: [...c.path, 'clamp'],
            names: {},
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'clamp-on-bridge', family: 'drivers', find } satisfies WiringRule;
