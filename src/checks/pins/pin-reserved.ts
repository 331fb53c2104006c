/** A pin that the board uses for something of its own may be taken, but the two will be in each other's way. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  return project.uses.flatMap((u): Finding[] =>
    u.reserved === undefined
      ? []
      : [
          {
            rule: 'pin-reserved',
            family: 'pins',
            verdict: 'strain',
            about: u.by,
            path: u.path,
            names: { pin: u.label, why: u.reserved },
            related: [],
          },
        ],
  );
}

export default { name: 'pin-reserved', family: 'pins', find } satisfies WiringRule;
