/** Resistors where they are wanting: one for each of several LEDs, a stronger one where one gets too hot, a smaller one where a load gets too little. */
import { nextBelow } from '../quantity/preferred.js';
import type { Way } from './cures.js';
import { entryOf, figureIn, partText, toleranceIn } from './entries.js';
import type { Cure } from './prove.js';

/** Powers that resistors are sold for, watts (common practice, no source). */
const POWERS = [0.25, 0.5, 1, 2, 3, 5, 10];

/** LEDs side by side behind one resistor do not share: each gets one of its own, as much larger as they were many. */
export const resistorEach: Way = ({ finding, judgement, data }) => {
  const circuit =
    finding.rule === 'leds-share-resistor' ? judgement.project.circuits.find((c) => c.id === finding.about) : undefined;
  const entry = circuit && entryOf(data, 'loads', circuit.owner);
  const many = Number(entry?.['in-parallel'] ?? 1);
  const now = figureIn(entry?.['series'], 'resistance');
  if (circuit === undefined || now === undefined || !(many > 1) || entry?.['count'] !== undefined) return [];
  const text = `${partText(nextBelow('E24', now * many), 'resistance')}${toleranceIn(entry?.['series'])}`;
  const at = ['loads', circuit.owner];
  return [
    {
      title: `Give each of the ${many} LEDs of ${circuit.owner} a resistor of its own, ${text}`,
      changes: [
        { path: [...at, 'in-parallel'], value: undefined },
        { path: [...at, 'count'], value: many },
        { path: [...at, 'series'], value: text },
      ],
      parts: [`${many} resistors of ${text}`],
      steps: [`Take the common resistor of ${circuit.owner} out, and put ${text} in series with each LED.`],
      watch: [circuit.id],
    },
  ];
};

/** A resistor that gets too hot is replaced by one of the next sizes. */
export const biggerResistor: Way = ({ finding, judgement, data }) => {
  if (finding.rule !== 'resistor-power' || finding.by === undefined) return [];
  const circuit = judgement.project.circuits.find((c) => c.id === finding.about);
  const entry = circuit && entryOf(data, 'loads', circuit.owner);
  if (circuit === undefined || entry === undefined) return [];
  const needed = finding.by.draw / (1 - judgement.project.policy.current);
  const series = entry['series'];
  const ohms: unknown =
    circuit.type === 'resistor'
      ? entry['resistance']
      : typeof series === 'object' && series !== null
        ? (series as { resistance?: unknown }).resistance
        : series;
  if (ohms === undefined) return [];
  const what = circuit.type === 'resistor' ? circuit.owner : `the series resistor of ${circuit.owner}`;
  return POWERS.filter((w) => w >= needed)
    .slice(0, 2)
    .map((watts): Cure => {
      const text = `${watts} W`;
      return {
        title:
          circuit.type === 'resistor'
            ? `Take one of ${text} for ${circuit.owner}`
            : `Fit a series resistor of ${text} for ${circuit.owner}`,
        changes: [
          circuit.type === 'resistor'
            ? { path: ['loads', circuit.owner, 'power'], value: text }
            : { path: ['loads', circuit.owner, 'series'], value: { resistance: ohms, power: text } },
        ],
        parts: [`${String(ohms)}, ${text}`],
        steps: [`Replace ${what} by one of ${String(ohms)} for ${text}; leave air around it.`],
        watch: [`${circuit.id}.series`],
      };
    });
};

/** A load that gets too little current for its work gets a smaller resistor. */
export const lowerSeries: Way = ({ finding, judgement, data }) => {
  if (finding.rule !== 'load-needs') return [];
  const circuit = judgement.project.circuits.find((c) => c.id === finding.about);
  const series = circuit && entryOf(data, 'loads', circuit.owner)?.['series'];
  const isPlain = typeof series === 'string' || typeof series === 'number';
  const now = figureIn(isPlain ? series : undefined, 'resistance');
  if (circuit === undefined || now === undefined) return [];
  return [1.25, 1.6, 2.5, 5].map((less): Cure => {
    const text = `${partText(nextBelow('E24', now / less), 'resistance')}${toleranceIn(series)}`;
    return {
      title: `Put ${text} in series with ${circuit.owner}, in place of ${String(series)}`,
      changes: [{ path: ['loads', circuit.owner, 'series'], value: text }],
      parts: [text],
      steps: [`Fit ${text} in series with ${circuit.owner}, in place of ${String(series)}.`],
      watch: [circuit.id],
    };
  });
};

/** A pull-up or pull-down at a driven pin that takes too much of what the pin may give is a larger one. */
export const weakerPull: Way = ({ finding, data }) => {
  const id = finding.account?.id;
  if (finding.rule !== 'pin-current' || id === undefined || finding.by === undefined) return [];
  const { draw, value } = finding.by;
  const owner = id.slice(0, id.lastIndexOf('.'));
  return ['controllers', 'expanders'].flatMap((section) => {
    const pins = entryOf(data, section, owner)?.['pins'];
    const name =
      typeof pins === 'object' && pins !== null
        ? Object.keys(pins).find((k) => `${owner}.${k}`.toLowerCase() === id.toLowerCase())
        : undefined;
    const entry = name === undefined ? undefined : (pins as Readonly<Record<string, unknown>>)[name];
    return ['pull-up', 'pull-down'].flatMap((key): Cure[] => {
      const now =
        typeof entry === 'object' && entry !== null
          ? figureIn((entry as Readonly<Record<string, unknown>>)[key], 'resistance')
          : undefined;
      if (now === undefined || now * draw < value) return [];
      const text = `${partText(Math.max(10e3, now * 4), 'resistance')} ±5 %`;
      return [
        {
          title: `Make the ${key} at ${name} ${text}`,
          changes: [{ path: [section, owner, 'pins', name!, key], value: text }],
          parts: [text],
          steps: [`Replace the ${key} at ${name} by ${text}.`],
          watch: [id],
        },
      ];
    });
  });
};
