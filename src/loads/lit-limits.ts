/**
 * What an LED bears that is lit a share of the time, over and over: on average what it bears for ever, and its peak rating in
 * each pulse. Makers state that one for pulses of a length and a share of the time; in longer ones nothing is promised beyond
 * what it bears for ever.
 */
import { formatValue } from '../quantity/print.js';
import type { Figures } from './figures.js';
import { rating } from './limits.js';
import type { LimitPlan } from './account-plan.js';

/** How an LED is lit. */
export interface Lit {
  /** Share of the time. */
  readonly share: number;
  /** Seconds at a time, where that is known; what would tell, where it is not. */
  readonly seconds?: number;
  readonly asks?: string;
}

/** Limits of an LED's current while it is lit; none where nobody states what it bears for ever. */
export function litLimits(figures: Figures, lit: Lit): LimitPlan[] {
  const mean = rating(figures, 'maximum-current', 'current');
  const peak = rating(figures, 'peak-current', 'current');
  if (mean === undefined) return [];
  if (lit.share >= 1) return [mean];
  const beyond = peak && pastPeak(figures, mean, peak, lit);
  return [averaged(mean, lit.share), ...(peak ? [peak] : []), ...(beyond ? [beyond] : [])];
}

const shareOf = (share: number): string => `${Math.round(share * 1000) / 10} %`;

/** A limit for ever, for something that is lit a share of the time: its mean current counts. */
function averaged(limit: LimitPlan, share: number): LimitPlan {
  const { value } = limit;
  return {
    ...limit,
    value: typeof value === 'number' ? value / share : (s) => value(s) / share,
    condition: `${limit.stated} for ever; lit ${shareOf(share)} of the time`,
  };
}

/** What is promised in pulses that are longer, or more of the time, than its peak rating holds for; undefined where it holds. */
function pastPeak(
  figures: Figures,
  mean: LimitPlan,
  peak: LimitPlan,
  { share, seconds, asks }: Lit,
): LimitPlan | undefined {
  const width = figures.interval('peak-width', 'time')?.min;
  const duty = figures.interval('peak-duty', 'ratio')?.min;
  const tooMuch = duty !== undefined && share > duty * (1 + 1e-9);
  const tooLong = width !== undefined && seconds !== undefined && seconds > width * (1 + 1e-9);
  const unknown = width !== undefined && seconds === undefined;
  if (!tooMuch && !tooLong && !unknown) return undefined;
  const holds = [
    ...(width === undefined ? [] : [`of up to ${formatValue(width, 'time', 2)}`]),
    ...(duty === undefined ? [] : [`for up to ${shareOf(duty)} of the time`]),
  ].join(', ');
  const is = seconds === undefined ? '' : `${formatValue(seconds, 'time', 2)} at a time, `;
  return {
    ...mean,
    grade: mean.grade === 'practice' ? 'practice' : 'characterised',
    margin: 'none',
    condition: `${peak.stated} only in pulses ${holds}; it is lit ${is}${shareOf(share)} of the time`,
    ...(!tooMuch && unknown && asks !== undefined && { asks }),
  };
}
