/** Protects people and things when power fails: a coil without power leaves its load in a state that is not the safe one. */
import type { Ledger } from '../../ledger/ledger.js';
import type { CircuitPlan } from '../../loads/circuit-plan.js';
import type { Finding, Judged, WiringRule } from '../finding.js';
import { choiceNames } from './choice-names.js';
import { choicesOf } from './choices.js';

function find({ ledger }: Judged): Finding[] {
  return [...ofOwnSide(ledger), ...ledger.project.circuits.flatMap(ofOtherSide)];
}

/** The load on the other side of a changeover: without power it runs where the first one stops, and the other way round. */
function ofOtherSide({ id, contact, latching }: CircuitPlan): Finding[] {
  if (contact?.other?.safeWhen === undefined) return [];
  const { wired, safeWhen, path } = contact.other;
  const left = latching ? 'stays' : wired === 'normally-open' ? 'load-stopped' : 'load-running';
  if (left === safeWhen) return [];
  return [
    {
      rule: 'safe-state',
      family: 'choice',
      verdict: left === 'stays' ? 'strain' : 'breach',
      about: id,
      path,
      names: { wired, safe: safeWhen, left, other: 'yes' },
      related: [],
    },
  ];
}

function ofOwnSide(ledger: Ledger): Finding[] {
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
