/** How loads are switched, and what that costs, as the report tells it. */
import type { Choice, Taken } from '../checks/choice/choices.js';
import { YEAR, choicesOf } from '../checks/choice/choices.js';
import type { Judgement } from '../checks/judge.js';
import type { Path } from '../source/document.js';
import type { Report, ReportChoice, ReportPlace, ReportTaken } from './report.js';

/** The report's `choices`; nothing where the file says of no load what it is for. */
export function choicesIn({ ledger }: Judgement, place: (path: Path) => ReportPlace): Pick<Report, 'choices'> {
  const choices = choicesOf(ledger);
  return choices.length === 0 ? {} : { choices: choices.map((choice) => choiceOf(choice, place)) };
}

const taken = ({ energised, energy }: Taken): ReportTaken => ({ energised, day: energy, year: energy * YEAR });

function choiceOf(choice: Choice, place: (path: Path) => ReportPlace): ReportChoice {
  const { wired, safeWhen, daily, coilPower, now, otherwise, latching, keepsSafe, safeSide, frugalSide } = choice;
  const better = safeSide ?? frugalSide;
  return {
    circuit: choice.circuit,
    ...(wired && { wired }),
    ...(safeWhen && { safeWhen }),
    ...(daily !== undefined && { loadTime: daily }),
    power: choice.power,
    ...(coilPower !== undefined && { coilPower }),
    ...(now && { now: taken(now) }),
    ...(otherwise && { otherwise: taken(otherwise) }),
    ...(latching && { latching: { pulses: latching.pulses, pulse: latching.pulse, day: latching.energy } }),
    atPowerLoss: choice.atPowerLoss,
    ...(keepsSafe !== undefined && { keepsSafe }),
    ...(better && { better, because: becauseOf(safeSide, frugalSide) }),
    working: choice.steps,
    place: place(choice.path),
  };
}

function becauseOf(safeSide: Choice['safeSide'], frugalSide: Choice['frugalSide']): 'safety' | 'energy' | 'both' {
  if (safeSide === undefined) return 'energy';
  return safeSide === frugalSide ? 'both' : 'safety';
}
