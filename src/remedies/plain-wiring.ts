/** Faults that one word of the file takes away: a jumper between two supplies, grounds that have to join. */
import type { Way } from './cures.js';
import { entryOf } from './entries.js';

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
