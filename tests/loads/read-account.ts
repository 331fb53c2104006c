/** Accounts of small projects by name, for tests of what loads come to. */
import type { Account } from '../../src/ledger/account.js';
import { judged } from '../checks/judged.js';

/** The accounts of a text, found by id, direction and quantity. @throws when there is no such account */
export function accountsOf(text: string, mode?: string) {
  const { accounts } = judged(text, mode);
  return (id: string, direction: string, quantity = 'current'): Account => {
    const found = accounts.find(
      ({ account: a }) => a.id === id && a.direction === direction && a.quantity === quantity,
    );
    if (found === undefined)
      throw new Error(
        `no account ${id}, ${quantity}, ${direction}: there are ${accounts.map(({ account: a }) => `${a.id} ${a.quantity} ${a.direction}`).join('; ')}`,
      );
    return found.account;
  };
}

/** Most amperes that a supply called `bench` is asked for. */
export const asked = (text: string): number => accountsOf(text)('bench', 'at-most').draw!.max;
