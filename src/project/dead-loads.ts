/** Loads whose supply nothing feeds. */
import type { Path } from '../source/place.js';
import type { Project } from './project.js';
import type { TreeFact } from './tree-plan.js';

export function deadLoads(circuits: Project['circuits'], alive: (id: string) => boolean): TreeFact[] {
  const facts = new Map<string, TreeFact>();
  for (const c of circuits) {
    const { supply, board } = c.wiring;
    const missing = board ? (board.coil ?? (board.jumper === 'fitted' ? board.logic : undefined)) : supply;
    const path: Path = ['loads', c.owner];
    if (board && missing === undefined)
      facts.set(c.owner, { kind: 'no-source', about: c.owner, path, with: { rail: 'coil supply' } });
    else if (board?.fedByLogic && board.logic === undefined && board.jumper === 'removed')
      facts.set(c.owner, { kind: 'no-source', about: c.owner, path, with: { rail: 'logic supply' } });
    else if (missing !== undefined && !alive(missing))
      facts.set(c.owner, { kind: 'no-source', about: c.owner, path, with: { rail: missing } });
  }
  return [...facts.values()];
}
