/** Bursts that come regularly (a radio that sends): their share of the time is part of what a battery gives on average. */
import { GROUND } from '../loads/branch-plan.js';
import type { Shares } from './bookings.js';
import type { Solution } from './solution.js';

/** What bursts come to on average where it is stated how often they come, amperes out of a supply by whose they are. */
export function inBursts(s: Solution, supply: string): Shares {
  const { project, networks } = s.circuitry;
  const amps = new Map<string, number>();
  project.networks.forEach(({ on }, n) => {
    if (!s.isOn(n) || networks[n] === undefined) return;
    for (const { from, members, circuit } of on)
      for (const member of members) {
        if (member.kind !== 'current' || member.peak === undefined || member.every === undefined) continue;
        const more =
          Math.max(member.peak - (member.before ?? member.amps.max), 0) *
          Math.min((member.lasts ?? 0) / member.every, 1);
        amps.set(circuit, (amps.get(circuit) ?? 0) + more * gainTo(s, from, supply));
      }
  });
  for (const less of [lessLatched(s, supply), lessPulsed(s, supply)])
    for (const [circuit, each] of less) amps.set(circuit, (amps.get(circuit) ?? 0) + each);
  return amps;
}

const DAY = 86_400;

/** What slow pulses take less on average than while they are on, which is what every sum has of them, amperes (below zero). */
function lessPulsed(s: Solution, supply: string): Shares {
  const { project } = s.circuitry;
  const less = new Map<string, number>();
  project.circuits.forEach(({ id, pulses }, c) => {
    if (pulses?.slow !== true || s.moment.on[c] !== 1) return;
    less.set(id, -(1 - pulses.duty[s.typical ? 'typ' : 'max']) * drawnBy(s, c, supply));
  });
  return less;
}

/** Amperes out of a supply for a circuit that is on, what hangs on its contact left out. */
function drawnBy(s: Solution, circuit: number, supply: string): number {
  const { networksOf, networks } = s.circuitry;
  return networksOf[circuit]!.filter((n) => networks[n]!.plan.contact === undefined)
    .flatMap((n) => s.drawOf(n, true))
    .reduce((sum, { node, amps }) => sum + (node === GROUND ? 0 : amps * gainTo(s, node, supply)), 0);
}

/**
 * What latching relays take less on average than while they are pulsed, amperes out of a supply (below zero): of a day their
 * coils are on for so many pulses, however long a mode leaves them set.
 */
function lessLatched(s: Solution, supply: string): Shares {
  const { project } = s.circuitry;
  const less = new Map<string, number>();
  project.circuits.forEach(({ id, latching }, c) => {
    if (latching === undefined || s.moment.on[c] !== 1) return;
    const drawn = drawnBy(s, c, supply);
    // The pulses of a day fall into the modes that have it on.
    const shares = project.modes.filter((m) => m.active.has(id)).map((m) => m.share ?? 1);
    const time = Math.min(shares.reduce((sum, share) => sum + share, 0) || 1, 1);
    const pulsed = Math.min((latching.pulse * (latching.perDay ?? 0)) / DAY / time, 1);
    less.set(id, -(1 - pulsed) * drawn);
  });
  return less;
}

/** Amperes out of a supply for one ampere at a node; 0 where it does not feed it. */
function gainTo(s: Solution, node: string, supply: string): number {
  const { project, linkIndex } = s.circuitry;
  let gain = 1;
  for (let at = node; at !== supply;) {
    const link = project.links.find((l) => l.to === at);
    if (link === undefined) return 0;
    const k = linkIndex.get(link);
    if (link.kind === 'switching-regulator' && k !== undefined && s.linkCurrents[k]! > 0)
      gain *= (s.linkInputs[k]! - s.ownCurrent(link)) / s.linkCurrents[k]!;
    at = link.from;
  }
  return gain;
}
