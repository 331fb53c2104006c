/** How loads are switched, and what that costs, as the report tells it. */
import type { Choice, Taken } from '../checks/choice/choices.js';
import { YEAR, choicesOf } from '../checks/choice/choices.js';
import type { Judgement } from '../checks/judge.js';
import type { AtBoot } from '../ledger/boot.js';
import type { Path } from '../source/document.js';
import type { Report, ReportChoice, ReportPlace, ReportTaken } from './report.js';

/** The report's `choices`; nothing where the file says of no load what it is for. */
export function choicesIn(
  { ledger, boot, project }: Judgement,
  place: (path: Path) => ReportPlace,
): Pick<Report, 'choices'> {
  const choices = choicesOf(ledger);
  return choices.length === 0
    ? {}
    : {
        choices: choices.map((choice) => {
          const active = project.uses.find((u) => u.by === choice.circuit && u.as === 'output')?.active;
          const start = boot.circuits.find((c) => c.circuit === choice.circuit);
          const does = start?.pins.some((p) => p.state === 'any') ? 'open' : start?.does;
          return {
            ...choiceOf(choice, place),
            ...(active && { active }),
            ...(does && { atReset: atResetOf(does, choice) }),
          };
        }),
      };
}

/** What its load does until firmware runs. */
function atResetOf(does: AtBoot['does'], { wired, atPowerLoss }: Choice): NonNullable<ReportChoice['atReset']> {
  if (does === 'open' || does === 'pulses') return does === 'open' ? 'unsure' : 'pulses';
  if (does === 'off' && atPowerLoss === 'stays') return 'stays';
  return (does === 'on') === (wired !== 'normally-closed') ? 'load-running' : 'load-stopped';
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
