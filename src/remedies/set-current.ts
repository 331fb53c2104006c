/** A chopper that holds more than its motor, its bridges or its supply bear is set lower. */
import type { Way } from './cures.js';
import { entryOf, figureIn, partText, toleranceIn } from './entries.js';
import type { Cure } from './prove.js';

const RULES = new Set(['phase-current', 'chopper-starved', 'driver-current', 'driver-heat']);
/** A current in figures that somebody can set, amperes, no higher than it is. */
const settable = (amps: number): number => {
  const step = amps < 0.5 ? 0.01 : 0.05;
  return Math.floor(amps / step + 1e-9) * step;
};

export const setCurrent: Way = ({ finding, judgement, data }) => {
  const circuit = RULES.has(finding.rule) ? judgement.project.circuits.find((c) => c.id === finding.about) : undefined;
  const stated = circuit && entryOf(data, 'loads', circuit.owner)?.['phase-current'];
  const now = figureIn(stated, 'current');
  if (circuit === undefined || now === undefined || finding.by === undefined) return [];
  const share = shareOf(finding, judgement.project.policy);
  const settings = [1, 0.9, 0.75].map((less) => settable(now * share * less));
  return [...new Set(settings)]
    .filter((amps) => amps > 0 && amps < now)
    .map((amps): Cure => {
      const text = `${partText(amps, 'current')}${toleranceIn(stated)}`;
      return {
        title: `Set the chopper of ${circuit.owner} to ${text}`,
        changes: [{ path: ['loads', circuit.owner, 'phase-current'], value: text }],
        parts: [],
        steps: [
          `Turn the current of the driver of ${circuit.owner} down to ${text}, by its reference voltage or its register; the motor has that much less torque.`,
        ],
        watch: [circuit.id, `${circuit.id}.windings`, `${circuit.id}.driver`],
      };
    });
};

/** What is left of the current where the limit is just kept with the policy's margin; heat goes with its square. */
function shareOf(
  { account, by }: Parameters<Way>[0]['finding'],
  policy: Parameters<Way>[0]['judgement']['project']['policy'],
): number {
  if (account === undefined || by === undefined || by.draw <= 0) return 1;
  if (account.quantity === 'temperature')
    return Math.sqrt(Math.max(((1 - policy.temperature) * (by.value - by.ambient)) / (by.draw - by.ambient), 0));
  if (account.direction === 'at-least') return by.draw / by.value / (1 + policy.functionVoltage);
  return ((1 - policy.current) * by.value) / by.draw;
}
