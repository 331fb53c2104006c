/** Protects a pin, a supply and the part itself where nothing but the pin's own resistance limits a current. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find(judged: Judged): Finding[] {
  const { project } = judged.ledger;
  return project.circuits.flatMap((c): Finding[] =>
    (c.wiring.unlimited ?? []).map(({ part, pin }) => {
      const account = judged.accounts.find(
        (j) => j.account.id === (pin ?? c.id) && (j.account.draw?.max ?? 0) > 0,
      )?.account;
      return {
        rule: 'nothing-limits',
        family: 'pins',
        verdict: 'breach',
        about: c.id,
        path: c.path,
        ...(account && { account }),
        names: {
          part,
          ...(pin !== undefined && { pin: project.uses.find((u) => u.pin === pin)?.label ?? pin }),
          kind: c.type,
        },
        related: [],
      };
    }),
  );
}

export default { name: 'nothing-limits', family: 'pins', find } satisfies WiringRule;
