/** Findings that a file sets aside: which, why, and until when. */
import { isMapping } from '../loads/figures.js';
import type { WaiverPlan } from './project.js';
import type { Gathered } from './remarks.js';

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Whether a text is a day of the calendar: '2027-03-01'. */
function isDay(text: string): boolean {
  const [, year, month, day] = DAY.exec(text)?.map(Number) ?? [];
  if (year === undefined || month === undefined || day === undefined) return false;
  // Days that a month does not have run over into the next one.
  const at = new Date(Date.UTC(year, month - 1, day));
  return at.getUTCMonth() === month - 1 && at.getUTCDate() === day;
}

/** @returns those of `waivers` that are whole; what is not is a problem, or the schema's affair */
export function waiversFrom(raw: unknown, remarks: Gathered): WaiverPlan[] {
  if (!Array.isArray(raw)) return [];
  return raw.flatMap((row: unknown, k): WaiverPlan[] => {
    if (!isMapping(row)) return [];
    const { rule, about, reason, until, accepts } = row;
    if (typeof rule !== 'string' || typeof about !== 'string' || typeof reason !== 'string') return [];
    const path = ['waivers', k];
    if (until !== undefined && !(typeof until === 'string' && isDay(until))) {
      remarks.problem({
        path: [...path, 'until'],
        on: 'value',
        says: 'this is no day of the calendar',
        expected: 'year, month and day: `2027-03-01`',
      });
      return [];
    }
    return [
      {
        rule,
        about,
        reason,
        ...(typeof until === 'string' && { until }),
        ...(accepts === 'damage' && { accepts: 'damage' as const }),
        path,
      },
    ];
  });
}
