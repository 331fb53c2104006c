/** One more of a load: its entry copied under a name of its own, on a pin or channel that is free, and on when the first is. */
import { isMapping } from '../loads/figures.js';
import type { CircuitPlan } from '../loads/circuit-plan.js';
import type { PinFact } from '../project/pin-plan.js';
import type { Project } from '../project/project.js';
import type { Change } from '../remedies/prove.js';

type Raw = Readonly<Record<string, unknown>>;

/** What a load takes up one by one, so that a copy needs another: a pin, a channel of an array, or nothing. */
export type Needs =
  | { readonly kind: 'pin'; readonly owner: string }
  | { readonly kind: 'channel'; readonly array: string; readonly pin: string | undefined }
  | { readonly kind: 'nothing' };

/** A load that more is asked of, taken apart. */
export interface Original {
  readonly circuit: CircuitPlan;
  readonly entry: Raw;
  readonly needs: Needs;
}

/** The load of a circuit's or a load's name, or undefined when there is none of that name. */
export function originalOf(project: Project, data: unknown, name: string): Original | undefined {
  const circuit = project.circuits.find((c) => c.id === name) ?? project.circuits.find((c) => c.owner === name);
  const loads = isMapping(data) ? data['loads'] : undefined;
  const entry = circuit && isMapping(loads) ? loads[circuit.owner] : undefined;
  if (circuit === undefined || !isMapping(entry)) return undefined;
  const driver = entry['driver'];
  const pin = circuit.wiring.pin;
  const owner = project.uses.some((u) => u.pin === pin) ? pin!.slice(0, pin!.lastIndexOf('.')) : undefined;
  if (isMapping(driver) && typeof driver['array'] === 'string')
    return { circuit, entry, needs: { kind: 'channel', array: driver['array'].split('.')[0]!, pin: owner } };
  return { circuit, entry, needs: owner === undefined ? { kind: 'nothing' } : { kind: 'pin', owner } };
}

/** The free pins that a copy could hang on, one of each sort: those that count in the same sums are as good as each other. */
export function freePins(project: Project, owner: string): readonly PinFact[] {
  const used = new Set(project.uses.map((u) => u.pin));
  const free = project.pins.filter((p) => p.owner === owner && !p.reserved && !p.inputOnly && !used.has(p.id));
  const sorts = new Map<string, PinFact>();
  for (const pin of free) {
    const sort = pin.sums.join('|');
    if (!sorts.has(sort)) sorts.set(sort, pin);
  }
  return [...sorts.values()];
}

/** Keys that say where a load hangs, which a copy must say anew. */
const OWN = new Set(['pin', 'pins', 'inputs', 'signals', 'joined-pins', 'count', 'note']);

/** The changes that add a copy. @param at the pin it hangs on, where it needs one @param channel of its array */
export function oneMore(
  data: unknown,
  project: Project,
  original: Original,
  name: string,
  at: string | undefined,
  channel: number | undefined,
): readonly Change[] {
  const { circuit, entry, needs } = original;
  const kept = Object.fromEntries(Object.entries(entry).filter(([key]) => !OWN.has(key)));
  const driver = isMapping(entry['driver']) ? entry['driver'] : undefined;
  const copy: Record<string, unknown> = { ...kept };
  if (circuit.type === 'relay-board') {
    copy['channels'] = 1;
    copy['inputs'] = { 1: inputLike(entry['inputs'], circuit, at) };
  } else if (driver !== undefined) {
    const { pins: _, ...rest } = driver;
    copy['driver'] = {
      ...rest,
      ...(at !== undefined && { pin: at }),
      ...(needs.kind === 'channel' && { array: `${needs.array}.${channel}` }),
    };
  } else if (at !== undefined) copy['pin'] = at;
  const modes = isMapping(data) && isMapping(data['modes']) ? data['modes'] : {};
  const active = project.modes
    .filter((m) => m.active.has(circuit.id))
    .flatMap(({ name: mode }): Change[] => {
      const raw = modes[mode];
      const list: unknown = isMapping(raw) ? raw['active'] : undefined;
      return [{ path: ['modes', mode, 'active'], value: [...(Array.isArray(list) ? list : [list]), name] }];
    });
  // Where no mode names the first, it is on in all of them, and so is the copy.
  return [{ path: ['loads', name], value: copy }, ...active];
}

/** An input of a relay board like that of the channel, on another pin. */
function inputLike(inputs: unknown, circuit: CircuitPlan, at: string | undefined): unknown {
  const number = circuit.id.slice(circuit.owner.length + 1);
  const raw = isMapping(inputs) ? inputs[number] : undefined;
  return isMapping(raw) ? { ...raw, pin: at } : at;
}

/** The names that copies get: 'vents-more-1' and so on. */
export const copyName = (circuit: CircuitPlan, number: number): string => `${circuit.owner}-more-${number}`;
