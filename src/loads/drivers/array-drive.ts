/** What a channel's input current lets it carry, and whether that is enough for what hangs on it. */
import { gainAt } from '../../circuit/bipolar.js';
import { closed } from '../../quantity/quantity.js';
import { branchSteps } from '../branch-working.js';
import type { Figures } from '../figures.js';
import type { ArrayChannel } from '../lowering.js';
import type { AccountPlan, Reading } from '../account-plan.js';

/** The typical gain is so many times the least (rule 14 of the format). */
const TYPICAL_GAIN = 2;
/** Of channels joined for one load one may take so many times its even share (rule 10 of the format). */
const UNEVEN = 1.2;

/** Share of a load's current that one of the channels joined for it carries: even typically, at the worst a fifth more. */
export const shareOf =
  ({ joined }: ArrayChannel) =>
  (s: Reading): number =>
    joined === 1 ? 1 : (s.typical ? 1 : UNEVEN) / joined;

/** The gain that a corner counts on; undefined when nobody states it. */
function gainOf(figures: Figures): ((s: Reading) => number) | undefined {
  const gain = figures.figure('gain', 'ratio');
  if (gain === undefined) return undefined;
  const least = closed(gain.quantity).min;
  return (s) => (s.typical ? TYPICAL_GAIN * least : gainAt(least, s.ambient));
}

/** The voltage at a logic input, held against the one that switches its channel on. */
export function levelAccount(
  figures: Figures,
  id: string,
  path: AccountPlan['path'],
  users: readonly ArrayChannel[],
): AccountPlan[] {
  const threshold = figures.figure('input-threshold', 'voltage');
  const part = users[0]!.input[0];
  if (threshold === undefined || part === undefined) return [];
  const { typ, min } = closed(threshold.quantity);
  return [
    {
      id,
      kind: 'array',
      title: `array channel ${id}, input level`,
      quantity: 'voltage',
      direction: 'at-least',
      circuits: [...new Set(users.map((u) => u.circuit))],
      path,
      recipes: ['drive-worst', 'drive-best'],
      read: (s) => s.across(part),
      limits: [
        {
          value: (s) => (s.typical ? typ : Math.max(min, typ)),
          stated: threshold.quantity.stated,
          grade: 'operating',
          isFunction: true,
          margin: 'function-voltage',
          origin: threshold.origin,
          condition: 'from there on its channel conducts',
        },
      ],
      steps: (s) => [
        ...branchSteps(s.branch(part), 'current into the input'),
        {
          name: 'V_input',
          says: 'voltage at the input',
          formula: 'I * R',
          with: { I: [s.current(part), 'A'], R: [s.ohms(part), 'Ω'] },
          gives: [s.across(part), 'V'],
        },
      ],
    },
  ];
}

/** Amperes that the channels behind an input can carry together; undefined when nobody states their gain. @param input its part */
export function ableAmps(figures: Figures, input: string): ((s: Reading) => number) | undefined {
  const gain = gainOf(figures);
  return gain && ((s) => gain(s) * s.current(input));
}

/** The input current of a channel, held against what its loads want. @param users what hangs on the channel */
export function driveAccount(
  figures: Figures,
  id: string,
  path: AccountPlan['path'],
  users: readonly ArrayChannel[],
): AccountPlan {
  const { input, joined } = users[0]!;
  const part = input[0]!;
  const into = (s: Reading): number => s.current(part) / joined;
  const gain = gainOf(figures);
  const stated = figures.figure('gain', 'ratio');
  const carried = (s: Reading): number => users.reduce((sum, u) => sum + s.current(u.part) * shareOf(u)(s), 0);
  return {
    id,
    kind: 'array',
    title: `array channel ${id}, input current`,
    quantity: 'current',
    direction: 'at-least',
    circuits: [...new Set(users.map((u) => u.circuit))],
    path,
    recipes: ['drive-worst', 'drive-best'],
    read: into,
    limits:
      gain && stated
        ? [
            {
              value: (s) => carried(s) / gain(s),
              stated: `gain of ${stated.quantity.stated}`,
              grade: 'operating',
              isFunction: true,
              margin: 'drive',
              origin: stated.origin,
              condition: 'channel current over the gain',
            },
          ]
        : [],
    ...(!gain && { missing: { figure: 'gain', asks: `what is the least gain of array ${id} (its \`gain\`)?` } }),
    steps: (s) => [
      ...branchSteps(
        s.branch(part),
        joined === 1 ? 'current into the array’s input' : 'current into the joined inputs',
      ),
      ...(joined === 1
        ? []
        : [
            {
              name: 'I_input',
              says: 'each of them has its share',
              formula: 'I / n',
              with: { I: [s.current(part), 'A'], n: [joined, ''] } as const,
              gives: [into(s), 'A'] as const,
            },
          ]),
      ...(gain
        ? [
            {
              name: 'I_needed',
              says: 'input current that carries the load at the least gain',
              formula: 'I_load / gain',
              with: { I_load: [carried(s), 'A'], gain: [gain(s), ''] } as const,
              gives: [carried(s) / gain(s), 'A'] as const,
            },
          ]
        : []),
    ],
  };
}
