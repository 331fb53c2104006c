/** A load that nothing of ours switches: on whenever its supply is. */
import type { Hanging } from './hanging.js';
import type { Lowered } from './lowering.js';
import type { BranchPlan } from './branch-plan.js';
import { GROUND } from './branch-plan.js';

export function alwaysOn(
  { input, content, circuit, members, clamp, base, common, own }: Hanging,
  supply: string,
): Lowered {
  const elsewhere = input.entry['switched'] === 'elsewhere';
  const on: BranchPlan = { from: supply, to: GROUND, members, circuit };
  const off = content.idle && { ...on, members: content.idle(circuit) };
  const bare = !content.limitsItself && !members.some((m) => m.kind === 'resistance');
  return {
    circuits: [
      {
        ...base,
        always: !elsewhere && content.idle === undefined,
        wiring: {
          ...common,
          by: 'nothing',
          supply,
          ...(clamp?.wiring ?? { clamp: 'not-needed' }),
          ...(bare && { unlimited: [{ part: content.part(circuit) }] }),
        },
      },
    ],
    networks: [
      { id: circuit, circuits: [circuit], side: 'load', inner: [], hooks: [], on: [on], off: off ? [off] : [] },
    ],
    accounts: [...own(supply), ...(clamp?.accounts ?? [])],
  };
}
