/** LEDs side by side behind one resistor do not share its current: the one of least forward voltage takes the most. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find(judged: Judged): Finding[] {
  const { project } = judged.ledger;
  return project.circuits.flatMap((c): Finding[] => {
    const many = c.wiring.sideBySide;
    if (many === undefined) return [];
    const account = judged.accounts.find(
      ({ account: a }) => a.id === c.id && a.kind === 'input' && a.direction === 'at-most' && a.quantity === 'current',
    )?.account;
    return [
      {
        rule: 'leds-share-resistor',
        family: 'parts',
        verdict: 'strain',
        about: c.id,
        path: c.path,
        ...(account && { account }),
        names: { many: String(many) },
        related: [],
      },
    ];
  });
}

export default { name: 'leds-share-resistor', family: 'parts', find } satisfies WiringRule;
