/** LEDs that draw too much for themselves, their pin, its group or the chip get a larger series resistor. */
import type { CircuitPlan } from '../loads/circuit-plan.js';
import { nextAbove } from '../quantity/preferred.js';
import type { Case, Way } from './cures.js';
import { entryOf, figureIn, partText, toleranceIn } from './entries.js';
import type { Change, Cure } from './prove.js';

const RULES = new Set([
  ...['pin-current', 'group-current', 'total-current', 'load-current', 'nothing-limits', 'chip-heat'],
  'scan-stops',
]);
/** So much larger than the sum says: at the first try, and where that is not enough yet. */
const TRIES = [1, 1.15, 1.4, 1.8, 2.5];
/** Resistors to begin with where there is none, ohms: a few milliamperes at 3.3 or 5 V. */
const FIRST = [220, 330, 470, 680, 1000];

export const raiseSeries: Way = (of) => {
  const { finding, judgement, data } = of;
  if (!RULES.has(finding.rule)) return [];
  const owners = [...new Set(lampsOf(of).map((c) => c.owner))];
  if (owners.length === 0) return [];
  const kept = judgement.project.policy.current;
  const by = finding.by;
  // Current goes nearly as one over the resistance, or a little less.
  const factor = by ? by.draw / (by.value * (1 - kept)) : 1;
  return TRIES.flatMap((more, k): Cure[] => {
    const changes: Change[] = [];
    const words: string[] = [];
    for (const owner of owners) {
      const series = entryOf(data, 'loads', owner)?.['series'];
      const isPlain = typeof series === 'string' || typeof series === 'number';
      const raw = isPlain
        ? series
        : entryOf(data, 'loads', owner) && (series as { resistance?: unknown } | undefined)?.resistance;
      const now = figureIn(raw, 'resistance');
      if (now === undefined && series !== undefined) return [];
      const ohms = now === undefined || now <= 0 ? FIRST[k]! : nextAbove('E24', now * Math.max(factor, 1.02) * more);
      const text = `${partText(ohms, 'resistance')}${now === undefined ? ' ±5 %' : toleranceIn(raw)}`;
      changes.push({
        path: ['loads', owner, 'series', ...(isPlain || series === undefined ? [] : ['resistance'])],
        value: text,
      });
      words.push(`${text} in series with ${owner}`);
    }
    const account = finding.account;
    return [
      {
        title: `Put ${words.join(', ')}`,
        changes,
        parts: words.map((w) => w.replace(/ in series.*/, '')),
        steps: words.map((w) => `Fit ${w}, in place of what is there.`),
        watch: account ? [account.id] : [],
      },
    ];
  });
};

/** The LEDs that the finding is about: itself, or those that bring a sum about. */
function lampsOf({ finding, judgement }: Case): readonly CircuitPlan[] {
  const { circuits } = judgement.project;
  const named = new Set([
    finding.about,
    ...(finding.account?.entries ?? []).filter((e) => e.max > 1e-3).map((e) => e.circuit),
  ]);
  return circuits.filter((c) => named.has(c.id) && c.type === 'led' && c.wiring.by === 'pin');
}
