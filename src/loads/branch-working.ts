/**
 * The sum behind a branch's current, read off the solved branch: what is left of its voltage after the drops, over the
 * resistance on its way. Evaluating the formula with the numbers beside it gives the result.
 */
import { RERATING } from '../circuit/filament.js';
import type { SolvedBranch, Step } from './account-plan.js';
import type { Member, Origin } from './branch-plan.js';
import { GROUND } from './branch-plan.js';
import { heldSteps } from './held.js';

/** A name as a symbol of a formula: letters, digits and underscores. */
export const symbol = (letter: string, name: string): string => `${letter}_${name.replace(/[^A-Za-z0-9]+/g, '_')}`;

/** What hangs on a contact goes by the contact's name, and is the load in a sum; the contact's own part is its resistance. */
const IN_SUMS: { readonly [piece: string]: string } = {
  contact: 'load',
  'other-contact': 'load',
  'contact-resistance': 'contact',
  'other-contact-resistance': 'contact',
};

/** The last piece of a name: 'coil' of 'vents.1.coil', 'vbus' of 'main.vbus'. */
function shortName(part: string): string {
  const piece = part.slice(Math.max(part.lastIndexOf('.'), part.lastIndexOf(':')) + 1) || part;
  return Object.hasOwn(IN_SUMS, piece) ? IN_SUMS[piece]! : piece;
}

/** The current of a branch as one step. @param what says what current it is @param called its symbol */
export function branchSteps(branch: SolvedBranch | undefined, what: string, called = 'I'): Step[] {
  if (branch === undefined) return [];
  const fixed = branch.members.find(({ member }) => member.kind === 'current');
  const sources = branch.members.flatMap(({ member }) => sourceOf(member));
  if (fixed) {
    const name = symbol('I', shortName(fixed.member.part));
    return [
      {
        name: called,
        says: what,
        formula: name,
        with: { [name]: [branch.amps, 'A'] },
        gives: [branch.amps, 'A'],
        sources,
      },
    ];
  }
  const power = branch.members.find(({ member }) => member.kind === 'power');
  if (power?.held && power.volts > 0) return heldSteps(power.held, power.volts, branch.amps, what, sources);
  if (power && power.volts > 0) {
    const name = symbol('V', shortName(power.member.part));
    const values = { P: [branch.amps * power.volts, 'W'], [name]: [power.volts, 'V'] } as const;
    return [{ name: 'I', says: what, formula: `P / ${name}`, with: values, gives: [branch.amps, 'A'], sources }];
  }
  const values: Record<string, readonly [number, string]> = {};
  const top: string[] = [];
  const ends = [
    ['', branch.from],
    [' - ', branch.to],
  ] as const;
  for (const [sign, { node, volts }] of ends) {
    if (node === GROUND) continue;
    const name = unused(values, symbol('V', shortName(node)));
    values[name] = [volts, 'V'];
    top.push(sign === '' ? name : `- ${name}`);
  }
  const bottom: string[] = [];
  const resists = branch.members.some(({ ohms }) => ohms !== undefined && ohms > 0);
  for (const { member, volts, ohms } of branch.members) {
    // What is nothing in this corner only clutters the sum.
    if (ohms === 0 && resists) continue;
    if (ohms !== undefined) {
      const name = unused(values, member.kind === 'pin' ? 'R_pin' : symbol('R', shortName(member.part)));
      values[name] = [ohms, 'Ω'];
      bottom.push(name);
    } else if (volts !== 0) {
      const name = unused(values, symbol('V', shortName(member.part)));
      values[name] = [volts, 'V'];
      top.push(`- ${name}`);
    }
  }
  const numerator = top.join(' ').replace(/^- /, '-');
  if (bottom.length === 0 || blocks(branch)) {
    const lit = branch.members.find(({ member }) => member.kind === 'filament');
    if (lit) return filamentSteps(lit, branch.amps, what, sources);
    return [
      { name: called, says: what, formula: 'I', with: { I: [branch.amps, 'A'] }, gives: [branch.amps, 'A'], sources },
    ];
  }
  const formula = `${top.length > 1 ? `(${numerator})` : numerator || '0'} / ${bottom.length > 1 ? `(${bottom.join(' + ')})` : bottom[0]!}`;
  return [{ name: called, says: what, formula, with: values, gives: [branch.amps, 'A'], sources }];
}

/** What is left of a branch's voltage for one of its members, as one step. @param called its symbol */
export function leftSteps(branch: SolvedBranch | undefined, part: string, called: string, what: string): Step[] {
  if (branch === undefined) return [];
  const values: Record<string, readonly [number, string]> = {};
  const terms: string[] = [];
  const put = (sign: '' | '-', name: string, value: readonly [number, string]): string => {
    const free = unused(values, name);
    values[free] = value;
    return sign === '' && terms.length === 0 ? free : `${sign} ${free}`;
  };
  if (branch.from.node !== GROUND)
    terms.push(put('', symbol('V', shortName(branch.from.node)), [branch.from.volts, 'V']));
  if (branch.to.node !== GROUND) terms.push(put('-', symbol('V', shortName(branch.to.node)), [branch.to.volts, 'V']));
  let left = branch.from.volts - branch.to.volts;
  const amps: [number, string] = [branch.amps, 'A'];
  for (const { member, volts, ohms } of branch.members) {
    if (member.part === part || branch.amps === 0) continue;
    left -= volts;
    if (ohms === undefined) terms.push(put('-', symbol('V', shortName(member.part)), [volts, 'V']));
    else {
      const name = unused(values, member.kind === 'pin' ? 'R_pin' : symbol('R', shortName(member.part)));
      values[name] = [ohms, 'Ω'];
      values['I'] = amps;
      terms.push(`- I * ${name}`);
    }
  }
  return [{ name: called, says: what, formula: terms.join(' ') || '0', with: values, gives: [left, 'V'] }];
}

/** Share of a branch's voltage: where its junctions leave less than that, they alone say how little flows. */
const NEXT_TO_NOTHING = 1e-5;

function blocks({ from, to, amps, members }: SolvedBranch): boolean {
  const straight = members.reduce((volts, { ohms = 0 }) => volts + Math.abs(ohms * amps), 0);
  return straight < NEXT_TO_NOTHING * Math.abs(from.volts - to.volts);
}

/** The rerating law of a lamp, with what it takes at its design point. */
function filamentSteps(
  { member, volts }: SolvedBranch['members'][number],
  amps: number,
  what: string,
  sources: readonly string[],
): Step[] {
  const rated = member.kind === 'filament' ? member.volts : 1;
  const design = amps / (volts / rated) ** RERATING;
  return [
    {
      name: 'I',
      says: what,
      formula: `I_design * (V_lamp / V_design)^${RERATING}`,
      with: { I_design: [design, 'A'], V_lamp: [volts, 'V'], V_design: [rated, 'V'] },
      gives: [amps, 'A'],
      sources,
    },
  ];
}

/** A symbol that is still free among the values of a formula. */
export function unused(values: object, name: string): string {
  let free = name;
  for (let k = 2; free in values; k++) free = `${name}_${k}`;
  return free;
}

const sourceOf = ({ origin, part }: Member): readonly string[] => sourcesOf(part, origin);

/** The source of a part's figure, as the working names it; none where nothing says. */
export const sourcesOf = (part: string, origin: Origin | undefined): readonly string[] =>
  origin === undefined ? [] : [`${part}: ${origin.document}${origin.where ? `, ${origin.where}` : ''}`];
