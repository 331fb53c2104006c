/** Findings in a few words, for tables and lists where the whole sentence has no room. */
import type { Finding } from '../checks/finding.js';
import { figure, limitFigure, met } from './phrases.js';

/** Rules about wiring, where no figure says it shorter. */
const WORDS: { readonly [rule: string]: (f: Finding) => string } = {
  'jumper-joins-supplies': (f) =>
    `${f.names['terminal'] === undefined ? 'the jumper' : 'its one terminal'} joins ${f.names['logic']} and ${f.names['coil']}`,
  'ground-missing': () => 'no ground for the inputs to return to',
  'no-source': (f) => `nothing feeds ${f.names['rail'] ?? f.about}`,
  'isolation-defeated': (f) => `its couplers isolate nothing, since ${f.names['why']}`,
  'coil-on-pin': (f) => `a winding straight on pin ${f.names['pin']}`,
  'coil-no-clamp': () => 'nothing clamps the winding',
  'pin-used-twice': (f) => `pin ${f.names['pin']} is used twice`,
};

/** 'the coil gets 3.98 V of the 4.27 V it needs', 'laptop is asked for 611 mA of 500 mA'. */
export function fewWords(f: Finding): string {
  const known = WORDS[f.rule];
  if (known) return known(f);
  const m = met(f);
  if (m === undefined) return f.rule.replaceAll('-', ' ');
  const { account, by } = m;
  const title = account.title.replace(/^supply /, '');
  const needs = account.direction === 'at-least' ? ' where' : ' of';
  return `${title}: ${figure(account, by.draw)}${needs} ${limitFigure(account, by.value)}${account.direction === 'at-least' ? ' is needed' : ''}`;
}
