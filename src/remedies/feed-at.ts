/**
 * A regulator that gets too hot, too much or too little, and a chip or load on too high or too low a supply: the supply behind it
 * is one of another voltage. What a linear regulator loses is the difference, so that a lower one keeps it cool.
 */
import { isMapping } from '../loads/figures.js';
import type { Case, Way } from './cures.js';
import { entryOf } from './entries.js';
import type { Cure } from './prove.js';
import { ratingFor } from './supply-for.js';

/** Voltages that plug-in supplies are sold with (common practice, no source). */
const VOLTS = [3.3, 5, 6, 7.5, 9, 12, 15, 24];

/** Which way the supply has to move. */
const MOVES: Readonly<Record<string, 'lower' | 'higher' | 'either'>> = {
  'regulator-heat': 'lower',
  'regulator-input': 'lower',
  'regulator-dropout': 'higher',
  'regulator-starved': 'either',
  'rail-voltage': 'either',
  'load-voltage': 'either',
  'load-needs': 'higher',
  'chopper-starved': 'higher',
};

export const feedAt: Way = (of) => {
  const { finding, data, judgement } = of;
  const leaning = MOVES[finding.rule];
  // Too much of it, or too little.
  const byDirection = finding.account?.direction === 'at-least' ? 'higher' : 'lower';
  const move = leaning === 'either' && finding.account ? byDirection : leaning;
  const name = move === undefined ? undefined : supplyBehind(of);
  const entry = name === undefined ? undefined : entryOf(data, 'supplies', name);
  const node = judgement.project.nodes.find((n) => n.id === name);
  if (name === undefined || entry === undefined || node?.volts === undefined || entry['from'] !== undefined) return [];
  const now = node.volts.typ;
  const asked = judgement.accounts.find((j) => j.account.id === name && j.account.quantity === 'current')?.account.draw
    ?.max;
  const current = ratingFor(asked ?? 0.5, judgement.project.policy.current);
  if (current === undefined) return [];
  // The nearest first: the least has to change.
  const volts = VOLTS.filter((v) =>
    move === 'lower' ? v < 0.99 * now : move === 'higher' ? v > 1.01 * now : Math.abs(v - now) > 0.01 * now,
  )
    .sort((a, b) => Math.abs(a - now) - Math.abs(b - now))
    .slice(0, 4);
  const kept = isMapping(entry) && typeof entry['current'] === 'string' ? entry['current'] : `${current} A`;
  return volts.map((v): Cure => {
    const value = { voltage: `${v} V ±5 %`, current: kept };
    return {
      title: `Make ${name} a supply of ${v} V`,
      changes: [{ path: ['supplies', name], value }],
      parts: [`a supply of ${value.voltage}, ${kept}`],
      steps: [
        `Replace ${name} by a regulated supply of ${v} V for ${kept}; check its plug and polarity before it is plugged in.`,
      ],
      watch: finding.account ? [finding.account.id] : [],
    };
  });
};

/** The supply of the file that stands at the head of what the finding is about. */
function supplyBehind({ finding, judgement: { project } }: Case): string | undefined {
  const circuit = project.circuits.find((c) => c.id === finding.about);
  const feeds = new Map(project.links.map((l) => [l.to, l]));
  const own = project.links.find((l) => l.id === finding.about || l.id === finding.account?.id);
  let at = own?.from ?? circuit?.wiring.supply ?? finding.about;
  for (let link = feeds.get(at); link !== undefined; link = feeds.get(at)) at = link.from;
  return project.nodes.some((n) => n.id === at && n.kind === 'supply') ? at : undefined;
}
