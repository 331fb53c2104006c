/**
 * What each supply gives on average over the modes' shares of the time, in the typical build, and who takes it. What a linear
 * regulator, a resistor or a driver turns to heat is booked for the circuit that draws the current; regulators' own currents
 * and what boards draw stand by themselves. Bursts count by their share of the time where it is stated how often they come.
 */
import { meanOf } from '../loads/pulses.js';
import { booksOf } from './bookings.js';
import type { Shares } from './bookings.js';
import { inBursts } from './bursts.js';
import { TYPICAL } from './corner.js';
import type { ModeSearch } from './moments.js';
import type { Solution } from './solution.js';
import type { Solver } from './solver.js';

/** The mean of one supply. */
export interface SupplyEnergy {
  readonly supply: string;
  /** Amperes. */
  readonly amps: number;
  /** Watts at its terminals. */
  readonly watts: number;
  /** Watts by circuit, or by part that draws for itself, most first. */
  readonly takes: readonly { readonly circuit: string; readonly watts: number }[];
}

/** None when no mode states a share, or when the shares leave time unaccounted for. */
export function energyOf(bench: Solver, modes: readonly ModeSearch[]): readonly SupplyEnergy[] {
  const { project } = bench.circuitry;
  const shared = modes.flatMap((mode) => {
    const share = project.modes.find((m) => m.name === mode.name)?.share;
    return share === undefined || mode.on === undefined ? [] : [{ mode, on: mode.on, share }];
  });
  const shares = new Map(shared.map(({ mode, share }) => [mode.name, share]));
  const whole = [...shares.values()].reduce((sum, share) => sum + share, 0);
  if (shared.length === 0 || Math.abs(whole - 1) > 1e-6) return [];
  const solved = shared.map(({ mode, on }) => {
    const own = mode.bench ?? bench;
    const moment = { mode: mode.name, on };
    return { name: mode.name, s: own.solve({ moment, corner: TYPICAL, focus: own.nobody }) };
  });
  return project.nodes
    .filter((n) => n.kind === 'supply')
    .map(({ id }) => {
      const modesOfIt = [...shares].map(([name, share]) => ({
        share,
        // Where circuits take turns, a mode is so many moments, and counts by the one that takes most.
        ...solved
          .filter((each) => each.name === name)
          .map(({ s }) => ({ takes: takenFrom(s, id), volts: s.voltage(id) }))
          .reduce((a, b) => (sumOf(b.takes) > sumOf(a.takes) ? b : a)),
      }));
      const amps = modesOfIt.reduce((sum, { share, takes }) => sum + share * sumOf(takes), 0);
      const watts = new Map<string, number>();
      for (const { share, takes, volts } of modesOfIt)
        for (const [circuit, each] of takes) watts.set(circuit, (watts.get(circuit) ?? 0) + share * volts * each);
      const takes = [...watts]
        .map(([circuit, each]) => ({ circuit, watts: each }))
        .sort((a, b) => b.watts - a.watts || (a.circuit < b.circuit ? -1 : 1));
      return { supply: id, amps, watts: takes.reduce((sum, each) => sum + each.watts, 0), takes };
    });
}

const sumOf = (takes: Shares): number => [...takes.values()].reduce((sum, amps) => sum + amps, 0);

/** Amperes out of a supply by whose they are, over the pulses of a moment. */
function takenFrom(s: Solution, supply: string): Shares {
  const circuits = new Set(s.phases.flatMap(({ at }) => [...(booksOf(at).nodes.get(supply)?.keys() ?? [])]));
  const takes = new Map(
    [...circuits].map((circuit) => [circuit, meanOf(s, (at) => booksOf(at).nodes.get(supply)?.get(circuit) ?? 0)]),
  );
  for (const [circuit, amps] of inBursts(s, supply)) takes.set(circuit, (takes.get(circuit) ?? 0) + amps);
  return takes;
}
