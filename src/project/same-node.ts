/** Nodes that wires join are one supply, whatever the wire's own resistance: a rail fed straight from a supply is that supply. */
import type { Project } from './project.js';

/** The node at the head of the wires that lead to one. */
export function headOf(project: Pick<Project, 'links'>, id: string): string {
  const wire = project.links.find((l) => (l.kind === 'wire' || l.kind === 'cable') && l.to === id);
  return wire === undefined ? id : headOf(project, wire.from);
}

/** The supply or rail that something is fed from: the node before the cables of the file that lead to it. */
export function beforeCables(project: Pick<Project, 'links'>, id: string): string {
  const cable = project.links.find((l) => l.kind === 'cable' && l.to === id);
  return cable === undefined ? id : beforeCables(project, cable.from);
}

export const sameNode = (project: Pick<Project, 'links'>, a: string, b: string): boolean =>
  headOf(project, a) === headOf(project, b);
