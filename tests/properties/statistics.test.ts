/** Likelier bounds never lie outside the extremes: of samples and of generated projects. */
import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Report } from '../../src/index.js';
import { audit, read } from '../../src/index.js';
import type { Account } from '../../src/ledger/account.js';
import { ledgerOf } from '../../src/ledger/ledger.js';
import type { Method } from '../../src/ledger/statistics.js';
import { statisticsOf } from '../../src/ledger/statistics.js';
import { sampleText } from '../samples/audited.js';
import { sized } from '../sizes.js';
import { projectOf, projects } from './projects.js';

/** Share of a figure, and amperes, volts or kelvins, that the tangents of circuits not in question leave out. */
const ROOM = 2e-5;
const TRACE = 1e-6;

type Bounds = Readonly<Record<'min' | 'max', number>>;

const outside = ({ low, high }: Readonly<Record<'low' | 'high', number>>, { min, max }: Bounds): boolean => {
  const room = ROOM * Math.max(Math.abs(min), Math.abs(max)) + TRACE;
  return low < min - room || high > max + room;
};

const ownerOf = ({ id }: Account): string => id.split('.')[0]!;

describe.each(['rss', 'monte-carlo'] as const)('by %s', (corners) => {
  const names = readdirSync(new URL('../../samples/', import.meta.url)).map((file) => file.replace(/\.yaml$/, ''));

  test.each(names)('no bound of %s lies outside the extremes, and no verdict changes', (name) => {
    const { document } = read(sampleText(name), `${name}.yaml`);
    const plain = audit(document!, { advice: false }).report!;
    const told = audit(document!, { advice: false, corners, builds: sized(60, 2000) }).report!;
    // A reading is held against the extremes alone, what lasts over all modes is in none of them, and until firmware runs the
    // circuit is another one.
    const known = told.accounts.filter(
      (a) => a.draw !== null && a.kind !== 'measured' && a.kind !== 'battery' && a.mode !== 'boot',
    );
    expect(known.filter((a) => a.statistics === undefined)).toEqual([]);
    // The least heat of a driver is judged by nothing: in every corner it keeps the most that its maker publishes, of which a
    // typical one keeps less.
    const unjudged = (a: Report['accounts'][number]): boolean => a.kind === 'driver' && a.quantity === 'temperature';
    const held = (a: Report['accounts'][number]): Bounds =>
      unjudged(a) ? { min: a.statistics!.low, max: a.draw!.max } : a.draw!;
    expect(known.filter((a) => outside(a.statistics!, held(a))).map((a) => [a.title, a.draw, a.statistics])).toEqual(
      [],
    );
    expect(told.findings).toEqual(plain.findings);
    expect(told.verdict).toBe(plain.verdict);
  });

  test('no judged bound of generated projects lies outside the extremes', () => {
    const method: Method =
      corners === 'rss' ? { method: 'rss' } : { method: 'monte-carlo', builds: sized(60, 500), seed: 2 };
    let held = 0;
    fc.assert(
      fc.property(projects({ most: 5, without: ['shared'] }), (data) => {
        const ledger = ledgerOf(projectOf(data));
        // Where a driver is not driven or a coil not let go, how far no longer matters: heat is highest between the ends then.
        const failing = new Set(
          ledger.accounts.flatMap((a) => (a.limits.some((l) => l.limit.isFunction && l.left < 0) ? [ownerOf(a)] : [])),
        );
        for (const [account, { low, middle, high }] of statisticsOf(ledger, method)) {
          if (failing.has(ownerOf(account))) continue;
          held++;
          const { min, max } = account.draw!;
          // A driver that is not driven all the way gets hottest somewhere between its ends, and loses most there.
          const half = account.kind === 'driver' || account.kind === 'coil';
          const room = (half ? 5e-3 : ROOM) * Math.max(Math.abs(min), Math.abs(max)) + 1e-5;
          expect(low).toBeLessThanOrEqual(middle + TRACE);
          expect(middle).toBeLessThanOrEqual(high + TRACE);
          const where = `${account.title}, ${account.quantity} in ${JSON.stringify(data)}`;
          if (account.direction === 'at-least') expect(low, where).toBeGreaterThanOrEqual(min - room);
          else expect(high, where).toBeLessThanOrEqual(max + room);
        }
      }),
      { numRuns: sized(15, 200) },
    );
    expect(held).toBeGreaterThan(sized(200, 4000));
  });
});
