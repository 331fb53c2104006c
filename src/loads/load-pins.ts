/** The pins that switch a load, the node that feeds it, and the circuits that it is. */
import { isMapping } from './figures.js';
import type { LoadInput } from './lowering.js';

export interface Named {
  readonly name: string | readonly string[];
  readonly path: readonly (string | number)[];
}

/** Circuits of a load: one a pin, one a count, or the load itself. */
export function circuitNames(id: string, many: number): string[] {
  return many === 1 ? [id] : Array.from({ length: many }, (_, k) => `${id}.${k + 1}`);
}

/** The pins that switch a load, named at the load or at its driver, and whether they are a list: one circuit each. */
export function pinsOf({ entry, id, path, bench }: LoadInput): {
  readonly pins: readonly Named[];
  readonly listed: boolean;
} {
  const driver = isMapping(entry['driver']) ? entry['driver'] : {};
  const named = [
    { of: entry, at: path, keys: ['pins', 'pin', 'joined-pins'] },
    { of: driver, at: [...path, 'driver'], keys: ['pins', 'pin'] },
  ].flatMap(({ of, at, keys }) =>
    keys.flatMap((key) => (of[key] === undefined ? [] : [{ key, raw: of[key], at: [...at, key] }])),
  );
  const [first, second] = named;
  if (first === undefined) return { pins: [], listed: false };
  if (second !== undefined)
    bench.problem({
      path: second.at,
      on: 'key',
      says: `the pins of \`${id}\` are named twice`,
      expected: '`pin`, `pins` or `joined-pins` once: at the load, or at its driver',
    });
  if (first.key === 'joined-pins') {
    const names = bench.pinNames(first.raw, first.at).map((n) => n.name);
    return { pins: [{ name: names, path: first.at }], listed: false };
  }
  return { pins: bench.pinNames(first.raw, first.at), listed: first.key === 'pins' };
}

/** The node that a load says feeds it, or that its bridge does. */
export function feedOf({ entry, path, bench }: LoadInput): Named | undefined {
  const driver = entry['driver'];
  if (entry['supply'] !== undefined) return { name: String(entry['supply']), path: [...path, 'supply'] };
  if (!isMapping(driver) || driver['supply'] === undefined || bench.driverType(driver) !== 'h-bridge') return undefined;
  return { name: String(driver['supply']), path: [...path, 'driver', 'supply'] };
}
