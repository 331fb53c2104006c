/** The sentences about signal lines: levels, what is pushed into pins, what nothing holds. */
import type { Finding } from '../checks/finding.js';
import { formatValue } from '../quantity/print.js';
import { against, figure, limitFigure, met, percent, sentence, when } from './phrases.js';

type Say = (f: Finding) => string;

/** 'A1' of 'pin A1, pushed in while main.3v3 is dead'. */
const pinOf = (f: Finding): string => /^pin (\S+?),/.exec(f.account?.title ?? '')?.[1] ?? f.about;

const injected: Say = (f) => {
  const m = met(f);
  if (m === undefined) return sentence(`nothing says what may be pushed into pin ${pinOf(f)}.`);
  const dead = m.by.limit.condition?.startsWith('while ') ? ` ${m.by.limit.condition}` : '';
  const draw = figure(m.account, m.by.draw);
  // Where none is published, the trade's own line is said for what it is.
  const range = m.by.limit.range;
  const line = range
    ? `and no data sheet allows any: more than ${limitFigure(m.account, f.verdict === 'breach' ? range.max : range.min)} is too much`
    : `where ${against(f, m).replace(/^\S+ \S+ (where|of) /, '')}`;
  return sentence(`${when(f)}up to ${draw} is pushed into pin ${pinOf(f)} beyond its supply${dead}, ${line}.`);
};

const level: Say = (f) => {
  const m = met(f);
  const high = f.account?.direction === 'at-least';
  const word = high ? 'high' : 'low';
  const what = f.account?.title.replace(/, (high|low)$/, '') ?? f.about;
  if (m === undefined)
    return sentence(
      `nothing says the ${f.account?.missing?.figure ?? 'levels'} of ${what}: where it stands is not known.`,
    );
  const { account, by } = m;
  const [gets, needs] = [figure(account, by.draw), limitFigure(account, by.value)];
  const stands = `${what} may be as ${high ? 'low' : 'high'} as ${gets} while it is ${word}`;
  if (f.verdict === 'unproven')
    return sentence(
      `${when(f)}${stands}: whether that is read as ${word} nobody states, and ${high ? 'from' : 'up to'} ${needs} would be usual.`,
    );
  if (f.verdict === 'thin')
    return sentence(`${when(f)}${stands}, of ${needs} that are surely read as ${word}: ${percent(by.left)} in hand.`);
  const typical =
    f.verdict === 'breach'
      ? ` Even the typical build comes to ${figure(account, by.typical.draw)}.`
      : by.limit.isFunction
        ? ' A typical build is understood.'
        : '';
  return sentence(
    `${when(f)}${stands}, and it is surely read as ${word} only ${high ? 'from' : 'up to'} ${needs}.${typical}`,
  );
};

const busCurrent: Say = (f) => {
  const m = met(f);
  if (m === undefined) return sentence(`nothing says what the ${f.account?.title} gives.`);
  const what = m.account.title.replace(/, pulled low$/, '');
  return sentence(
    `${when(f)}whoever pulls the ${what} low has to carry up to ${figure(m.account, m.by.draw)}, and a bus device is only sure of ${limitFigure(m.account, m.by.value)}.`,
  );
};

const busRise: Say = (f) => {
  const m = met(f);
  const what = f.account?.title.replace(/, let go$/, '') ?? f.about;
  if (m === undefined) return sentence(`nothing pulls the ${what} up: it can never be high.`);
  return sentence(
    `${when(f)}let go, the ${what} takes up to ${figure(m.account, m.by.draw)} to rise, where ${limitFigure(m.account, m.by.value)} is the most at 100 kHz: its pull-ups are too weak.`,
  );
};

const levelOver: Say = (f) => {
  const m = met(f);
  const what = f.account?.title.replace(/, above its supply$/, '') ?? f.about;
  if (m === undefined) return sentence(`nothing says how high ${what} is driven.`);
  if (m.by.limit.range)
    return sentence(
      `${when(f)}${what} is driven up to ${figure(m.account, m.by.draw)}, and a pin without a clamp to its supply bears ${limitFigure(m.account, m.by.limit.range.min)}.`,
    );
  return sentence(
    `${when(f)}${what} is driven up to ${figure(m.account, m.by.draw)}, and its own supply may be as low as ${figure(m.account, m.by.value - 0.3)}.`,
  );
};

export const LINE_SENTENCES: { readonly [rule: string]: Say } = {
  'two-outputs': (f) =>
    `Two outputs drive pin ${f.names['pin']}, ${f.about} and ${f.names['other']}: they fight as soon as they disagree.`,
  'input-floats': (f) =>
    `Nothing holds pin ${f.names['pin']} while ${f.about} is open: it reads whatever its leakage makes of it.`,
  'rail-lifted': (f) =>
    `Pins push up to ${formatValue(Number(f.names['amps']), 'current')} more into ${f.about} than it draws at the least: the rail rises with them.`,
  'pin-clamps': (f) => {
    const condition = f.account!.limits.map((l) => l.limit.condition).find((c) => c?.startsWith('while '));
    const moment = condition === undefined ? '' : ` ${condition}`;
    return sentence(
      `up to ${figure(f.account!, f.account!.draw!.max)} flows through the clamp of pin ${pinOf(f)}${moment}: what drives it stands above the chip’s supply.`,
    );
  },
  'pin-drive': (f) =>
    sentence(
      `${f.account!.title.replace(/, (source|sink)$/, '')} is set to drive ${f.names['drive']} and carries up to ${figure(f.account!, f.account!.draw!.max)}: its level is promised only up to the setting.`,
    ),
  'pin-injected': injected,
  'bus-current': busCurrent,
  'bus-rise': busRise,
  'level-over': levelOver,
  'level-high': level,
  'level-low': level,
};
