/** Protects people and things when power fails: a coil without power leaves its load in a state that is not the safe one. */
import type { Finding, Judged, WiringRule } from '../finding.js';
import { choiceNames } from './choice-names.js';
import { choicesOf } from './choices.js';

function find({ ledger }: Judged): Finding[] {
  return choicesOf(ledger).flatMap((choice): Finding[] => {
    if (choice.keepsSafe !== false) return [];
    const { circuit, path, diesWith, steps, safeWhen, atPowerLoss } = choice;
    // A load that stops with its own supply is not helped by any contact, and may well be known to.
    // A latching relay leaves it as it was, which may be safe.
    const unsure = (safeWhen === atPowerLoss && diesWith !== undefined) || atPowerLoss === 'stays';
    const verdict = unsure ? 'strain' : 'breach';
    return [
      {
        rule: 'safe-state',
        family: 'choice',
        verdict,
        about: circuit,
        path,
        names: choiceNames(choice),
        related: [],
        steps,
      },
    ];
  });
}

export default { name: 'safe-state', family: 'choice', find } satisfies WiringRule;
