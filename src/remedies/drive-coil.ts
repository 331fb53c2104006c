/**
 * A winding on a pin gets a transistor with its resistors, a clamp, and a supply that can feed it.
 */
import type { CircuitPlan } from '../loads/circuit-plan.js';
import { placeOf } from '../project/places.js';
import type { Case, Way } from './cures.js';
import { entryOf } from './entries.js';
import type { Change, Cure } from './prove.js';
import type { CoilSupply } from './supply-for.js';
import { suppliesFor } from './supply-for.js';
import type { Switch } from './switches.js';
import { switchesFor } from './switches.js';

/** Winding current up to which the small diode of the catalogue clamps it, amperes. */
const SMALL_CLAMP = 0.2;

export const driveCoil: Way = (of) => {
  const { finding, judgement, data } = of;
  if (
    finding.rule !== 'coil-on-pin' &&
    !(finding.rule === 'pin-current' || finding.rule === 'coil-no-clamp' || finding.rule === 'coil-pull-in')
  )
    return [];
  const circuit = judgement.project.circuits.find((c) => c.id === finding.about);
  if (circuit?.wiring.bare === undefined || circuit.type === 'relay-board' || circuit.id !== circuit.owner) return [];
  const entry = entryOf(data, 'loads', circuit.owner);
  const volts = circuit.wiring.figures?.coilVolts;
  const pin = entry?.['pin'];
  if (volts === undefined || typeof pin !== 'string') return [];
  const amps = windingCurrent(of, circuit, volts);
  const supplies = suppliesFor(data, judgement, volts, amps);
  return supplies.flatMap((supply) =>
    switchesFor(of, circuit.wiring.pin!, amps).map((s) => cure(circuit, pin, supply, s, amps)),
  );
};

/** What the winding draws at most when it gets its voltage for once: coldest, lowest resistance, supply 5 % high. */
function windingCurrent({ judgement: { project } }: Case, circuit: CircuitPlan, volts: number): number {
  for (const network of project.networks)
    for (const branch of network.on)
      for (const member of branch.members)
        if (member.part === circuit.wiring.coil) {
          if (member.kind === 'current') return member.amps.max;
          if (member.kind === 'resistance') {
            const { min } = project.places.get(placeOf(project, circuit.id) ?? '') ?? project.ambient;
            const cold = member.copper === undefined ? 1 : (234.5 + min) / (234.5 + member.copper);
            return (1.05 * volts) / (member.ohms.min * cold);
          }
        }
  return 0;
}

function cure(circuit: CircuitPlan, pin: string, supply: CoilSupply, by: Switch, amps: number): Cure {
  const at = ['loads', circuit.owner];
  const what = circuit.type === 'dc-motor' ? 'motor' : 'coil';
  const diode =
    amps <= SMALL_CLAMP
      ? { part: 'diode-1n4148', words: 'a diode 1N4148' }
      : { part: 'diode-1n4007', words: 'a diode 1N4007' };
  const changes: Change[] = [
    ...supply.changes,
    { path: [...at, 'pin'], value: undefined },
    { path: [...at, 'active'], value: undefined },
    { path: [...at, 'supply'], value: supply.name },
    { path: [...at, 'driver'], value: { ...by.driver, pin } },
    { path: [...at, 'clamp'], value: { part: diode.part } },
  ];
  return {
    title: `Drive ${circuit.owner} with ${by.words}, clamp it, and feed it from ${supply.isNew ? `a supply of its own (${supply.words})` : supply.name}`,
    changes,
    parts: [by.words, ...by.resistors, diode.words, ...(supply.isNew ? [`a supply of ${supply.words}`] : [])],
    steps: [
      `Take the ${what} off ${pin}: one end goes to the plus of ${supply.name}, the other to the ${by.end}.`,
      ...by.steps(pin),
      `Put the diode across the ${what}, its ring towards the plus.`,
      `Join the ground of ${supply.name} and that of the controller.`,
    ],
    watch: [circuit.wiring.pin!, `${circuit.id}.coil`, `${circuit.id}.driver`],
  };
}
