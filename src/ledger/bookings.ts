/**
 * Bookings: whose current it is. Every branch's current is booked for a circuit (or a part that draws for itself); along
 * the supply tree it is handed up link by link, so that the entries of any account add up to what flows through it.
 */
import type { Solution } from './solution.js';

/** Amperes by circuit. */
export type Shares = ReadonlyMap<string, number>;

interface PinFlow {
  readonly level: 'high' | 'low';
  readonly outward: Shares;
}

export interface Books {
  /** Amperes through each pin, by circuit; positive leaves the pin. */
  readonly pins: ReadonlyMap<string, PinFlow>;
  /** Amperes out of each link, and out of each supply. */
  readonly links: ReadonlyMap<string, Shares>;
  readonly nodes: ReadonlyMap<string, Shares>;
}

const kept = new WeakMap<Solution, Books>();

/** The books of a settled solution. */
export function booksOf(solution: Solution): Books {
  let books = kept.get(solution);
  if (books === undefined) {
    books = write(solution);
    kept.set(solution, books);
  }
  return books;
}

function add(shares: Map<string, number>, circuit: string, amps: number): void {
  if (amps !== 0) shares.set(circuit, (shares.get(circuit) ?? 0) + amps);
}

function write(solution: Solution): Books {
  const { networks, nodeIndex, project } = solution.circuitry;
  const pins = new Map<string, PinFlow>();
  const drawn: Map<string, number>[] = solution.circuitry.nodes.map(() => new Map<string, number>());
  for (let n = 0; n < networks.length; n++) {
    const { fitted, currents } = solution.network(n);
    fitted.plans.forEach((plan, b) => {
      const shares = plan.carries ?? [b];
      const at = (node: string): Map<string, number> | undefined => {
        const number = nodeIndex.get(node);
        return number === undefined || number === 0 ? undefined : drawn[number];
      };
      for (const k of shares) {
        const circuit = fitted.plans[k]!.circuit;
        // What a pin's own branch carries for a branch that leaves its node it carries outward, and the other way round.
        const along = k === b ? 1 : fitted.plans[k]!.from === plan.to || fitted.plans[k]!.to === plan.from ? 1 : -1;
        const amps = along * currents[k]!;
        const [from, to] = [at(plan.from), at(plan.to)];
        if (from) add(from, circuit, amps);
        if (to) add(to, circuit, -amps);
        if (plan.pin) {
          const flow = pins.get(plan.pin.pin) ?? { level: plan.pin.level, outward: new Map<string, number>() };
          add(flow.outward as Map<string, number>, circuit, plan.pin.outward * amps);
          pins.set(plan.pin.pin, flow);
        }
      }
    });
  }
  const links = new Map<string, Shares>();
  for (let k = project.links.length - 1; k >= 0; k--) {
    const link = project.links[k]!;
    const out = drawn[nodeIndex.get(link.to)!]!;
    const into = drawn[nodeIndex.get(link.from)!]!;
    links.set(link.id, new Map(out));
    const own = solution.ownCurrent(link);
    const total = solution.linkCurrents[k]!;
    const scale = total === 0 ? 1 : (solution.linkInputs[k]! - own) / total;
    for (const [circuit, amps] of out) add(into, circuit, amps * scale);
    add(into, link.id, own);
  }
  return { pins, links, nodes: new Map(solution.circuitry.nodes.map((id, k) => [id, drawn[k]!])) };
}

/** Sum of shares, amperes. */
export const total = (shares: Shares | undefined): number => {
  let sum = 0;
  if (shares) for (const amps of shares.values()) sum += amps;
  return sum;
};

/** Amperes through a pin in a direction, by circuit: out of a pin that is high, or into one that is low. */
export function pinShares(books: Books, pin: string, direction: 'source' | 'sink'): Shares {
  const flow = books.pins.get(pin);
  const sign = direction === 'source' ? 1 : -1;
  if (flow === undefined || flow.level !== (direction === 'source' ? 'high' : 'low')) return new Map();
  return sign * total(flow.outward) <= 0 ? new Map() : new Map([...flow.outward].map(([c, amps]) => [c, sign * amps]));
}
