/** Faults that one word of the file takes away: a jumper between two supplies, grounds that have to join, a rating written down. */
import type { Way } from './cures.js';
import { entryOf, figureIn, partText } from './entries.js';
import { ratingFor } from './supply-for.js';

/** Powers that resistors are sold for, watts (common practice, no source). */
const RESISTORS = [0.25, 0.5, 1, 2, 3, 5];

/** A jumper between two supplies comes off. */
export const removeJumper: Way = ({ finding, data }) =>
  finding.rule !== 'jumper-joins-supplies' || entryOf(data, 'loads', finding.about) === undefined
    ? []
    : [
        {
          title: `Take the jumper of ${finding.about} off`,
          changes: [{ path: ['loads', finding.about, 'jumper'], value: 'removed' }],
          parts: [],
          steps: [`${finding.about}: take the supply jumper off and keep it off.`],
          watch: [],
        },
      ];

/** Inputs without couplers need the controller's ground. */
export const joinGrounds: Way = ({ finding, data }) =>
  finding.rule !== 'ground-missing' || entryOf(data, 'loads', finding.about) === undefined
    ? []
    : [
        {
          title: `Join the ground of ${finding.about} and the controller’s`,
          changes: [{ path: ['loads', finding.about, 'grounds'], value: 'joined' }],
          parts: [],
          steps: [`Put a wire from the controller’s ground to the ground of ${finding.about}.`],
          watch: [],
        },
      ];

/** A supply that is asked for more than it gives is replaced by one of the next standard rating. */
export const biggerSupply: Way = ({ finding, judgement, data }) => {
  const entry = finding.rule === 'supply-current' ? entryOf(data, 'supplies', finding.about) : undefined;
  const now = figureIn(entry?.['current'], 'current');
  if (entry === undefined || now === undefined || finding.by === undefined) return [];
  const rating = ratingFor(finding.by.draw, judgement.project.policy.current);
  if (rating === undefined || rating <= now) return [];
  const text = partText(rating, 'current');
  return [
    {
      title: `Get a supply of ${text} for ${finding.about}`,
      changes: [{ path: ['supplies', finding.about, 'current'], value: text }],
      parts: [`a supply of ${String(entry['voltage'] ?? entry['type'])}, ${text}`],
      steps: [`Replace ${finding.about} by a supply of the same voltage for ${text}.`],
      watch: [finding.about],
    },
  ];
};

/** A resistor that gets too hot is replaced by one of the next size. */
export const biggerResistor: Way = ({ finding, judgement, data }) => {
  if (finding.rule !== 'resistor-power' || finding.by === undefined) return [];
  const circuit = judgement.project.circuits.find((c) => c.id === finding.about);
  const series = circuit && entryOf(data, 'loads', circuit.owner)?.['series'];
  if (circuit === undefined || series === undefined) return [];
  const needed = finding.by.draw / (1 - judgement.project.policy.current);
  const watts = RESISTORS.find((w) => w >= needed);
  const ohms: unknown =
    typeof series === 'object' && series !== null ? (series as { resistance?: unknown }).resistance : series;
  if (watts === undefined) return [];
  const text = `${watts} W`;
  return [
    {
      title: `Fit a series resistor of ${text} for ${circuit.owner}`,
      changes: [{ path: ['loads', circuit.owner, 'series'], value: { resistance: ohms, power: text } }],
      parts: [`${String(ohms)}, ${text}`],
      steps: [
        `Replace the series resistor of ${circuit.owner} by one of ${String(ohms)} for ${text}; leave air around it.`,
      ],
      watch: [`${circuit.id}.series`],
    },
  ];
};
