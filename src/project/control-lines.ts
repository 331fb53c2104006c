/** The lines that control expanders and arrays: signals from a pin, read by the levels of what they control. */
import type { Figures } from '../loads/figures.js';
import { isMapping } from '../loads/figures.js';
import { controlEnd } from '../loads/lines/signal.js';
import type { UsedBench } from './bench.js';
import type { Chip } from './chip.js';

const entries = (raw: unknown): [string, unknown][] => (isMapping(raw) ? Object.entries(raw) : []);

/** Those of an expander. */
export function controlLines(bench: UsedBench, id: string, raw: unknown, chip: Chip | undefined): void {
  if (!isMapping(raw) || chip === undefined) return;
  for (const [role, pin] of entries(raw['control']))
    bench.signalPin(pin, ['expanders', id, 'control', role], id, role, { supply: chip.rail, reader: chip.input(role) });
}

/** Those of an array whose channels are set over them. */
export function steeredArray(bench: UsedBench, id: string, raw: unknown, figures: Figures | undefined): void {
  if (!isMapping(raw) || figures === undefined) return;
  const supply = raw['supply'] === undefined ? undefined : bench.node(raw['supply'], ['arrays', id, 'supply']);
  const end = figures.flag('serial') ? controlEnd(figures, supply) : {};
  for (const [role, pin] of entries(raw['control']))
    bench.signalPin(pin, ['arrays', id, 'control', role], id, role, end);
}
