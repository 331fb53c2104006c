/** What each supply gives on average and over a day, and who takes most of it. */
import { formatValue } from '../quantity/print.js';
import { channelOf } from './channel.js';
import type { Report, ReportAverage } from './report.js';
import { type Block, mark, paragraph, table } from './tree.js';

const HOURS_A_DAY = 24;
/** So many takers are named, and none that takes less than this share. */
const NAMED = 3;
const WORTH_NAMING = 0.05;

/** Nothing where no mode states its share of the time. */
export function energySection({ averages }: Report): readonly Block[] {
  const given = averages.filter(({ power }) => power > 0);
  if (given.length === 0) return [];
  return [
    paragraph([mark('strong', 'Energy'), mark('quiet', ', a typical build, by the modes’ shares of the time')]),
    table(
      [
        { title: 'supply', align: 'left' },
        { title: 'on average', align: 'right' },
        { title: 'power', align: 'right' },
        { title: 'a day', align: 'right' },
        { title: 'goes to', align: 'left' },
      ],
      given.map((each) => [
        mark('strong', each.supply),
        formatValue(each.current, 'current'),
        formatValue(each.power, 'power'),
        // Wh
        `${formatValue(each.power * HOURS_A_DAY, 'power')}h`,
        mark('quiet', takersOf(each)),
      ]),
    ),
  ];
}

/** 'vents 62 %, main.board 31 %', channels of a load together. */
function takersOf({ power, takes }: ReportAverage): string {
  const sums = new Map<string, number>();
  for (const { circuit, power: each } of takes) {
    const name = channelOf(circuit)?.load ?? circuit;
    sums.set(name, (sums.get(name) ?? 0) + each);
  }
  return [...sums]
    .sort(([, a], [, b]) => b - a)
    .slice(0, NAMED)
    .filter(([, watts], k) => k === 0 || watts > WORTH_NAMING * power)
    .map(([name, watts]) => `${name} ${Math.round((100 * watts) / power)} %`)
    .join(', ');
}
