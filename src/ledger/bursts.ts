/** Bursts that come regularly (a radio that sends): their share of the time is part of what a battery gives on average. */
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
        const more = Math.max(member.peak - member.amps.max, 0) * Math.min((member.lasts ?? 0) / member.every, 1);
        amps.set(circuit, (amps.get(circuit) ?? 0) + more * gainTo(s, from, supply));
      }
  });
  return amps;
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
