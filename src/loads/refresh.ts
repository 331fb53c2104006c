/** How often a display that is lit in turns shows its whole picture: what an eye makes of that, and how long a turn is. */
import type { LoadInput } from './lowering.js';
import type { AccountPlan, Reading } from './account-plan.js';
import type { Interval } from '../quantity/interval.js';

/** Pictures a second below which light is seen to flicker, and below which digits are seen one after another (common practice, no source). */
const FLICKERS = 60;
const WALKS = 24;

/** Pictures a second, hertz; undefined where nobody states it, or with a problem. */
export function refreshOf({ figures, id }: LoadInput): Interval | undefined {
  const refresh = figures.interval('refresh', 'frequency');
  if (refresh === undefined || refresh.min > 0) return refresh;
  figures.problem('refresh', `\`${id}\` has to be refreshed more than never`, '`refresh: 100 Hz`');
  return undefined;
}

/** The time from one picture to the next, held to what an eye does not see. */
export function flickerAccount(
  id: string,
  base: Pick<AccountPlan, 'circuits' | 'path'>,
  refresh: Interval | undefined,
): AccountPlan[] {
  if (refresh === undefined) return [];
  const hertz = (s: Reading): number => (s.typical ? refresh.typ : refresh.min);
  const bound = (least: number, failing: 'note' | 'strain'): AccountPlan['limits'][number] => ({
    value: 1 / least,
    stated: `${least} pictures a second`,
    grade: 'practice',
    margin: 'none',
    failing: () => failing,
    origin: { document: 'common practice, no source', basis: 'practice' },
  });
  return [
    {
      ...base,
      id: `${id}.refresh`,
      kind: 'input',
      title: `${id}, from one picture to the next`,
      quantity: 'time',
      direction: 'at-most',
      recipes: ['draw-most'],
      read: (s) => 1 / hertz(s),
      limits: [bound(FLICKERS, 'note'), bound(WALKS, 'strain')],
      steps: (s) => [
        {
          name: 't',
          says: 'from one picture to the next',
          formula: '1 / f',
          with: { f: [hertz(s), 'Hz'] },
          gives: [1 / hertz(s), 's'],
        },
      ],
    },
  ];
}

/** The question whose answer tells how long an LED is lit at a time. */
export const asksRefresh = (id: string): string =>
  `how often does ${id} show its whole picture (its \`refresh\`, as in \`refresh: 100 Hz\`)?`;
