/**
 * A winding on a pin gets a transistor with its resistors, a clamp, and a supply that can feed it. The base resistor is
 * reckoned from the pin's lowest level for a forced gain of ten, the gate resistor from the pin's characterised current.
 */
import type { CircuitPlan } from '../loads/plan.js';
import { placeOf } from '../project/places.js';
import { nextAbove, nextBelow } from '../quantity/preferred.js';
import type { Case, Way } from './cures.js';
import { entryOf, partText } from './entries.js';
import type { Change, Cure } from './prove.js';
import type { CoilSupply } from './supply-for.js';
import { suppliesFor } from './supply-for.js';

/** A saturated small transistor is driven at this ratio of collector to base current (common practice, no source). */
const FORCED_GAIN = 10;
/** Highest base-emitter voltage at a few milliamperes, volts (P2N2222A/D, figure 'On voltages', from memory). */
const BASE_EMITTER = 0.95;
/** Collector current up to which the small transistor of the catalogue is offered, amperes. */
const SMALL = 0.15;
/** Winding current up to which the small diode of the catalogue clamps it, amperes. */
const SMALL_CLAMP = 0.2;

interface Switch {
  readonly words: string;
  readonly driver: Readonly<Record<string, string>>;
  readonly resistors: readonly string[];
  readonly steps: (pin: string) => readonly string[];
}

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
  return supplies.flatMap((supply) => switchesFor(of, circuit, amps).map((s) => cure(circuit, pin, supply, s, amps)));
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

/** Ways to switch it from this pin, the simplest first. */
function switchesFor({ judgement }: Case, circuit: CircuitPlan, amps: number): Switch[] {
  const pin = circuit.wiring.pin!;
  const account = judgement.accounts.find((j) => j.account.id === pin && j.account.kind === 'pin')?.account;
  const member = judgement.project.networks
    .flatMap((n) => n.on)
    .flatMap((b) => b.members)
    .find((m) => m.kind === 'pin' && m.part === pin);
  const ohms = member?.kind === 'pin' ? member.ohms : { min: 0, typ: 0, max: 0 };
  const rail = account?.solutions().most?.branch(pin);
  const volts = rail === undefined ? 5 : Math.max(rail.from.volts, rail.to.volts);
  const gentle = account?.limits.find((l) => l.limit.grade === 'characterised')?.value ?? 0.01;
  const mosfet: Switch = (() => {
    const gate = nextAbove('E24', Math.max(volts / gentle - ohms.min, 10));
    return {
      words: 'an N-channel MOSFET AO3400A',
      driver: { part: 'nmos-ao3400a', 'gate-resistor': ohmsText(gate), 'pull-down': '100 kΩ' },
      resistors: [`${ohmsText(gate)} and 100 kΩ`],
      steps: (at) => [
        `Put ${ohmsText(gate)} from ${at} to the gate, and 100 kΩ from the gate to ground; the source goes to ground.`,
      ],
    };
  })();
  const low = 0.95 * volts;
  const wanted = (low - BASE_EMITTER) / (amps / FORCED_GAIN) - ohms.max;
  if (amps > SMALL || wanted < 47) return [mosfet];
  const base = nextBelow('E24', wanted);
  const npn: Switch = {
    words: 'an NPN 2N2222A',
    driver: { part: 'npn-2n2222a', 'base-resistor': ohmsText(base), 'pull-down': '10 kΩ' },
    resistors: [`${ohmsText(base)} and 10 kΩ`],
    steps: (at) => [
      `Put ${ohmsText(base)} from ${at} to the base, and 10 kΩ from the base to ground; the emitter goes to ground.`,
    ],
  };
  return [npn, mosfet];
}

const ohmsText = (ohms: number): string => partText(ohms, 'resistance');

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
  const drop = by.driver['part'] === 'nmos-ao3400a' ? 'drain' : 'collector';
  return {
    title: `Drive ${circuit.owner} with ${by.words}, clamp it, and feed it from ${supply.isNew ? `a supply of its own (${supply.words})` : supply.name}`,
    changes,
    parts: [by.words, ...by.resistors, diode.words, ...(supply.isNew ? [`a supply of ${supply.words}`] : [])],
    steps: [
      `Take the ${what} off ${pin}: one end goes to the plus of ${supply.name}, the other to the ${drop}.`,
      ...by.steps(pin),
      `Put the diode across the ${what}, its ring towards the plus.`,
      `Join the ground of ${supply.name} and that of the controller.`,
    ],
    watch: [circuit.wiring.pin!, `${circuit.id}.coil`, `${circuit.id}.driver`],
  };
}
