/**
 * The sum behind the voltage of a line, read off its solved branches: each branch that ends at the node weighs with its
 * conductance (Millman's theorem), and what a junction or a fixed current takes away is subtracted. With one resistor above
 * and one below it is the divider of every textbook.
 */
import { symbol, unused } from '../branch-working.js';
import type { Reading, SolvedBranch, Step } from '../account-plan.js';
import { GROUND } from '../branch-plan.js';

const shortName = (part: string): string => part.slice(part.indexOf('.') + 1) || part;

interface Way {
  readonly volts: number;
  readonly node: string;
  readonly ohms: number;
  readonly name: string;
  readonly sources: readonly string[];
}

/**
 * The voltage of a node as one step.
 *
 * @param parts one part of each branch that ends there @param what says what voltage it is
 */
export function nodeSteps(s: Reading, node: string, parts: readonly string[], what: string): Step[] {
  const ways: Way[] = [];
  let taken = 0;
  for (const part of parts) {
    const branch = s.branch(part);
    if (branch === undefined) continue;
    const away = branch.from.node === node ? branch.to : branch.from;
    const straight = branch.members.every(({ ohms }) => ohms !== undefined);
    if (straight) ways.push(wayOf(branch, away));
    else taken += branch.from.node === node ? branch.amps : -branch.amps;
  }
  const gives = [s.voltage(node), 'V'] as const;
  const values: Record<string, readonly [number, string]> = {};
  const sources = ways.flatMap((w) => w.sources);
  const named = ways.map((w) => {
    const ohms = unused(values, symbol('R', w.name));
    values[ohms] = [w.ohms, 'Ω'];
    if (w.node === GROUND) return { ohms };
    const volts = symbol('V', shortName(w.node).replace(/^:/, ''));
    values[volts] = [w.volts, 'V'];
    return { ohms, volts };
  });
  const lost = Math.abs(taken) > 1e-12;
  if (lost) values['I_away'] = [taken, 'A'];
  const above = named.filter((n) => n.volts !== undefined);
  const below = named.filter((n) => n.volts === undefined);
  if (named.length === 0) return [];
  if (!lost && above.length === 1 && below.length === 0)
    return [
      {
        name: 'V',
        says: what,
        formula: above[0]!.volts!,
        with: { [above[0]!.volts!]: values[above[0]!.volts!]! },
        gives,
        sources,
      },
    ];
  if (!lost && above.length === 1 && below.length === 1) {
    const [up, down] = [above[0]!, below[0]!];
    const formula = `${up.volts} * ${down.ohms} / (${up.ohms} + ${down.ohms})`;
    return [{ name: 'V', says: what, formula, with: values, gives, sources }];
  }
  if (lost && above.length === 1 && below.length === 0) {
    const [up] = above;
    return [{ name: 'V', says: what, formula: `${up!.volts} - I_away * ${up!.ohms}`, with: values, gives, sources }];
  }
  if (lost && above.length === 0 && below.length === 1)
    return [{ name: 'V', says: what, formula: `-I_away * ${below[0]!.ohms}`, with: values, gives, sources }];
  const top = [...above.map((n) => `${n.volts} / ${n.ohms}`), ...(lost ? ['- I_away'] : [])];
  const numerator = top.length === 0 ? '0' : top.join(' + ').replace('+ - ', '- ');
  const formula = `(${numerator}) / (${named.map((n) => `1 / ${n.ohms}`).join(' + ')})`;
  return [{ name: 'V', says: what, formula, with: values, gives, sources }];
}

/**
 * What flows into a node through all its straight branches, as one step: what its clamp has to lead away.
 *
 * @param sign −1 where what flows out is meant @param amps what the step comes to
 */
export function inflowSteps(
  s: Reading,
  node: string,
  parts: readonly string[],
  sign: 1 | -1,
  amps: number,
  what: string,
): Step[] {
  const values: Record<string, readonly [number, string]> = { V_pin: [s.voltage(node), 'V'] };
  const sources: string[] = [];
  const terms = parts.flatMap((part): string[] => {
    const branch = s.branch(part);
    if (branch === undefined || branch.members.some(({ ohms }) => ohms === undefined)) return [];
    const way = wayOf(branch, branch.from.node === node ? branch.to : branch.from);
    const ohms = unused(values, symbol('R', way.name));
    values[ohms] = [way.ohms, 'Ω'];
    sources.push(...way.sources);
    if (way.node === GROUND) return [`- V_pin / ${ohms}`];
    const volts = symbol('V', shortName(way.node).replace(/^:/, ''));
    values[volts] = [way.volts, 'V'];
    return [`+ (${volts} - V_pin) / ${ohms}`];
  });
  const sum = terms.join(' ').replace(/^\+ /, '').replace(/^- /, '-');
  const formula = sign === 1 || sum === '' ? sum : `-(${sum})`;
  return formula === '' ? [] : [{ name: 'I', says: what, formula, with: values, gives: [amps, 'A'], sources }];
}

function wayOf(branch: SolvedBranch, away: SolvedBranch['from']): Way {
  const [first] = branch.members;
  return {
    ...away,
    ohms: branch.members.reduce((sum, m) => sum + (m.ohms ?? 0), 0),
    name: branch.members.length === 1 ? shortName(first!.member.part) : 'drive',
    sources: branch.members.flatMap(({ member: { part, origin } }) =>
      origin ? [`${part}: ${origin.document}${origin.where ? `, ${origin.where}` : ''}`] : [],
    ),
  };
}
