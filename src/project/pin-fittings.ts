/** What is fitted at a pin besides what the file hangs on it: resistors outside, and the board's own LEDs. They share its voltage. */
import { junctionSpread } from '../loads/laws.js';
import type { Hook, NetworkSketch } from '../loads/lowering.js';
import { USUAL_PIN } from '../loads/lowering.js';
import type { Member } from '../loads/branch-plan.js';
import { GROUND } from '../loads/branch-plan.js';
import { closed } from '../quantity/quantity.js';
import type { Bench } from './controllers.js';
import type { Gathered } from './remarks.js';

/** Resistors fitted outside at a pin that something else hangs on: they share its voltage. */
export function withPulls(sketches: readonly NetworkSketch[], benches: ReadonlyMap<string, Bench>): NetworkSketch[] {
  const hooks = new Map(sketches.flatMap((s) => s.hooks).map((h) => [h.pin.account, h]));
  const pulls = [...benches.values()].flatMap(({ chip }) =>
    [...new Set(chip.pins.values())].flatMap((pin): NetworkSketch[] => {
      const hook = hooks.get(pin.account);
      if (hook === undefined) return [];
      return chip
        .input(pin)
        .pulls.filter((p) => !p.inside)
        .map(({ part, to, ohms, origin }): NetworkSketch => {
          const own: Hook = {
            ...{ pin: hook.pin, active: hook.active, circuit: part },
            flows: to === 'rail' ? 'in' : 'out',
            to: to === 'rail' ? chip.rail : GROUND,
            members: [{ kind: 'resistance', part, ohms, origin }],
          };
          return { id: part, circuits: [], side: 'control', inner: [], hooks: [own], on: [], off: [] };
        });
    }),
  );
  return [...sketches, ...pulls];
}

/** LEDs that the board itself has on a pin that something else uses. */
export function withPinLeds(
  sketches: readonly NetworkSketch[],
  benches: ReadonlyMap<string, Bench>,
  remarks: Gathered,
): NetworkSketch[] {
  const hooks = sketches.flatMap((s) => s.hooks);
  const lit = [...benches.values()].flatMap((bench) =>
    bench.pinLeds.flatMap((led): NetworkSketch[] => {
      const pin = bench.chip.pins.get(led.pin.toLowerCase());
      const hook = hooks.find((h) => h.pin.account === pin?.account);
      const curve = led.figures.curve('forward-voltage', 'voltage', 'current');
      const resistor = led.figures.figure('series', 'resistance');
      if (hook === undefined || curve === undefined || resistor === undefined) return [];
      // An amplifier drives it: the pin does not.
      if (led.figures.flag('buffered')) return [];
      const members: Member[] = [
        { kind: 'resistance', part: `${led.name}.series`, ohms: closed(resistor.quantity), origin: resistor.origin },
        { kind: 'junction', part: led.name, law: junctionSpread(curve), origin: curve.origin },
      ];
      const way =
        led.figures.word('active') === 'low'
          ? { flows: 'in' as const, to: hook.pin.rail }
          : { flows: 'out' as const, to: GROUND };
      const own: Hook = { pin: hook.pin, active: hook.active, ...way, members, circuit: led.name };
      return [{ id: led.name, circuits: [], side: 'control', inner: [], hooks: [own], on: [], off: [] }];
    }),
  );
  for (const h of hooks)
    if (h.pin.high === undefined || h.pin.low === undefined)
      remarks.assume(
        h.pin.owner,
        `output resistance of a pin: ${USUAL_PIN.min} to ${USUAL_PIN.max} Ω, since nobody states it`,
      );
  return [...sketches, ...lit];
}
