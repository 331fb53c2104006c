/** The output of a solid-state relay: it keeps a voltage for itself, and what it keeps heats it. */
import { closed } from '../../quantity/quantity.js';
import { heatAccount, heatOf } from '../drivers/junction-heat.js';
import type { AccountPlan, Reading } from '../account-plan.js';
import type { Member } from '../branch-plan.js';
import type { Contact, ContactBase, ContactInput } from './contact.js';

const partOf = (circuit: string): string => `${circuit}.output`;

/** What the output keeps of the load's voltage; nothing where nobody states it, and for a contact of metal. */
export function switchDrop({ type, relay, circuit }: ContactInput): readonly Member[] {
  const drop = type === 'solid-state-relay' ? relay.figure('drop', 'voltage') : undefined;
  if (drop === undefined) return [];
  return [{ kind: 'drop', part: partOf(circuit), volts: closed(drop.quantity), origin: drop.origin }];
}

/** How hot the output gets. */
export function switchHeat(base: ContactBase, { circuit, input }: Contact): AccountPlan[] {
  const { relay } = input;
  const title = `output of ${circuit}`;
  if (!relay.says('drop') || relay.masked('drop'))
    return [
      {
        ...base,
        id: partOf(circuit),
        title: `${title}, heat`,
        quantity: 'temperature',
        direction: 'at-most',
        recipes: ['draw-most'],
        read: () => undefined,
        limits: [],
        missing: {
          figure: 'drop',
          asks: `what does the output of ${circuit} keep for itself when it is on (its \`drop\`)?`,
        },
        steps: () => [],
      },
    ];
  const part = partOf(circuit);
  const power = (s: Reading): number => s.current(part) * s.across(part);
  const account = heatAccount({ ...base, id: part, title: `${title}, heat` }, heatOf(relay, title), power, [
    'draw-most',
    'draw-least',
  ]);
  return [
    {
      ...account,
      steps: (s) => [
        {
          name: 'P',
          says: 'what its output turns into heat',
          formula: 'V_drop * I',
          with: { V_drop: [s.across(part), 'V'], I: [s.current(part), 'A'] },
          gives: [power(s), 'W'],
        },
        ...account.steps(s),
      ],
    },
  ];
}
