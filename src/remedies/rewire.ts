/** Wires of the file follow a load to its new supply: one that led to it from where nothing feeds it any more begins there now. */
import { isMapping } from '../loads/figures.js';
import type { Project } from '../project/project.js';
import type { Change } from './prove.js';

/**
 * The changes to `wires`. A wire that others share loses the load, and the load is taken to sit right at its supply.
 *
 * @param owner the load that is fed anew @param feeds nodes that feed it now, the one that its wires come from first
 */
export function rewired(data: unknown, project: Project, owner: string, feeds: readonly string[]): readonly Change[] {
  const wires = isMapping(data) && Array.isArray(data['wires']) ? (data['wires'] as readonly unknown[]) : [];
  const isOwner = (name: unknown): boolean => String(name).toLowerCase() === owner.toLowerCase();
  return wires.flatMap((raw, k): Change[] => {
    if (!isMapping(raw)) return [];
    const to: readonly unknown[] = Array.isArray(raw['to']) ? raw['to'] : [raw['to']];
    const link = project.links.find((l) => l.kind === 'cable' && l.path[0] === 'wires' && l.path[1] === k);
    if (!to.some(isOwner) || link === undefined || feeds.includes(link.from)) return [];
    const others = to.filter((name) => !isOwner(name));
    return others.length > 0
      ? [{ path: ['wires', k, 'to'], value: others }]
      : [{ path: ['wires', k, 'from'], value: feeds[0] }];
  });
}

/** The longest wire of the file that leads to a load, metres one way; undefined when none states a length. */
export function lengthTo(project: Project, data: unknown, owner: string): number | undefined {
  const wires = isMapping(data) && Array.isArray(data['wires']) ? (data['wires'] as readonly unknown[]) : [];
  const lengths = project.links.flatMap((l) => {
    const raw = l.kind === 'cable' && l.path[0] === 'wires' ? wires[Number(l.path[1])] : undefined;
    const to: readonly unknown[] = isMapping(raw) ? (Array.isArray(raw['to']) ? raw['to'] : [raw['to']]) : [];
    return to.some((name) => String(name) === owner) && l.copper ? [l.copper.length.max] : [];
  });
  return lengths.length === 0 ? undefined : Math.max(...lengths);
}
