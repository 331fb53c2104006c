/** Tells of a meter reading that cannot be by the figures of the file: which of them it contradicts, and what would explain it. */
import type { Account } from '../../ledger/account.js';
import type { Ledger } from '../../ledger/ledger.js';
import { sideOf } from '../../ledger/measured.js';
import { RUNAWAY, modesOf } from '../../ledger/moments.js';
import { formatInterval, formatValue } from '../../quantity/print.js';
import type { LimitRule } from '../finding.js';
import type { Contradiction } from './contradictions.js';
import { contradictionsOf } from './contradictions.js';
import { explanationsOf } from './explanations.js';

/** So many readings are explained: each takes solving the project some hundred times. */
const MOST_EXPLAINED = 12;

function names(account: Account, ledger: Ledger): { readonly [name: string]: string } {
  const { reading, draw, nearest } = account;
  if (reading === undefined) return {};
  const base = {
    of: reading.of.id,
    reading: reading.stated,
    ...(reading.mode !== undefined && { mode: reading.mode }),
  };
  const side = draw && sideOf(reading.value, draw);
  if (draw === undefined || side === undefined || nearest === undefined) return base;
  const bounds = formatInterval(draw, reading.quantity);
  if (ledger.accounts.filter((a) => a.nearest).indexOf(account) >= MOST_EXPLAINED)
    return { ...base, bounds, contradicts: '', explains: '', untold: 'yes' };
  const modes = modesOf(ledger.project).filter((m) => m.name !== RUNAWAY);
  const taken = modes.filter((m) => reading.mode === undefined || m.name === reading.mode);
  const others = modes.filter((m) => !taken.includes(m));
  const target = side === 'above' ? reading.value.min : reading.value.max;
  return {
    ...base,
    bounds,
    contradicts: contradictionsOf(ledger, reading, nearest, target).map(inWords).join(', or '),
    explains: explanationsOf(ledger.project, reading, draw, taken, others).join(', or if '),
  };
}

function inWords({ what, dimension, stated, needed, loses }: Contradiction): string {
  const is = `it is ${formatInterval(stated, dimension)}`;
  const why = loses && needed > stated.max ? `${is} when it conducts fully` : is;
  return `${what} would have to be ${formatValue(needed, dimension)} (${why})`;
}

export default {
  name: 'measured-disagrees',
  family: 'data',
  claims: (a) => a.kind === 'measured',
  names,
} satisfies LimitRule;
