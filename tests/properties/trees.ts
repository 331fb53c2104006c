/** Supply trees of every kind of part, made from a few choices: sources, what hangs between, and loads on every node. */
import fc from 'fast-check';
import type { Data, Entry } from './projects.js';

/** A node's name and about what it stands at, volts. */
interface Node {
  readonly name: string;
  readonly volts: number;
}

interface Choice {
  /** 0 to 1: which node it hangs on, what it is, and its size. */
  readonly on: number;
  readonly kind: number;
  readonly size: number;
  readonly load: number;
}

const share = fc.double({ min: 0, max: 0.999, noNaN: true });
const choice: fc.Arbitrary<Choice> = fc.record({ on: share, kind: share, size: share, load: share });

const pick = <T>(of: readonly T[], at: number): T => of[Math.floor(at * of.length)]!;
const round = (value: number): number => Number(value.toPrecision(3));

/** What may hang on a node, and what it stands at then. */
function part({ volts }: Node, { kind, size }: Choice): { readonly entry: Entry; readonly volts: number } {
  const kinds = [
    'linear-regulator',
    'switching-regulator',
    'diode',
    'fuse',
    'limiter',
    'switch',
    'curved diode',
  ] as const;
  const current = '50 A';
  const lower = [3.3, 5, 9].filter((v) => v < volts - 0.4);
  switch (pick(kinds, kind)) {
    case 'linear-regulator': {
      if (lower.length === 0) return { entry: { type: 'fuse', resistance: '20 to 60 mΩ', hold: current }, volts };
      const set = pick(lower, size);
      const dropout = [
        { value: '0.2 / 0.3 / 0.5 V', at: '10 mA' },
        { value: '0.6 / 0.9 / 1.2 V', at: '500 mA' },
      ];
      return {
        entry: {
          type: 'linear-regulator',
          voltage: `${set} V ±2 %`,
          dropout,
          quiescent: '1 to 5 mA',
          current,
          input: 'max 30 V',
          'thermal-resistance': '40 to 60 K/W',
          'maximum-junction': '125 °C',
        },
        volts: set,
      };
    }
    case 'switching-regulator': {
      const set = pick([3.3, 5, 9, 12], size);
      const efficiency = [
        { value: '70 / 80 / 85 %', at: '5 mA' },
        { value: '82 / 88 / 92 %', at: '200 mA' },
        { value: '75 / 82 / 90 %', at: '1 A' },
      ];
      // One whose input may lie on either side of its output has to be able to do both.
      const step = Math.abs(set - volts) < 1.5 ? 'both' : set < volts ? 'down' : 'up';
      return {
        entry: {
          type: 'switching-regulator',
          voltage: `${set} V ±2 %`,
          efficiency,
          step,
          quiescent: '0.1 to 1 mA',
          current,
          input: 'max 30 V',
        },
        volts: set,
      };
    }
    case 'diode':
      return { entry: { type: 'diode', drop: '0.25 / 0.35 / 0.45 V', current }, volts: volts - 0.35 };
    case 'curved diode': {
      const drop = [
        { value: '0.20 / 0.25 / 0.30 V', at: '10 mA' },
        { value: '0.32 / 0.38 / 0.45 V', at: '500 mA' },
      ];
      return { entry: { type: 'diode', drop, current }, volts: volts - 0.35 };
    }
    case 'fuse':
      return { entry: { type: 'fuse', resistance: '20 to 60 mΩ', hold: current }, volts };
    case 'limiter':
      return { entry: { type: 'limiter', resistance: '30 to 80 mΩ', current }, volts };
    case 'switch':
      return { entry: { type: 'switch', resistance: '10 to 50 mΩ', current }, volts };
  }
}

/** What draws from a node. */
function load(node: Node, name: string, { load: at, size }: Choice): Readonly<Record<string, Entry>> {
  const amps = 0.002 + 0.03 * size;
  if (at < 0.2) return {};
  if (at < 0.6)
    return {
      [name]: { type: 'resistor', resistance: `${round(node.volts / amps)} Ω ±10 %`, power: '20 W', supply: node.name },
    };
  return {
    [name]: {
      type: 'constant-current',
      current: `${round(700 * amps)} to ${round(1300 * amps)} mA`,
      supply: node.name,
    },
  };
}

/**
 * @param most nodes beside the sources @param joined whether sources may be joined by diodes
 */
export const trees = (most: number, joined = true): fc.Arbitrary<Data> =>
  fc
    .record({
      sources: fc.array(fc.record({ volts: share, soft: fc.boolean() }), { minLength: 1, maxLength: 3 }),
      parts: fc.array(choice, { minLength: 1, maxLength: most, size: 'max' }),
    })
    .map(({ sources, parts }) => {
      const supplies: Record<string, Entry> = {};
      const loads: Record<string, Entry> = {};
      const nodes: Node[] = sources.map(({ volts, soft }, k): Node => {
        const stands = pick([5, 9, 12], volts);
        const name = `source${k}`;
        supplies[name] = { voltage: `${stands} V ±5 %`, current: '50 A', ...(soft && { resistance: '20 to 60 mΩ' }) };
        return { name, volts: stands };
      });
      parts.forEach((made, k) => {
        const name = `node${k}`;
        const on = pick(nodes, made.on);
        const alike = nodes.filter((n) => n !== on && Math.abs(n.volts - on.volts) < 1);
        const node = { name, volts: on.volts };
        if (joined && made.size < 0.15 && alike.length > 0) {
          const other = pick(alike, made.kind);
          supplies[name] = { from: [on.name, other.name], drop: '0.25 / 0.35 / 0.45 V', current: '50 A' };
          nodes.push({ ...node, volts: Math.max(on.volts, other.volts) - 0.35 });
        } else {
          const { entry, volts } = part(on, made);
          supplies[name] = { from: on.name, ...entry };
          nodes.push({ ...node, volts });
        }
        Object.assign(loads, load(nodes.at(-1)!, `load${k}`, made));
      });
      return { ampledger: 1, title: 'Made up', ambient: '0 to 50 °C', supplies, loads };
    });
