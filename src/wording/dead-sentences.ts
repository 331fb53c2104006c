/** What is said of chips and rails whose supply is dead while others live. */
import type { Finding } from '../checks/finding.js';
import type { Grade } from '../loads/account-plan.js';
import { circuitsOf, listed, many, pinsOf, safely } from './boot-sentences.js';
import { lineOf, sentence } from './phrases.js';

type Say = (f: Finding) => string;

/** 'laptop is dead', 'laptop and brick are dead'. */
const areDead = ({ names }: Finding): string =>
  `${listed(names['dead']!)} ${names['dead']!.includes(',') ? 'are' : 'is'} dead`;

export const deadDrives: Say = (f) => {
  const circuits = circuitsOf(f);
  const is = many(f) ? 'are' : 'is';
  const { clamps } = f.names;
  const through =
    clamps === undefined
      ? `current finds its way into ${pinsOf(f)}, whose chip is dead`
      : `the clamps of ${clamps} lead to it past ${pinsOf(f)}`;
  const closed = f.names['runs'] === 'off' ? ', with its contact normally closed' : '';
  return f.names['does'] === 'on'
    ? sentence(`while ${areDead(f)} ${through}: ${circuits} ${is} on${closed}${safely(f)}.`)
    : sentence(`while ${areDead(f)} ${through}, and nothing promises that ${circuits} ${is} off${safely(f)}.`);
};

export const deadLifted: Say = (f) => {
  const { rail, usual, most, apart, through, on, off, runs, works, perhaps } = f.names;
  const up =
    apart === undefined
      ? `to ${most}`
      : `to about ${usual}, and to ${most} at the most, while what hangs on it takes next to nothing`;
  const lifted = `while ${areDead(f)} and cut off, what comes in through ${ways(through!)} lifts ${rail} ${up}`;
  const is = on!.includes(',') ? 'are' : 'is';
  if (runs !== undefined)
    return sentence(
      `${lifted}: ${listed(runs)} ${perhaps === undefined ? (runs.includes(',') ? 'live' : 'lives') : 'may live'} on what comes in.`,
    );
  const nor = works === undefined ? '' : `, and not sure to work, as from ${works} on`;
  return sentence(`${lifted}: ${listed(on!)} ${is} not surely off, as below ${off}${nor}.`);
};

export const deadPushed: Say = (f) => {
  const { dead, into, pins, sum, amps, limit, grade, input, assumed, range } = f.names;
  const line =
    range === undefined
      ? `where ${limit} is ${lineOf(grade as Grade)}`
      : `and nobody publishes what it bears: more than ${range} is too much`;
  const clamp = assumed === undefined ? '' : ', if that has a clamp to its supply, as most inputs have';
  const many = pins!.includes(',') ? ' each' : '';
  return input === undefined
    ? sentence(
        `while ${areDead(f)} and ${dead!.includes(',') ? 'hold their rails' : 'holds its rail'} at 0 V, ${sum ?? pinsOf(f)} may give up to ${amps}${many} into ${listed(into!)}${clamp}, ${line}.`,
      )
    : sentence(
        `while ${areDead(f)} and ${dead!.includes(',') ? 'hold their rails' : 'holds its rail'} at 0 V, up to ${amps} is pushed into ${into!.includes(',') ? 'each of ' : ''}${listed(into!)}${clamp}, ${line}.`,
      );
};

export const deadFed: Say = (f) => {
  const { source, dead, amps, through, assumed, asks } = f.names;
  const bears = asks === undefined ? 'which does not bear that' : 'and nothing says whether it bears that';
  const clamp = assumed === undefined ? '' : ', if these have a clamp to their supply, as most inputs have';
  return sentence(
    `while ${areDead(f)}, up to ${amps} is pushed back into ${dead === source ? 'it' : source} through ${ways(through!)}${clamp}, ${bears}.`,
  );
};

/** 'pins D5 and D6' of 'pin D5, pin D6', and the like. */
function ways(through: string): string {
  const all = through.split(', ');
  const sort = ['pin', 'channel'].find((word) => all.length > 1 && all.every((name) => name.startsWith(`${word} `)));
  return sort === undefined
    ? listed(through)
    : `${sort}s ${listed(all.map((name) => name.slice(sort.length + 1)).join(', '))}`;
}
