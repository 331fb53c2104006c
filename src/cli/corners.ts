/** What the command line may say about corners: `--corners`, `--builds` and `--seed`. */
import type { Arguments } from './arguments.js';

export const KINDS = ['extreme', 'rss', 'monte-carlo'] as const;

/** So few builds tell nothing about one in a thousand, and so many take minutes. */
const FEWEST = 100;
const MOST = 1_000_000;

export interface CornerOptions {
  readonly corners?: (typeof KINDS)[number];
  readonly builds?: number;
  readonly seed?: number;
}

/** The options that stand there, or what is wrong with them. */
export function readCorners({ options }: Arguments): CornerOptions | { readonly problem: string } {
  const { corners, builds, seed } = options;
  for (const name of ['builds', 'seed'])
    if (options[name] !== undefined && corners !== 'monte-carlo')
      return { problem: `--${name} goes with --corners monte-carlo.` };
  const [many, start] = [whole(builds), whole(seed)];
  if (builds !== undefined && !(many !== undefined && many >= FEWEST && many <= MOST))
    return { problem: `--builds is a whole number from ${FEWEST} to ${MOST}; not ${String(builds)}.` };
  if (seed !== undefined && start === undefined) return { problem: `--seed is a whole number; not ${String(seed)}.` };
  return {
    ...(corners !== undefined && { corners: corners as (typeof KINDS)[number] }),
    ...(many !== undefined && { builds: many }),
    ...(start !== undefined && { seed: start }),
  };
}

const whole = (text: string | true | undefined): number | undefined =>
  typeof text === 'string' && /^\d{1,9}$/.test(text) ? Number(text) : undefined;
