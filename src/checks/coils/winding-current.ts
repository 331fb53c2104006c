/** The account that shows what a winding's switch carries: the driver's, the array channel's, or the pin's. */
import type { Account } from '../../ledger/account.js';
import type { Judged } from '../finding.js';

const SWITCHES = new Set<Account['kind']>(['driver', 'array', 'pin']);

/** @returns the account through which most of the circuit's current goes; undefined when nobody books it */
export function windingCurrent({ accounts }: Judged, circuit: string): Account | undefined {
  const share = (a: Account): number => a.entries.find((e) => e.circuit === circuit)?.max ?? 0;
  return accounts
    .map((j) => j.account)
    .filter((a) => SWITCHES.has(a.kind) && a.quantity === 'current' && a.entries.length === 1 && share(a) > 0)
    .reduce<Account | undefined>((best, a) => (best === undefined || share(a) > share(best) ? a : best), undefined);
}
