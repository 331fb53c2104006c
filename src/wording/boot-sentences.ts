/** What is said of loads, pins and ports from a reset until firmware runs. */
import type { Finding } from '../checks/finding.js';
import { sentence } from './phrases.js';

type Say = (f: Finding) => string;

/** 'a, b and c', and of many the first and the last. */
export function listed(names: string): string {
  const all = names.split(', ');
  return all.length > MOST ? `${all[0]} to ${all.at(-1)}` : names.replace(/, ([^,]*)$/, ' and $1');
}

const MOST = 4;

export const circuitsOf = (f: Finding): string => f.names['who'] || listed(f.names['circuits']!);

export const many = (f: Finding): boolean => !f.names['who'] && f.names['circuits']!.includes(',');

export const pinsOf = (f: Finding): string =>
  `${f.names['channels'] === undefined ? 'pin' : 'channel'}${f.names['pins']!.includes(',') ? 's' : ''} ${listed(f.names['pins']!)}`;

/** What the pins do, in words that follow them. */
function doing(f: Finding): string {
  const several = f.names['pins']!.includes(',');
  switch (f.names['state']) {
    case 'pulses':
      return several ? 'pulse' : 'pulses';
    case 'any':
      return `${several ? 'wake' : 'wakes'} as ${several ? 'they like' : 'it likes'} and ${several ? 'stay' : 'stays'} so`;
    case 'high':
    case 'low':
      return `${several ? 'are' : 'is'} ${f.names['state']}`;
    case 'pulled-up':
    case 'pulled-down':
      return `${several ? 'are' : 'is'} pulled ${f.names['state'].slice(7)} inside the chip`;
    default:
      return several ? 'float' : 'floats';
  }
}

/** What the file calls safe, as the second half of a sentence. */
export function safely(f: Finding): string {
  if (f.names['safe'] === undefined) return '';
  const [several, its] = [f.names['circuits']!.includes(','), many(f) ? 'their' : 'its'];
  const loads = `${f.names['other'] === undefined ? `${its} load` : `the load`}${several ? 's' : ''}`;
  const where = f.names['other'] === undefined ? '' : ` on ${its} other ${many(f) ? 'sides' : 'side'}`;
  const [are, stopped, run] = several ? ['are', 'they are stopped', 'they run'] : ['is', 'it is stopped', 'it runs'];
  return `, and ${loads}${where} ${are} safe only while ${f.names['safe'] === 'load-stopped' ? stopped : run}`;
}

export const bootDrives: Say = (f) => {
  const circuits = circuitsOf(f);
  const [is, comes] = many(f) ? ['are', 'come'] : ['is', 'comes'];
  const pulses = f.names['state'] === 'any' ? `${circuits} may be on or off` : `${circuits} ${comes} on and off`;
  const act = { on: `${circuits} ${is} on`, off: `${circuits} ${is} off`, pulses };
  const does = act[f.names['does'] as keyof typeof act];
  const stays = f.names['latches'] === undefined ? '' : ', and stays as that leaves it';
  const closed = `${stays}${f.names['runs'] === 'off' ? ', with its contact normally closed' : ''}`;
  if (f.names['stated'] !== undefined)
    return sentence(`until firmware runs ${does}, as mode ${f.names['stated']} says${closed}${safely(f)}.`);
  return sentence(`until firmware runs ${pinsOf(f)} ${doing(f)}: ${does}${closed}${safely(f)}.`);
};

/** What a load makes of a line that nobody drives yet. */
function heard(f: Finding): string {
  const circuits = circuitsOf(f);
  const line = f.names['line'] === 'signal' ? `the signal of ${circuits}` : `${f.names['line']} of ${circuits}`;
  const held = f.names['state'] === 'floating' ? `, and nothing else holds ${line}` : ` on ${line}`;
  return sentence(
    `until firmware runs ${pinsOf(f)} ${doing(f)}${held}: what comes over it may be taken for a signal${safely(f)}.`,
  );
}

export const bootFloats: Say = (f) => {
  if (f.names['line'] !== undefined) return heard(f);
  const circuits = circuitsOf(f);
  const is = many(f) ? 'are' : 'is';
  if (f.names['state'] === 'floating')
    return sentence(
      `until firmware runs ${pinsOf(f)} ${doing(f)}, and nothing else holds the control of ${circuits}: a leakage of 1 µA decides whether ${many(f) ? 'they' : 'it'} ${is} on${safely(f)}.`,
    );
  return sentence(
    `until firmware runs ${pinsOf(f)} ${doing(f)}, too weakly to promise that ${circuits} ${is} either on or off${safely(f)}.`,
  );
};

export const strapLoaded: Say = (f) => {
  const { pin, by, level, decides, volts, needs, outside } = f.names;
  const why = decides === undefined ? '' : ` (${decides})`;
  const stands =
    volts === undefined
      ? outside === undefined
        ? `nothing holds it there beside ${listed(by!)}`
        : `${listed(by!)} decides where it stands`
      : `with ${listed(by!)} on it it may stand at ${volts}, where ${needs} ${level === 'high' ? 'or more' : 'or less'} surely read ${level}`;
  return sentence(`pin ${pin} has to be ${level} at a reset${why}, and ${stands}.`);
};
