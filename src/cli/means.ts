/** What the command line may say about how the work is done: `--workers`, `--time-limit` and `--part`. */
import { availableParallelism } from 'node:os';
import { parseQuantity } from '../quantity/parse.js';
import { closed } from '../quantity/quantity.js';
import type { Arguments } from './arguments.js';
import type { Means } from './audit-all.js';

/** More threads than this do not help. */
const MOST_WORKERS = 256;
const MOST_PARTS = 10_000;

type Problem = { readonly problem: string };

export function readMeans({ options }: Arguments): Means | Problem {
  const { workers, 'time-limit': limit } = options;
  const count = workers === undefined ? availableParallelism() : whole(workers);
  if (count === undefined || count < 1 || count > MOST_WORKERS)
    return { problem: `--workers is a whole number from 1 to ${MOST_WORKERS}; not ${String(workers)}.` };
  if (typeof limit !== 'string') return { workers: count };
  const parsed = parseQuantity(limit, 'time');
  if ('problem' in parsed) return { problem: `--time-limit: ${parsed.problem}; expected ${parsed.expected}.` };
  const milliseconds = Math.ceil(closed(parsed.quantity).max * 1000);
  // Beyond this a timer has no room.
  if (!(milliseconds > 0 && milliseconds < 2 ** 31))
    return { problem: `--time-limit is longer than nothing and shorter than 24 days; not ${limit}.` };
  return { workers: count, limit: { milliseconds, stated: limit } };
}

/** Part 1 of 1 where nothing is said. */
export function readPart({ options }: Arguments): { readonly part: number; readonly of: number } | Problem {
  const { part: said } = options;
  if (typeof said !== 'string') return { part: 1, of: 1 };
  const [, part = NaN, of = NaN] = /^(\d{1,9})\/(\d{1,9})$/.exec(said)?.map(Number) ?? [];
  if (!(part >= 1 && part <= of && of <= MOST_PARTS))
    return { problem: `--part is one of a number of parts, as 3/8, of ${MOST_PARTS} at most; not ${said}.` };
  return { part, of };
}

const whole = (text: string | true): number | undefined =>
  typeof text === 'string' && /^\d{1,9}$/.test(text) ? Number(text) : undefined;
