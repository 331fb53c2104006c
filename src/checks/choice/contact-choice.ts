/** Protects the electricity bill, and a supply that stays warm all day: a coil that is on longer than it need be. */
import type { Finding, Judged, WiringRule } from '../finding.js';
import { choiceNames } from './choice-names.js';
import { choicesOf } from './choices.js';

/** Less than this a day is not worth a wire, joules: a tenth of a kilowatt-hour a year. */
const WORTH = 1e3;

function find({ ledger }: Judged): Finding[] {
  return choicesOf(ledger).flatMap((choice): Finding[] => {
    const { circuit, path, wired, frugalSide, now, otherwise, keepsSafe, steps } = choice;
    if (wired === undefined || frugalSide === undefined || frugalSide === wired || keepsSafe === false) return [];
    // What hangs on the other side would change places with it.
    if (ledger.project.circuits.find((c) => c.id === circuit)?.contact?.other?.safeWhen !== undefined) return [];
    if (now === undefined || otherwise === undefined || now.energy - otherwise.energy < WORTH) return [];
    return [
      {
        rule: 'contact-choice',
        family: 'choice',
        verdict: 'note',
        about: circuit,
        path,
        names: choiceNames(choice),
        related: [],
        steps,
      },
    ];
  });
}

export default { name: 'contact-choice', family: 'choice', find } satisfies WiringRule;
