/** What a relay board's file leaves open, and what each answer would mean in numbers. */
import type { Finding } from '../checks/finding.js';
import type { JudgedAccount } from '../checks/verdict.js';
import { formatInterval } from '../quantity/print.js';
import { figure, limitFigure, sentence } from './phrases.js';

const NOTHING_SAYS: { readonly [figure: string]: (about: string) => string } = {
  'input.active': (about) => `Nothing says whether a low or a high input switches ${about} on.`,
  'input.indicator': (about) => `Nothing says whether an indicator sits in series with the couplers of ${about}.`,
};

export function inputLeftOpen(f: Finding): string {
  const open = NOTHING_SAYS[f.account?.missing?.figure ?? '']?.(f.about) ?? '';
  const meant = (f.answers ?? []).map(({ answer, accounts }) => {
    const told = [turnsOn(f.about, accounts), letsGo(f.about, accounts)].filter((text) => text !== undefined);
    return told.length === 0 ? '' : ` If ${answer.briefly}: ${told.join('; ')}.`;
  });
  return sentence(`${open}${meant.join('')}`);
}

const of = (about: string, accounts: readonly JudgedAccount[], what: string, direction: string, quantity: string) =>
  accounts.find(
    ({ account: a }) =>
      a.id.startsWith(`${about}.`) && a.id.endsWith(what) && a.direction === direction && a.quantity === quantity,
  );

/** '1.3 to 2.8 mA in its coupler, which turns it on'. */
function turnsOn(about: string, accounts: readonly JudgedAccount[]): string | undefined {
  const input = of(about, accounts, '.input', 'at-most', 'current')?.account.draw;
  const drive = of(about, accounts, '.driver', 'at-least', 'current');
  const enough = drive?.by && (drive.by.draw >= drive.by.value ? 'turns on' : 'is not sure to turn on');
  if (input === undefined) return enough && `an input ${enough}`;
  return `an input draws ${formatInterval(input, 'current')}${enough === undefined ? '' : ` and ${enough}`}`;
}

/** 'switched off, the coil still carries up to 2.92 mA of the 6.49 mA at which it lets go'. */
function letsGo(about: string, accounts: readonly JudgedAccount[]): string | undefined {
  const release = of(about, accounts, '.coil', 'at-most', 'current');
  if (release?.by === undefined) return undefined;
  const { account, by } = release;
  const carries = `switched off, its coil may carry ${figure(account, by.draw)}`;
  const level = limitFigure(account, by.value);
  return `${carries} and lets go ${by.draw <= by.value ? '' : 'only '}below ${level}`;
}
