/** A project with one thing in it different: for trying what a reading on the bench would be explained by. */
import type { BranchPlan, Member, NetworkPlan } from '../loads/branch-plan.js';
import type { Interval } from '../quantity/interval.js';
import type { Project } from './project.js';
import type { Link } from './tree-plan.js';

/** One figure of a project. */
export type FigureAt =
  | { readonly sort: 'part'; readonly part: string }
  | { readonly sort: 'node'; readonly id: string }
  | { readonly sort: 'link'; readonly id: string; readonly key: 'ohms' | 'volts' };

const exactly = (value: number): Interval => ({ min: value, typ: value, max: value });

const withNetworks = (project: Project, change: (b: BranchPlan, n: NetworkPlan) => BranchPlan): Project => ({
  ...project,
  networks: project.networks.map((n) => ({
    ...n,
    on: n.on.map((b) => change(b, n)),
    off: n.off.map((b) => change(b, n)),
  })),
});

/** The same project with one figure exactly of a value, SI. */
export function withFigure(project: Project, figure: FigureAt, value: number): Project {
  switch (figure.sort) {
    case 'part':
      return withPart(project, figure.part, (m) => {
        switch (m.kind) {
          case 'resistance':
          case 'pin':
            return { ...m, ohms: exactly(value) };
          case 'drop':
            return { ...m, volts: exactly(value) };
          case 'current':
          case 'filament':
            return { ...m, amps: exactly(value) };
          case 'power':
            return { kind: m.kind, part: m.part, ...(m.origin && { origin: m.origin }), watts: exactly(value) };
          case 'curve':
            return { ...m, points: m.points.map((p) => ({ ...p, volts: exactly(value) })) };
          case 'junction':
            return m;
          default:
            return m satisfies never;
        }
      });
    case 'node':
      return {
        ...project,
        nodes: project.nodes.map((n) => (n.id === figure.id ? { ...n, volts: exactly(value) } : n)),
      };
    case 'link':
      return {
        ...project,
        links: project.links.map((l): Link => (l.id === figure.id ? { ...l, [figure.key]: exactly(value) } : l)),
      };
    default:
      return figure satisfies never;
  }
}

/** The same project with a part changed wherever it stands. */
export function withPart(project: Project, part: string, change: (m: Member) => Member): Project {
  return withNetworks(project, (b) =>
    b.members.some((m) => m.part === part)
      ? { ...b, members: b.members.map((m) => (m.part === part ? change(m) : m)) }
      : b,
  );
}

/** The same project with some branches fed from another node. */
export const fedFrom = (project: Project, which: (b: BranchPlan) => boolean, from: string, to: string): Project =>
  withNetworks(project, (b) =>
    which(b) ? { ...b, from: b.from === from ? to : b.from, to: b.to === from ? to : b.to } : b,
  );
