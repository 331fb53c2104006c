/** Sentences about where rails stand, and about regulators that cannot hold theirs. */
import type { Finding } from '../checks/finding.js';
import { formatValue } from '../quantity/print.js';
import { figure, limitFigure, met, percent, sentence, subjectOf, trimmed, when } from './phrases.js';

type Say = (f: Finding) => string;

/** When it is so: while something draws its peak. */
const inPeaks = (f: Finding): string => (met(f)?.by.solution.peak ? ' in peaks' : '');

/** 'Even the typical build …', or that it is fine. @param worst what its figure is, in words @param fine what it does */
const typicalToo = (f: Finding, worst: (volts: string) => string, fine: string): string => {
  const m = met(f);
  if (m === undefined) return '';
  const { account, by } = m;
  const beyond =
    account.direction === 'at-least' ? by.typical.draw < by.typical.value : by.typical.draw > by.typical.value;
  return beyond ? ` Even the typical build ${worst(figure(account, by.typical.draw))}.` : ` A typical build ${fine}.`;
};

export const railVoltage: Say = (f) => {
  const m = met(f);
  const rail = subjectOf(f).replace(/, voltage$/, '');
  if (m === undefined) return sentence(`nothing says at what voltage what hangs on ${rail} works.`);
  const { account, by } = m;
  const [volts, limit] = [figure(account, by.draw), limitFigure(account, by.value)];
  const whose = by.limit.condition ?? 'what works on it';
  if (account.direction === 'at-most') {
    const absolute = by.limit.grade === 'absolute' && !by.limit.isFunction;
    return sentence(
      `${when(f)}${rail} rises to ${volts}, above ${limit}, ${absolute ? whose : `the top of the ${whose.replace(/^the /, '')}`}.${
        absolute ? '' : typicalToo(f, (v) => `rises to ${v}`, 'stays inside')
      }`,
    );
  }
  const brownOut = whose.startsWith('brown-out');
  return sentence(
    `${when(f)}${rail} falls to ${volts}${inPeaks(f)}, below ${limit}, ${brownOut ? 'the' : 'the bottom of the'} ${whose}${
      brownOut ? ': it resets' : ''
    }.${typicalToo(f, (v) => `falls to ${v}`, 'stays above it')}`,
  );
};

export const regulatorDropout: Say = (f) => {
  const m = met(f);
  const regulator = subjectOf(f).replace(/, regulation$/, '');
  if (m === undefined) return sentence(`nothing says how far above its output the input of ${regulator} has to be.`);
  const { account, by } = m;
  const [left, needed] = [figure(account, by.draw), limitFigure(account, by.value)];
  if (f.verdict === 'unproven')
    return sentence(
      `${regulator} would have only ${left} to give where its output is at least ${needed}, if it needs as much for itself as such parts do.`,
    );
  const follows =
    f.verdict === 'note'
      ? 'its output follows its input, and all on it still works'
      : 'its output follows its input down';
  return sentence(
    `${when(f)}${regulator} has only ${left} left to give${inPeaks(f)} where its output is at least ${needed}: ${follows}.${typicalToo(f, (v) => `has only ${v} left`, 'holds its voltage')}`,
  );
};

export const loadDip: Say = (f) => {
  const m = met(f);
  if (m === undefined) return sentence(`nothing says by how much the supply of ${f.about} dips.`);
  const { account, by } = m;
  return sentence(
    `${when(f)}the supply of ${f.about} dips by ${figure(account, by.draw)} in peaks, and it bears ${limitFigure(account, by.value)}.`,
  );
};

export const batterySags: Say = (f) => {
  const m = met(f);
  const battery = `the ${subjectOf(f).replace(/, under load$/, '')}`;
  if (m === undefined) return sentence(`nothing says at what voltage ${battery} is empty.`);
  const { account, by } = m;
  return sentence(
    `${when(f)}${battery}, at its typical voltage, falls to ${figure(account, by.draw)} under load${inPeaks(f)}, below the ${limitFigure(account, by.value)} at which it counts as empty.${typicalToo(f, (v) => `falls to ${v}`, 'stays above it')}`,
  );
};

export const batteryLife: Say = (f) => {
  const m = met(f);
  const battery = `the ${subjectOf(f).replace(/, life$/, '')}`;
  if (m === undefined) return sentence(`nothing says how much charge ${battery} holds.`);
  const { account, by } = m;
  const [lasts, wanted] = [figure(account, by.draw), limitFigure(account, by.value)];
  if (f.verdict === 'unproven')
    return sentence(
      `with all on that can be, all the time, ${battery} lasts ${lasts}, and ${wanted} are wanted: nothing says how the time is shared among modes.`,
    );
  const { most, share } = f.names;
  const eater = most === undefined ? '' : ` Most of it goes to ${most}, ${share}.`;
  return sentence(
    `${when(f)}${battery} is sure to last ${lasts}, and ${wanted} are wanted.${typicalToo(f, (v) => `lasts ${v}`, `lasts ${figure(account, by.typical.draw)}`)}${eater}`,
  );
};

export const fuseHolds = (f: Finding): string => {
  const m = met(f);
  if (m === undefined) return `Nothing says what current ${subjectOf(f)} holds.`;
  const { account, by } = m;
  const [draw, holds] = [figure(account, by.draw), limitFigure(account, by.value)];
  const at = trimmed(formatValue(by.ambient, 'temperature'));
  if (f.verdict === 'thin')
    return sentence(
      `${when(f)}${subjectOf(f)} carries up to ${draw} of the ${holds} that it holds at ${at}: ${percent(by.left)} in hand.`,
    );
  return sentence(`${when(f)}${subjectOf(f)} carries up to ${draw} and holds only ${holds} at ${at}: it may open.`);
};
