/** What the file's loads are for: how long their coils are on for it, what that takes, and what happens without power. */
import { formatHours, formatWattHours } from '../quantity/watt-hours.js';
import type { Report, ReportChoice } from './report.js';
import { mark, paragraph, table, type Text, type Tree } from './tree.js';

/** Nothing for a file that says of no load what it is for. */
export function choicesSection({ choices = [] }: Report): Tree {
  if (choices.length === 0) return [];
  return [
    [
      paragraph(mark('strong', 'Loads and their contacts')),
      table(
        [
          { title: 'load', align: 'left' },
          { title: 'contact', align: 'left' },
          { title: 'coil on', align: 'right' },
          { title: 'a day', align: 'right' },
          { title: 'the other', align: 'right', spare: true },
          { title: 'without power', align: 'left' },
          { title: 'at reset', align: 'left' },
          { title: 'better', align: 'left' },
        ],
        choices.map(row),
      ),
    ],
  ];
}

const SIDE = { 'normally-open': 'open', 'normally-closed': 'closed' } as const;

const row = (choice: ReportChoice): readonly Text[] => [
  mark('strong', choice.circuit),
  choice.wired === undefined ? '' : SIDE[choice.wired],
  choice.now ? formatHours(choice.now.energised) : '',
  choice.now ? formatWattHours(choice.now.day) : '',
  choice.otherwise ? formatWattHours(choice.otherwise.day) : '',
  withoutPower(choice),
  choice.atReset === undefined ? '' : DOES[choice.atReset],
  choice.better === undefined ? '' : `${SIDE[choice.better]} (${WHY[choice.because ?? 'both']})`,
];

const WHY = { safety: 'safety', energy: 'energy', both: 'both' } as const;

const DOES = {
  'load-stopped': 'stops',
  'load-running': 'runs',
  stays: 'stays',
  pulses: 'pulses',
  unsure: 'unsure',
} as const;

function withoutPower({ atPowerLoss, keepsSafe }: ReportChoice): Text {
  const does = DOES[atPowerLoss];
  if (keepsSafe === undefined) return does;
  return keepsSafe ? `${does}, safe` : mark('breach', `${does}, not safe`);
}
