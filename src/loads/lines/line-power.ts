/** Heat in the resistors of a line. Where a resistor could never come to a tenth of what it bears, nothing is opened. */
import type { Interval } from '../../quantity/interval.js';
import type { Figures } from '../figures.js';
import type { Bench } from '../lowering.js';
import type { AccountPlan, LineEnds } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import { USUAL_POWER, resistorBears, resistorPower } from '../resistor-power.js';

interface Line {
  readonly ends: LineEnds;
  readonly circuit: string;
  readonly path: readonly (string | number)[];
}

export function linePower(
  { figures, bench }: { readonly figures: Figures; readonly bench: Bench },
  series: readonly Member[],
  holders: readonly { readonly part: string; readonly ohms: Interval }[],
  nodes: readonly string[],
  { ends, circuit, path }: Line,
): AccountPlan[] {
  const volts = Math.max(0, ...nodes.flatMap((n) => [Math.abs(bench.window(n).max), Math.abs(bench.window(n).min)]));
  const resistors = [
    ...series.flatMap((m) => (m.kind === 'resistance' && m.part.endsWith('.series') ? [m] : [])),
    ...holders.filter((h) => !h.part.endsWith('.pull')),
  ];
  return resistors.flatMap(({ part, ohms }): AccountPlan[] => {
    if (volts ** 2 / ohms.min < USUAL_POWER / 10) return [];
    const limit = resistorBears(figures, `the resistor ${part}`);
    return [
      {
        ...resistorPower(part, circuit, path, limit, ohms),
        recipes: ['loaded', 'idle', 'braked', 'pressed', 'eased'],
        line: ends,
      },
    ];
  });
}
