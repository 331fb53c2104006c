/** Whether a project still fails what a finding is about, told by that one account: far quicker than judging it whole. */
import { BOOT } from '../ledger/moments.js';
import { runningAccount, startingAccount } from '../ledger/one-account.js';
import type { Project } from '../project/project.js';
import type { Finding } from './finding.js';
import { LIMIT_RULES } from './rules.js';
import { accountKey, judgeAccount } from './verdict.js';

/**
 * @param project a version of the one that the finding is of
 * @returns true only where a whole judgement would find the same; false where it may or may not
 */
export function stillFails(project: Project, { rule, account, runaway }: Finding): boolean {
  const isAboutLimit = LIMIT_RULES.some(({ name }) => name === rule);
  // Of runaway and dead supplies, and of what the file leaves open, only the whole tells.
  if (!isAboutLimit || account === undefined || runaway || project.open.length > 0) return false;
  const state = project.modes.find((m) => m.name === account.mode);
  if (state !== undefined && state.without.length > 0) return false;
  const settled = account.mode === BOOT || state?.during === 'boot' ? startingAccount : runningAccount;
  const key = accountKey({ account });
  const now = settled(
    project,
    ({ id, quantity, direction }) => accountKey({ account: { id, quantity, direction } }) === key,
  );
  if (now === undefined || LIMIT_RULES.find((r) => r.claims(now))?.name !== rule) return false;
  const { verdict } = judgeAccount(now, project.policy);
  return verdict !== 'sound' && verdict !== 'note';
}
