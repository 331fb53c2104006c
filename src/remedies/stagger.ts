/**
 * Where a sum is too much and no single part of it is, not all of it need be on together: an interlock lets as many on as fit. By
 * firmware it costs nothing and holds as long as the firmware does; by wiring it holds whatever the firmware does.
 */
import { BOOT } from '../ledger/moments.js';
import { isMapping } from '../loads/figures.js';
import type { Way } from './cures.js';
import type { Cure } from './prove.js';

const RULES = new Set([
  'supply-current',
  'supply-power',
  'fuse-holds',
  'regulator-current',
  'regulator-heat',
  'rail-current',
  'inlet-current',
  'series-current',
  'group-current',
  'total-current',
  'driver-current',
  'driver-heat',
  'wire-current',
]);

export const stagger: Way = ({ finding, judgement, data }) => {
  const { project } = judgement;
  // With modes the file says itself what is on together.
  if (!RULES.has(finding.rule) || project.modes.length > 0) return [];
  const account = finding.account;
  const flows = judgement.accounts.find((j) => j.account.id === account?.id && j.account.entries.length > 1);
  const named = flows?.account.entries.map((e) => e.circuit) ?? [];
  const of = project.circuits.filter((c) => !c.always && !c.signal && named.includes(c.id)).map((c) => c.id);
  if (of.length < 2) return [];
  const known = isMapping(data) && Array.isArray(data['interlocks']) ? (data['interlocks'] as readonly unknown[]) : [];
  const list =
    of.length > 4
      ? `${of.slice(0, 3).join(', ')} and ${of.length - 3} more`
      : `${of.slice(0, -1).join(', ')} and ${of.at(-1)}`;
  const starts = account?.mode === BOOT;
  const attempt = (most: number, by: 'firmware' | 'wiring'): Cure => ({
    title: `Let no more than ${most} of ${list} on at a time, by ${by}`,
    changes: [{ path: ['interlocks'], value: [...known, { 'at-most': most, of, by }] }],
    parts: by === 'wiring' ? ['a relay or gate that locks the others out'] : [],
    steps: [
      by === 'firmware'
        ? `In the firmware let no more than ${most} of ${list} be on together, and switch them a moment apart. Nothing holds it but the firmware: a fault there switches all of them on.`
        : `Wire them so that no more than ${most} of ${list} can be on together, whatever the firmware does: a selector, or each one’s control over a contact of the others.`,
    ],
    watch: account ? [account.id] : [],
  });
  // As many as fit: the most first.
  const counts = [...new Set([of.length - 1, Math.ceil(of.length / 2), 1])]
    .filter((n) => n >= 1 && n < of.length)
    .sort((a, b) => b - a);
  // Until firmware runs it keeps nothing.
  const ways = starts ? (['wiring'] as const) : (['firmware', 'wiring'] as const);
  return counts.flatMap((n) => ways.map((by) => attempt(n, by)));
};
