/** Channels of an array that nothing hangs on. */
import { isMapping } from '../loads/figures.js';

/** Number of the first channel of an array that is free, or undefined. @param channels how many it has */
export function freeChannel(data: unknown, array: string, channels: number): number | undefined {
  const loads = isMapping(data) && isMapping(data['loads']) ? Object.values(data['loads']) : [];
  const used = new Set(
    loads.flatMap((l) => {
      const driver = isMapping(l) ? l['driver'] : undefined;
      const named: unknown = isMapping(driver) ? driver['array'] : undefined;
      return (Array.isArray(named) ? named : [named]).map(String);
    }),
  );
  return Array.from({ length: channels }, (_, k) => k + 1).find((k) => !used.has(`${array}.${k}`));
}
