/** Which supplies have their minus on a controller's ground. */
import type { Project } from './project.js';
import { beforeCables } from './same-node.js';

/** Whether a node's minus is a controller's ground: a rail of it, what powers it, or what feeds a load that a pin switches. */
export function hasControllersGround(project: Project, of: string): boolean {
  const node = beforeCables(project, of);
  const feeds = new Map(project.links.map((l) => [l.to, l.from]));
  const stands = (on: string): boolean => {
    for (let at: string | undefined = on; at !== undefined; at = feeds.get(at)) if (at === node) return true;
    return false;
  };
  const rails = project.nodes.filter((n) => n.kind === 'rail');
  return (
    rails.some((n) => n.id === node || stands(n.id)) ||
    project.circuits.some(
      ({ wiring: { by, supply, board } }) =>
        supply !== undefined &&
        (by === 'pin' || by === 'driver' || by === 'array' || (board !== undefined && board.coupling !== 'opto')) &&
        stands(supply),
    )
  );
}
