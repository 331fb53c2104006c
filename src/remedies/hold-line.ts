/** An input that nothing holds gets a resistor; a contact or a divider that is not understood gets others. */
import { nextAbove, nextBelow } from '../quantity/preferred.js';
import type { Way } from './cures.js';
import { entryOf, figureIn, partText } from './entries.js';
import type { Change, Cure } from './prove.js';

/** What holds a contact's line (common practice, no source). */
const HOLD = '10 kΩ';

export const holdLine: Way = ({ finding, data }) => {
  const id = finding.path[0] === 'incoming' ? String(finding.path[1]) : finding.about;
  const entry = entryOf(data, 'incoming', id);
  if (entry === undefined) return [];
  const at = (key: string): Change['path'] => ['incoming', id, key];
  if (finding.rule === 'input-floats') {
    const [key, to] = entry['closes-to'] === 'supply' ? ['pull-down', 'ground'] : ['pull-up', 'the pin’s supply'];
    return [
      {
        title: `Hold ${id} with ${HOLD} to ${to}`,
        changes: [{ path: at(key), value: `${HOLD} ±5 %` }],
        parts: [HOLD],
        steps: [
          `Put ${HOLD} from the pin of ${id} to ${to}; or switch on the pull-up inside the chip, if it has one there.`,
        ],
        watch: [id],
      },
    ];
  }
  if (finding.rule !== 'level-low' && finding.rule !== 'level-high') return [];
  const [series, up, down] = ['series', 'pull-up', 'pull-down'].map((key) => figureIn(entry[key], 'resistance'));
  const fit = (title: string, values: Readonly<Record<string, number | undefined>>): Cure => {
    const shown = Object.entries(values).flatMap(([key, ohms]) =>
      ohms === undefined ? [] : [`${partText(ohms, 'resistance')} as its ${key}`],
    );
    return {
      title,
      changes: Object.entries(values).map(([key, ohms]) => ({
        path: at(key),
        value: ohms === undefined ? undefined : `${partText(ohms, 'resistance')} ±5 %`,
      })),
      parts: Object.values(values).flatMap((ohms) => (ohms === undefined ? [] : [partText(ohms, 'resistance')])),
      steps: [
        shown.length > 0
          ? `Fit ${shown.join(' and ')} at ${id}.`
          : `Take the ${Object.keys(values).join(' and ')} of ${id} out.`,
      ],
      watch: [id],
    };
  };
  const ohms = (value: number): string => partText(value, 'resistance');
  return [
    ...(series !== undefined && down !== undefined && finding.rule === 'level-high'
      ? [
          fit(`Change the two resistors of ${id} over: ${ohms(down)} in series, ${ohms(series)} to ground`, {
            series: down,
            'pull-down': series,
          }),
        ]
      : []),
    ...(series !== undefined
      ? [2, 5].map((less) =>
          fit(`Put ${ohms(nextBelow('E24', series / less))} in series with ${id}`, {
            series: nextBelow('E24', series / less),
          }),
        )
      : []),
    ...(up !== undefined && finding.rule === 'level-low'
      ? [2, 5].map((more) =>
          fit(`Pull ${id} up with ${ohms(nextAbove('E24', up * more))}`, { 'pull-up': nextAbove('E24', up * more) }),
        )
      : []),
    ...(down !== undefined && finding.rule === 'level-high'
      ? [2, 5].map((more) =>
          fit(`Pull ${id} down with ${ohms(nextAbove('E24', down * more))}`, {
            'pull-down': nextAbove('E24', down * more),
          }),
        )
      : []),
    ...(up !== undefined && finding.rule === 'level-high'
      ? [fit(`Pull ${id} up with ${ohms(nextBelow('E24', up / 3))}`, { 'pull-up': nextBelow('E24', up / 3) })]
      : []),
  ];
};
