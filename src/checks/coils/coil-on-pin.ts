/**
 * Protects a pin from a winding hung on it: its current, and the voltage it throws when it is switched off. A breach, and
 * only a strain when it is clamped and inside the pin's characterised current with the policy's margin; never silent.
 */
import { windingOf } from './winding.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

function find(judged: Judged): Finding[] {
  const { project } = judged.ledger;
  return project.circuits.flatMap((c): Finding[] => {
    const { wiring } = c;
    if (!wiring.bare || wiring.pin === undefined) return [];
    const use = project.uses.find((u) => u.pin === wiring.pin && u.by === c.id);
    const on = judged.accounts.filter((j) => j.account.id === wiring.pin && j.account.kind === 'pin');
    const carrying = on.reduce<(typeof on)[number] | undefined>(
      (a, b) => (a === undefined || (b.account.draw?.max ?? 0) > (a.account.draw?.max ?? 0) ? b : a),
      undefined,
    );
    const inside = carrying?.account.limits.filter((m) => m.limit.grade === 'characterised') ?? [];
    const modest = inside.length > 0 && inside.every((m) => m.left >= project.policy.current);
    return [
      {
        rule: 'coil-on-pin',
        family: 'coils',
        verdict: modest && wiring.clamp === 'fitted' ? 'strain' : 'breach',
        about: c.id,
        path: use?.path ?? c.path,
        ...(carrying && { account: carrying.account }),
        ...(carrying?.by && { by: carrying.by }),
        names: {
          winding: windingOf(c.type),
          pin: use?.label ?? wiring.pin,
          clamp: wiring.clamp,
        },
        related: [],
      },
    ];
  });
}

export default { name: 'coil-on-pin', family: 'coils', find } satisfies WiringRule;
