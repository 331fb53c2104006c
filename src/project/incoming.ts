/** The voltages that others put on our pins, each lowered to a line. */
import { Figures, isMapping } from '../loads/figures.js';
import { lowerIncoming } from '../loads/lines/incoming.js';
import type { LoweredLine } from '../loads/lines/line.js';
import type { Bench } from '../loads/lowering.js';
import type { Gathered } from './remarks.js';

export function lowerAllIncoming(raw: unknown, bench: Bench, remarks: Gathered): LoweredLine {
  const lines = Object.entries(isMapping(raw) ? raw : {}).flatMap(([id, entry]): LoweredLine[] => {
    if (!isMapping(entry)) return [];
    const path = ['incoming', id];
    return [
      lowerIncoming({ id, path, entry, figures: new Figures(id, path, [{ data: entry, path }], remarks), bench }),
    ];
  });
  return joined(lines);
}

/** Several lines as one list of each of their things. */
export const joined = (lines: readonly LoweredLine[]): LoweredLine => ({
  circuits: lines.flatMap((l) => l.circuits),
  networks: lines.flatMap((l) => l.networks),
  accounts: lines.flatMap((l) => l.accounts),
  ends: lines.flatMap((l) => l.ends),
  facts: lines.flatMap((l) => l.facts),
});
