/** What the command line may say about the conditions of an audit. */
import type { Interval } from '../quantity/interval.js';
import { parseQuantity } from '../quantity/parse.js';
import { closed } from '../quantity/quantity.js';
import type { Arguments } from './arguments.js';

export interface Conditions {
  readonly mode?: string;
  /** The variant in place of the file as it stands. */
  readonly variant?: string;
  /** In °C. */
  readonly ambient?: Interval;
  /** The day of the run, as waivers write theirs: '2027-03-01'. */
  readonly today: string;
}

/** The conditions of `--mode`, `--variant` and `--ambient`, and the clock's day here; or what is wrong with them. */
export function readConditions({ options }: Arguments): Conditions | { readonly problem: string } {
  const { mode, variant, ambient } = options;
  const conditions = {
    today: today(),
    ...(typeof mode === 'string' && { mode }),
    ...(typeof variant === 'string' && { variant }),
  };
  if (typeof ambient !== 'string') return conditions;
  const parsed = parseQuantity(ambient, 'temperature');
  if ('quantity' in parsed) return { ...conditions, ambient: closed(parsed.quantity) };
  return { problem: `--ambient: ${parsed.problem}; expected ${parsed.expected}.` };
}

/** A file as a report's head names it: with the variant that was asked for. */
export const fileAndVariant = (file: string, { variant }: Conditions): string =>
  variant === undefined ? file : `${file}, variant ${variant}`;

function today(): string {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
