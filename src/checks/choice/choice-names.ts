/** What sentences about a choice name: hours, energies and states, as words. */
import { formatValue } from '../../quantity/print.js';
import { formatHours, formatWattHours } from '../../quantity/watt-hours.js';
import type { Choice, Taken } from './choices.js';
import { YEAR } from './choices.js';

/** The names of a choice; what is not known of it is absent. */
export function choiceNames(choice: Choice): { readonly [name: string]: string } {
  const { wired, safeWhen, atPowerLoss, diesWith, now, otherwise, latching, coilPower, fixed } = choice;
  return {
    ...(wired && { wired }),
    ...(safeWhen && { safe: safeWhen }),
    ...(fixed && { fixed }),
    ...(diesWith !== undefined && { diesWith }),
    ...(coilPower !== undefined && { heat: formatValue(coilPower, 'power') }),
    ...(now && told('now', now)),
    ...(otherwise && told('other', otherwise)),
    ...(now && otherwise && { saved: formatWattHours(Math.abs(now.energy - otherwise.energy) * YEAR) }),
    ...(latching && {
      latching: formatWattHours(latching.energy),
      pulses: String(latching.pulses),
      pulse: formatValue(latching.pulse, 'time', 2),
    }),
    left: atPowerLoss,
  };
}

const told = (name: string, { energised, energy }: Taken) => ({
  [`${name}Hours`]: formatHours(energised),
  [`${name}Day`]: formatWattHours(energy),
  [`${name}Year`]: formatWattHours(energy * YEAR),
});
