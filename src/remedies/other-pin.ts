/** What hangs on a pin that is taken, reserved, no output or in a full group moves to one that is free. */
import type { PinUse } from '../project/pin-plan.js';
import type { Case, Way } from './cures.js';
import { valueAt } from './entries.js';
import type { Cure } from './prove.js';

const RULES = new Set(['pin-used-twice', 'pin-reserved', 'pin-input-only', 'group-current', 'two-outputs']);

export const otherPin: Way = (of) => {
  const { finding, judgement } = of;
  if (!RULES.has(finding.rule)) return [];
  const use = useToMove(of);
  if (use === undefined) return [];
  const { project } = judgement;
  const used = new Set(project.uses.map((u) => u.pin));
  const owner = use.pin.slice(0, use.pin.lastIndexOf('.'));
  const full = new Set(
    finding.rule === 'group-current' ? (project.pins.find((p) => p.id === use.pin)?.sums ?? []) : [],
  );
  const sorts = new Map<string, { readonly label: string }>();
  for (const p of project.pins)
    if (p.owner === owner && !p.reserved && !p.inputOnly && !used.has(p.id) && !p.sums.some((s) => full.has(s)))
      if (!sorts.has(p.sums.join())) sorts.set(p.sums.join(), p);
  return [...sorts.values()].map(({ label }): Cure => ({
    title: `Move ${use.by} from ${use.label} to ${label}`,
    changes: [{ path: use.path, value: label }],
    parts: [],
    steps: [`Take ${use.by} off ${use.label} and put it on ${label}; change the pin in the firmware, too.`],
    watch: [`${owner}.${label.slice(label.lastIndexOf('.') + 1)}`],
  }));
};

/** Of the uses that the finding is about, the last whose pin is written by itself, so that it can be written anew. */
function useToMove({ finding, judgement, data }: Case): PinUse | undefined {
  const { uses, circuits } = judgement.project;
  const entries = finding.account?.entries ?? [];
  const most = entries.find((e) => circuits.some((c) => c.id === e.circuit && c.wiring.by === 'pin'))?.circuit;
  const concerned = uses.filter((u) =>
    finding.rule === 'group-current' ? u.by === most : u.label === finding.names['pin'] || u.pin === finding.about,
  );
  return concerned.findLast((u) => {
    const written: unknown = valueAt(data, u.path);
    return typeof written === 'string' && !written.includes('..') && !written.includes('*');
  });
}
