/** A load that is left in the wrong state when power fails goes to the other contact of its relay. */
import { choicesOf } from '../checks/choice/choices.js';
import type { Way } from './cures.js';

export const rewireContact: Way = ({ finding, judgement }) => {
  if (finding.rule !== 'safe-state') return [];
  const choice = choicesOf(judgement.ledger).find((c) => c.circuit === finding.about);
  if (choice?.wired === undefined || choice.safeSide === undefined || choice.safeSide === choice.wired) return [];
  const { circuit, safeSide, path, safeWhen } = choice;
  const words = safeSide.replace('-', ' ');
  return [
    {
      title: `Move the load of ${circuit} to the ${words} contact`,
      changes: [{ path: [...path, 'wired'], value: safeSide }],
      parts: [],
      steps: [
        `With its supply off, move the load's wire from the ${choice.wired.replace('-', ' ')} to the ${words} terminal of ${circuit}; the common terminal stays.`,
        `In the firmware ${circuit} is switched ${safeWhen === 'load-running' ? 'off to run its load, and on to stop it' : 'on to run its load, and off to stop it'} now.`,
      ],
      watch: [`${circuit}.contact`, `${circuit}.coil`],
    },
  ];
};
