/** Pins that something else hangs on than before. */
import type { Project } from '../project/project.js';
import type { Rewired } from './rewiring.js';
import type { Setting } from './settings.js';

/** @param named what a name of the former project is called in the later one */
export function repinned(
  before: Project | undefined,
  after: Project | undefined,
  named: (id: string) => string,
): readonly Rewired[] {
  const [was, is] = [pinsOf(before, named), pinsOf(after, (id) => id)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((pin): Rewired[] => {
    const [b, a] = [was.get(pin)?.join(' and '), is.get(pin)?.join(' and ')];
    if (b === a) return [];
    const change = b === undefined ? 'added' : a === undefined ? 'removed' : 'changed';
    const setting: Setting = { path: '', ...(b !== undefined && { before: b }), ...(a !== undefined && { after: a }) };
    return [{ section: 'pins', name: pin, change, settings: [setting] }];
  });
}

function pinsOf(project: Project | undefined, named: (id: string) => string): ReadonlyMap<string, readonly string[]> {
  const users = new Map<string, Set<string>>();
  for (const { pin, by } of project?.uses ?? [])
    users.set(named(pin), (users.get(named(pin)) ?? new Set()).add(named(by)));
  return new Map([...users].map(([pin, by]) => [pin, [...by].sort()]));
}
