/** What is said of coils and their clamps: that they pull in, hold, let go. */
import { atMost, figure, limitFigure, met, percent, sentence, subjectOf, typically, when } from './phrases.js';
import type { Say } from './phrases.js';

export const coilPullIn: Say = (f) => {
  const m = met(f);
  if (m === undefined) return `Nothing says at what voltage the coil of ${f.about} pulls in.`;
  const { account, by } = m;
  const hot = /own heat/.test(by.limit.condition ?? '');
  const state = hot ? 'switched on again while it is hot, ' : '';
  const [gets, needs] = [figure(account, by.draw), limitFigure(account, by.value)];
  if (f.verdict === 'thin')
    return sentence(
      `${when(f)}${state}the coil of ${f.about} gets ${gets} and needs ${needs} to pull in: ${percent(by.left)} in hand.`,
    );
  return sentence(
    `${when(f)}${state}the coil of ${f.about} gets ${gets} and needs ${needs}: it is not sure to pull in.${typically(f, account, by)}`,
  );
};

export const coilHolds: Say = (f) => {
  const m = met(f);
  if (m === undefined) return `Nothing says what holds the coil of ${f.about}.`;
  const { account, by } = m;
  const [gets, needs] = [figure(account, by.draw), limitFigure(account, by.value)];
  return sentence(
    `${when(f)}pulled in, the coil of ${f.about} keeps ${gets} and is sure to hold from ${needs} on: it is not sure to stay pulled in.${typically(f, account, by)}`,
  );
};

export const coilRelease: Say = (f) => {
  const m = met(f);
  if (m === undefined) return `Nothing says when the coil of ${f.about} lets go.`;
  const { account, by } = m;
  const still = `switched off, the coil of ${f.about} may still carry ${figure(account, by.draw)}, and it lets go only below ${limitFigure(account, by.value)}`;
  return sentence(
    `${when(f)}${still}: ${f.verdict === 'breach' ? 'once on it stays on' : 'it is not sure to let go'}.`,
  );
};

export const clampRating: Say = (f) => {
  const m = met(f);
  const missing = f.account?.missing?.figure;
  if (missing === 'zener-voltage') return `Nothing says at what voltage the clamp of ${f.about} breaks down.`;
  if (m && f.account?.quantity === 'voltage' && m.by.limit.condition !== undefined)
    return sentence(
      `${when(f)}the clamp of ${f.about} breaks down at ${limitFigure(m.account, m.by.value)} and the supply stands up to ${figure(m.account, m.by.draw)} across it: it conducts as long as the load is on.`,
    );
  if (f.account?.quantity === 'temperature') return atMost(f, `the clamp of ${f.about}`, 'reaches');
  if (f.account?.quantity === 'power') return atMost(f, `the clamp of ${f.about}`, 'turns into heat');
  return atMost(f, subjectOf(f), f.account?.quantity === 'voltage' ? 'bears' : 'takes over');
};
