/** A load that is left in the wrong state when power fails, or until firmware runs, goes to the other contact of its relay. */
import type { Choice } from '../checks/choice/choices.js';
import { choicesOf } from '../checks/choice/choices.js';
import type { Judgement } from '../checks/judge.js';
import type { Way } from './cures.js';

type Wrong = Choice & Required<Pick<Choice, 'wired' | 'safeSide'>>;

/** Those of some circuits whose loads hang on the side that is not the safe one. */
export const onWrongSide = ({ ledger }: Judgement, circuits: readonly string[]): readonly Wrong[] =>
  choicesOf(ledger).filter(
    (c): c is Wrong =>
      circuits.includes(c.circuit) &&
      c.fixed === undefined &&
      c.wired !== undefined &&
      c.safeSide !== undefined &&
      c.safeSide !== c.wired,
  );

const RULES = new Set(['safe-state', 'boot-drives', 'boot-floats', 'contact-current']);

export const rewireContact: Way = ({ finding, judgement }) => {
  if (!RULES.has(finding.rule)) return [];
  const circuits = finding.names['circuits']?.split(', ') ?? [finding.about];
  const wrong = onWrongSide(judgement, circuits);
  const [first] = wrong;
  if (first === undefined) return [];
  const { wired, safeSide, safeWhen } = first;
  // What is safe in different states goes different ways.
  if (wrong.some((c) => c.safeSide !== safeSide)) return [];
  const names = wrong.map((c) => c.circuit).join(', ');
  const [from, to] = [wired.replace('-', ' '), safeSide.replace('-', ' ')];
  return [
    {
      title: `Move the load of ${names} to the ${to} contact`,
      changes: wrong.map(({ path }) => ({ path: [...path, 'wired'], value: safeSide })),
      parts: [],
      steps: [
        `With its supply off, move the load's wire from the ${from} to the ${to} terminal of ${names}; the common terminal stays.`,
        `In the firmware ${names} is switched ${safeWhen === 'load-running' ? 'off to run its load, and on to stop it' : 'on to run its load, and off to stop it'} now.`,
      ],
      watch: wrong.flatMap(({ circuit }) => [`${circuit}.contact`, `${circuit}.coil`]),
    },
  ];
};
