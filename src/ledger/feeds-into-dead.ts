/** What flows into the nodes of a dead supply from what lives, by who brings it, as sentences and sums name it. */
import type { Step } from '../loads/account-plan.js';
import { clampOf } from '../loads/lines/line.js';
import type { Afloat } from '../project/afloat.js';
import type { Project } from '../project/project.js';
import { LITTLE } from './dead-corners.js';
import type { Solution } from './solution.js';

/** A way in, and what it brings. */
export interface FeedIn {
  /** A pin, an input, a channel of an array, else the circuit. */
  readonly name: string;
  readonly circuit: string;
  readonly amps: number;
  /** Nobody publishes the junction that is the way. */
  readonly assumed: boolean;
}

/** A node and all that it feeds. */
export function behind({ links }: Pick<Project, 'links'>, top: string): ReadonlySet<string> {
  const found = new Set([top]);
  // Upstream first.
  for (const { from, to } of links) if (found.has(from)) found.add(to);
  return found;
}

/** What flows into some nodes from what lives, largest first. */
export function feedsInto(s: Solution, { ways }: Afloat, nodes: ReadonlySet<string>): readonly FeedIn[] {
  const { project, networks } = s.circuitry;
  const feeds = new Map<string, FeedIn>();
  networks.forEach(({ plan }, n) => {
    if (!plan.circuits.some((c) => ways.has(c))) return;
    const { fitted, currents } = s.network(n);
    fitted.plans.forEach(({ from, to, members, circuit }, k) => {
      const amps = nodes.has(from) === nodes.has(to) ? 0 : nodes.has(to) ? currents[k]! : -currents[k]!;
      if (amps <= LITTLE) return;
      const { name, assumed } = told(project, members[0]!.part, circuit);
      feeds.set(name, { name, circuit, assumed, amps: (feeds.get(name)?.amps ?? 0) + amps });
    });
  });
  return [...feeds.values()].sort((a, b) => b.amps - a.amps);
}

/** A way into a rail as sentences say it: an input, a pin, else the circuit. */
function told({ ends, pins, circuits }: Project, part: string, circuit: string): Pick<FeedIn, 'name' | 'assumed'> {
  const end = ends.find((e) => clampOf(e) === part || part === `${e.about}.clamp`);
  if (end) return { name: end.told, assumed: end.assumed === true };
  const pin = pins.find((p) => p.id === part);
  const channels = circuits.find((c) => c.id === circuit)?.wiring.channels ?? [];
  // The line of a bus goes by its pin.
  const bus = pins.find((p) => p.id === circuit);
  const driver = part.endsWith('.base-collector')
    ? `the driver of ${circuit}`
    : bus
      ? `the line at pin ${bus.label}`
      : circuit;
  const other = channels.length > 0 ? `channel ${channels.join(' and ')}` : driver;
  return { name: pin ? `pin ${pin.label}` : other, assumed: false };
}

/** Amperes of all of them. */
export const sumOf = (feeds: readonly FeedIn[]): number => feeds.reduce((sum, f) => sum + f.amps, 0);

/** The sum of what comes in. */
export const stepOf = (feeds: readonly FeedIn[]): Step => ({
  name: 'I',
  says: `what comes in, by ${feeds.map((f) => f.name).join(', ')}`,
  formula: feeds.map((_, k) => `I_${k + 1}`).join(' + '),
  with: Object.fromEntries(feeds.map((f, k) => [`I_${k + 1}`, [f.amps, 'A'] as const])),
  gives: [sumOf(feeds), 'A'],
});
