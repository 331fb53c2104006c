/** The first sentence of a report: how bad it is, and how many things have to change. */
import { type Cause, count } from './causes.js';
import type { Report } from './report.js';

/** 'one thing', '2 things'. */
const things = (count: number): string => (count === 1 ? 'one thing' : `${count} things`);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What the headline says first, before the causes behind it. */
export function verdictSentence({ verdict, accounts, policy }: Report, causes: readonly Cause[]): string {
  const strained = count(causes, 'strain');
  switch (verdict) {
    case 'breach':
      return (
        `${capital(things(count(causes, 'breach')))} must change before power goes on` +
        (strained > 0
          ? `; at the worst case ${strained === 1 ? 'one' : strained} more ${is(strained)} not promised.`
          : '.')
      );
    case 'strain':
      return `It may well work on the desk. At the worst case, ${things(strained)} ${is(strained)} not promised.`;
    case 'unproven':
      return `Nothing is known to be wrong, but ${causes.length === 1 ? 'one question is' : `${causes.length} questions are`} open.`;
    case 'thin':
      return `Everything holds, but ${things(causes.length)} ${has(causes.length)} less in hand than the policy ‘${policy}’ asks.`;
    case 'note':
    case 'sound':
      return accounts.length === 0
        ? 'There is nothing to hold against a limit: the file names no load.'
        : 'Nothing needs to change: everything holds at its worst case.';
  }
}

const is = (count: number): string => (count === 1 ? 'is' : 'are');
const has = (count: number): string => (count === 1 ? 'has' : 'have');
