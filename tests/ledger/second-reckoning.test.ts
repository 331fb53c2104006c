/**
 * The ledger's solver against a second reckoning that shares nothing with it but the laws of parts: bisected branches, and a
 * supply tree gone over until nothing moves. Both are given the same corner, every figure at an end.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Corner } from '../../src/ledger/corner.js';
import { solver } from '../../src/ledger/solver.js';
import { isFalling } from '../../src/loads/branch-plan.js';
import type { Project } from '../../src/project/project.js';
import { projectOf, projects } from '../properties/projects.js';
import { reckon } from '../properties/reckoning.js';
import { sized } from '../sizes.js';

/** Share of a current, or volts, that the two may differ by. */
const ROOM = 1e-8;
/** Amperes below which currents are those of junctions that are off. */
const TRACE = 1e-6;

type End = 'low' | 'high';

/** Where in its range each figure of a project lies in a corner in which everything leans one way. */
function sharesIn(project: Project, { ambient, sources, outputs, losses, rest }: Corner): (figure: string) => number {
  const up = (end: string): number => (end === 'high' || end === 'hot' ? 1 : 0);
  const shares = new Map<string, number>([['ambient', up(ambient)]]);
  for (const n of project.nodes) shares.set(`${n.id} volts`, up(sources));
  for (const l of project.links) {
    for (const key of ['ohms', 'law', 'dropout']) shares.set(`${l.id} ${key}`, up(losses));
    shares.set(`${l.id} volts`, up(outputs));
    shares.set(`${l.id} quiescent`, up(rest));
    shares.set(`${l.id} efficiency`, 1 - up(rest));
  }
  for (const network of project.networks)
    for (const branch of [...network.on, ...network.off])
      for (const m of branch.members) {
        const name = m.kind === 'pin' ? `${m.part.slice(0, m.part.indexOf('.'))} pins ${branch.pin!.level}` : m.part;
        const draws = m.kind === 'current' || m.kind === 'filament' || m.kind === 'power';
        // Losses before a constant power make it draw more.
        shares.set(name, draws || isFalling(branch) ? up(rest) : 1 - up(rest));
      }
  return (figure) => {
    const share = shares.get(figure);
    if (share === undefined) throw new Error(`the corner says nothing of '${figure}'`);
    return share;
  };
}

const ends = fc.constantFrom<End>('low', 'high');
const corners = fc
  .record({
    ambient: fc.constantFrom<'cold' | 'hot'>('cold', 'hot'),
    sources: ends,
    outputs: ends,
    losses: ends,
    rest: ends,
  })
  .map((c): Corner => ({ ...c, load: c.rest, control: c.rest }));

/** Parts that stand in several networks. */
function inSeveral({ networks }: Project): ReadonlySet<string> {
  const parts = networks.flatMap((n) => [...new Set([...n.on, ...n.off].flatMap((b) => b.members.map((m) => m.part)))]);
  return new Set(parts.filter((part, k) => parts.indexOf(part) !== k));
}

test('a second reckoning finds the same currents through every part and the same volts at every node', () => {
  fc.assert(
    fc.property(projects(), corners, fc.infiniteStream(fc.boolean()), (data, corner, states) => {
      const project = projectOf(data);
      const bench = solver(project);
      const on = Uint8Array.from(project.circuits, (c) => (c.always || states.next().value ? 1 : 0));
      const told = bench.solve({ moment: { mode: 'any', on }, corner, focus: bench.nobody });
      const lit = new Set(project.circuits.flatMap((c, k) => (on[k] === 1 ? [c.id] : [])));
      const manifold = inSeveral(project);
      const again = reckon(project, lit, { share: sharesIn(project, corner) });
      for (const { id } of project.nodes) expect(Math.abs(told.voltage(id) - again.voltage(id)), id).toBeLessThan(ROOM);
      // By branch: a pin that digits of a display take turns at stands in a network of each.
      project.networks.forEach(({ on: lit, off }, n) => {
        const { currents } = told.network(n);
        again.nets[n]!.lines.forEach(({ plan, amps }, k) => {
          const what = plan.members.map((m) => m.part).join();
          expect(Math.abs(currents[k]! - amps), what).toBeLessThan(
            ROOM * Math.max(Math.abs(currents[k]!), TRACE) + 1e-12,
          );
        });
        for (const part of new Set([...lit, ...off].flatMap((b) => b.members.map((m) => m.part)))) {
          if (manifold.has(part)) continue;
          const [a, b] = [told.current(part), again.current(part)];
          expect(Math.abs(a - b), part).toBeLessThan(ROOM * Math.max(Math.abs(a), TRACE) + 1e-12);
          // Next to no current says next to nothing of a junction's voltage.
          if (Math.abs(a) > TRACE) expect(Math.abs(told.across(part) - again.across(part)), part).toBeLessThan(ROOM);
        }
      });
    }),
    { numRuns: sized(200, 4000) },
  );
});
