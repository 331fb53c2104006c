/**
 * Waivers put on findings. A waived finding stays in the report with its reason and weighs nothing; one whose waiver has run
 * out weighs as much as ever, and the waiver is told beside it. What damages a chip is never waived in passing: a coil on a pin
 * needs a word of its own, `accepts: damage`.
 */
import type { WaiverPlan } from '../project/project.js';
import type { Finding } from './finding.js';
import { worstOf } from './verdict.js';

/** Rules about waivers themselves: their findings come of those of all others. */
export const WAIVER_RULES = ['waiver-expired', 'waiver-unused'] as const;

/** Rules whose findings are waived with that word alone. */
const DAMAGING = new Set(['coil-on-pin']);

/** Whether a waiver means a finding: by what it is about, its account, or all circuits and accounts of a load (`vents.*`). */
function means({ rule, about }: WaiverPlan, f: Finding): boolean {
  if (rule !== f.rule && rule !== f.by?.limit.sameAs) return false;
  const names = [f.about, ...(f.account ? [f.account.id] : [])];
  if (!about.endsWith('.*')) return names.includes(about);
  return names.some((name) => name.startsWith(about.slice(0, -1)));
}

/** @param today as '2026-11-25'; absent: nobody knows the day, and no waiver has run out */
export function waived(
  findings: readonly Finding[],
  waivers: readonly WaiverPlan[],
  today: string | undefined,
): readonly Finding[] {
  if (waivers.length === 0) return findings;
  // A year before 10000 sorts as a text.
  const isOver = ({ until }: WaiverPlan): boolean => until !== undefined && today !== undefined && until < today;
  const covers = (waiver: WaiverPlan, f: Finding): boolean =>
    means(waiver, f) && (!DAMAGING.has(f.rule) || waiver.accepts === 'damage');
  const put = findings.map((f) => {
    const by = waivers.find((waiver) => !isOver(waiver) && covers(waiver, f));
    return by ? { ...f, waiver: by } : f;
  });
  const about = waivers.flatMap((waiver): Finding[] => {
    const meant = findings.filter((f) => means(waiver, f));
    const covered = meant.filter((f) => covers(waiver, f));
    const base = { family: 'data' as const, about: waiver.about, path: waiver.path, related: [] };
    const names = { rule: waiver.rule, ...(waiver.until !== undefined && { until: waiver.until }) };
    if (covered.length === 0)
      return [
        { ...base, rule: 'waiver-unused', verdict: 'note', names: { ...names, damage: String(meant.length > 0) } },
      ];
    if (!isOver(waiver)) return [];
    const verdict = worstOf(covered.map((f) => f.verdict));
    return [{ ...base, rule: 'waiver-expired', verdict: verdict === 'sound' ? 'note' : verdict, names }];
  });
  return [...put, ...about];
}
