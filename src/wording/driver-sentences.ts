/** What is said of drivers and inputs: that they get enough to conduct, and let go. */
import type { Finding } from '../checks/finding.js';
import type { Account, LimitMet } from '../ledger/account.js';
import { figure, limitFigure, met, percent, sentence, subjectOf, typically, when } from './phrases.js';
import type { Say } from './phrases.js';

/** The part that an account is about, without what of it is asked. */
export const partOf = (f: Finding): string => subjectOf(f).replace(/, .*$/, '');

/** Whose base or gate it is: the load's driver, or one of the stages before it. */
export const stageOf = (f: Finding): string => {
  const [, stage] = /\.stage-(\d+)(?:\.|$)/.exec(f.account?.id ?? '') ?? [];
  return stage === undefined ? f.about : `stage ${stage} of the driver of ${f.about}`;
};

/** A coupler whose output is asked for more than its LED's current and its ratio allow. */
function passesOn(f: Finding, account: Account, by: LimitMet): string {
  const coupler = account.title.replace(/, passed on$/, '').replace(/^driver/, 'the coupler that is the driver');
  const [gives, asked] = [figure(account, by.draw), limitFigure(account, by.value)];
  if (by.limit.mild)
    return sentence(
      `at the end of its life ${coupler} passes on less than what is asked of it: new it gives ${gives}, and ${asked} would be needed.`,
    );
  if (f.verdict === 'thin')
    return sentence(
      `${when(f)}${coupler} can pass on ${gives} where ${asked} are asked of it: ${percent(by.left)} more than needed.`,
    );
  return sentence(
    `${when(f)}${coupler} can pass on only ${gives} where ${asked} are asked of it: it is not sure to switch what hangs on it.${typically(f, account, by, 'passes on')}`,
  );
}

export const driverDrive: Say = (f) => {
  const m = met(f);
  const gate = f.account?.quantity === 'voltage';
  if (f.account?.missing?.figure === 'threshold')
    return `Nothing says at what voltage the input of ${stageOf(f)} switches.`;
  if (m === undefined)
    return gate
      ? `Nothing says at which gate voltage ${partOf(f)} conducts.`
      : `Nothing says how much drive ${subjectOf(f).replace(/, .*$/, '')} needs.`;
  const { account, by } = m;
  const [gets, needs] = [figure(account, by.draw), limitFigure(account, by.value)];
  const what = account.title.endsWith(', input voltage') || account.kind === 'array' ? 'input' : gate ? 'gate' : 'base';
  if (account.title.endsWith('passed on')) return passesOn(f, account, by);
  if (gate && by.limit.grade === 'characterised')
    return sentence(
      `${when(f)}the gate of ${stageOf(f)} gets ${gets}, and below ${needs} its resistance is not specified: the threshold is only where it begins to conduct.`,
    );
  if (by.limit.mild)
    return sentence(
      `with a coupler at the end of its life the ${what} of ${stageOf(f)} gets less than the ${needs} it needs: it holds while the coupler is new.`,
    );
  if (f.verdict === 'thin')
    return sentence(
      `${when(f)}the ${what} of ${stageOf(f)} gets ${gets} and needs ${needs}: ${percent(by.left)} more than needed.`,
    );
  return sentence(
    `${when(f)}the ${what} of ${stageOf(f)} gets ${gets} and needs ${needs}: it is not sure to switch its load.${typically(f, account, by)}`,
  );
};

export const driverRelease: Say = (f) => {
  const m = met(f);
  if (f.account?.quantity === 'voltage')
    return m === undefined
      ? `Nothing says at what voltage the input of ${stageOf(f)} switches.`
      : sentence(
          `${when(f)}at rest the input of ${stageOf(f)} stands at ${figure(m.account, m.by.draw)} and reads low only below ${limitFigure(m.account, m.by.value)}: the stage is not sure to let go.`,
        );
  if (m === undefined) return `Nothing says what ${f.about} still carries when it is switched off.`;
  const { account, by } = m;
  const still = `${f.about} may still carry ${figure(account, by.draw)}`;
  const most = `its driver lets go of it only below ${limitFigure(account, by.value)}, a tenth of what it takes`;
  return sentence(
    `${when(f)}switched off, ${still}, and ${most}: ${f.verdict === 'breach' ? 'the driver never lets go' : 'it is not sure to let go'}.`,
  );
};

/** The input of a black box, switched on (at least so many volts) or off (at most). */
export const inputLevels: Say = (f) => {
  const m = met(f);
  const on = f.account?.direction === 'at-least';
  if (m === undefined) return `Nothing says at what voltage the input of ${f.about} is surely ${on ? 'on' : 'off'}.`;
  const { account, by } = m;
  const [gets, level] = [figure(account, by.draw), limitFigure(account, by.value)];
  if (f.verdict === 'thin')
    return sentence(
      `${when(f)}switched ${on ? 'on' : 'off'}, the input of ${f.about} gets ${gets} where ${level} is its level: ${percent(by.left)} in hand.`,
    );
  const typical = f.verdict === 'breach' ? 'not even a typical build' : 'only a typical build';
  return sentence(
    on
      ? `${when(f)}switched on, the input of ${f.about} gets only ${gets}, and it is surely on from ${level}: ${typical} turns on.`
      : `${when(f)}switched off, the input of ${f.about} still gets ${gets}, and it is surely off only below ${level}: ${typical} turns off.`,
  );
};

export const chopperStarved: Say = (f) => {
  const m = met(f);
  if (m === undefined) return `Nothing says what current the chopper of ${f.about} has to hold.`;
  const { account, by } = m;
  const [reaches, held] = [figure(account, by.draw), limitFigure(account, by.value)];
  const first = `with its bridge on all the time a winding of ${f.about} comes to ${reaches}, and its chopper is set to ${held}`;
  if (f.verdict === 'thin') return sentence(`${when(f)}${first}: ${percent(by.left)} in hand.`);
  return sentence(
    `${when(f)}${first}: its supply stands too low to hold that.${typically(f, account, by, 'comes to')}`,
  );
};
