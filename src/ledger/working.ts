/**
 * The sums behind sums of currents and heat, written from the same books and voltages that made them: each line's formula,
 * evaluated with the numbers beside it, gives its result.
 */
import { COPPER_ZERO } from '../circuit/copper.js';
import { WIRE_REFERENCE } from '../circuit/wire.js';
import { branchSteps, symbol, unused } from '../loads/branch-working.js';
import type { Step } from '../loads/account-plan.js';
import { meanOf, meanSteps } from '../loads/pulses.js';
import type { Link } from '../project/tree-plan.js';
import type { Shares } from './bookings.js';
import type { Solution } from './solution.js';

/** A sum of currents by circuit; where it is one pin with one branch, that branch's own sum comes first. */
export function sumSteps(what: string, shares: Shares, pin: string | undefined, s: Solution): Step[] {
  const used = [...shares].filter(([, amps]) => Math.abs(amps) > 1e-12);
  if (pin !== undefined && used.length === 1) {
    const own = branchSteps(s.branch(pin), what);
    const [step] = own;
    // Current that enters the pin is written as a positive sum.
    if (step && Math.abs(Math.abs(step.gives[0]) - used[0]![1]) < 1e-12)
      return [step.gives[0] < 0 ? turned(step) : step];
  }
  const values: Record<string, readonly [number, string]> = {};
  const terms = used.map(([circuit, amps]) => {
    const name = unused(values, symbol('I', circuit));
    values[name] = [amps, 'A'];
    return name;
  });
  const sum = used.reduce((total, [, amps]) => total + amps, 0);
  return [{ name: 'I', says: what, formula: terms.join(' + ') || '0', with: values, gives: [sum, 'A'] }];
}

const turned = (step: Step): Step => ({
  ...step,
  formula: `-(${step.formula})`,
  gives: [-step.gives[0], step.gives[1]],
});

/** How a wire's resistance at 20 °C came about, where the file says its length. */
function copperSteps({ copper, ohms }: Link, cold: number): Step[] {
  if (copper === undefined) return [];
  // The longest and thinnest wire has the most ohms.
  const [most, least] = [cold >= ohms!.max, cold <= ohms!.min];
  const length = most ? copper.length.max : least ? copper.length.min : copper.length.typ;
  const common = { n: [copper.conductors, ''] as const, l: [length, 'm'] as const };
  if ('perMetre' in copper) {
    const { perMetre, origin } = copper;
    const metre = most ? perMetre.max : least ? perMetre.min : perMetre.typ;
    return [
      {
        name: 'R_20',
        says: 'resistance of its conductors at 20 °C: n wires of that length, of r ohms a metre',
        formula: 'n * l * r',
        with: { ...common, r: [metre, 'Ω'] },
        gives: [cold, 'Ω'],
        sources: [`${origin.document}${origin.where ? `, ${origin.where}` : ''}`],
      },
    ];
  }
  const { area } = copper;
  return [
    {
      name: 'R_20',
      says: 'resistance of its copper at 20 °C: n wires of that length and of A mm², 58 m of 1 mm² to the ohm',
      formula: 'n * l / (58 * A)',
      with: { ...common, A: [(most ? area.min : least ? area.max : area.typ) * 1e6, ''] },
      gives: [cold, 'Ω'],
      sources: ['IEC 60028: annealed copper, 58 m/(Ω·mm²) at 20 °C', 'ASTM B258: diameters of the American gauge'],
    },
  ];
}

/** A wire's resistance at its temperature, and the volts that are lost in it there and back. */
export function cableSteps(link: Link, s: Solution, amps: number): Step[] {
  const { cold, contact, celsius, ohms } = s.cableOf(link);
  const plugs = contact > 0;
  return [
    ...copperSteps(link, cold),
    {
      name: 'R_wire',
      says: plugs ? 'resistance at the ambient, and that of its plugs' : 'resistance at the ambient',
      formula: `R_20 * (K + T) / (K + T_20)${plugs ? ' + R_contact' : ''}`,
      with: {
        R_20: [cold, 'Ω'],
        K: [COPPER_ZERO, '°C'],
        T: [celsius, '°C'],
        T_20: [WIRE_REFERENCE, '°C'],
        ...(plugs && { R_contact: [contact, 'Ω'] as const }),
      },
      gives: [ohms, 'Ω'],
    },
    {
      name: 'V_wire',
      says: 'voltage that is lost in it',
      formula: 'I * R_wire',
      with: { I: [amps, 'A'], R_wire: [ohms, 'Ω'] },
      gives: [amps * ohms, 'V'],
    },
  ];
}

/** A regulator's loss and junction temperature. */
export function heatSteps(
  link: Link,
  thermal: number,
  s: Solution,
  number: number,
  loss: (s: Solution) => number,
): Step[] {
  const [input, output] = [s.voltage(link.from), s.voltage(link.to)];
  const [amps, own] = [s.linkCurrents[number]!, s.ownCurrent(link)];
  const [power, mean] = [loss(s), meanOf(s, loss)];
  const origin = link.heat?.origin ?? link.origin;
  const sources = origin ? [`${link.id}: ${origin.document}${origin.where ? `, ${origin.where}` : ''}`] : [];
  return [
    {
      name: 'P',
      says: `what ${link.title} turns into heat`,
      formula: '(V_in - V_out) * I + V_in * I_q',
      with: { V_in: [input, 'V'], V_out: [output, 'V'], I: [amps, 'A'], I_q: [own, 'A'] },
      gives: [power, 'W'],
      sources,
    },
    ...meanSteps(s, 'P_mean', 'its mean over a period of the pulses', 'W', loss),
    {
      name: 'T_junction',
      says: 'temperature of its junction',
      formula: 'T_ambient + theta * P',
      with: { T_ambient: [s.ambient, '°C'], theta: [thermal, 'K/W'], P: [mean, 'W'] },
      gives: [s.ambient + thermal * mean, '°C'],
      sources,
    },
  ];
}

/**
 * How a node comes to its voltage: what its source or its regulator holds, less what is lost on the way.
 *
 * @param shortfall volts that are missing besides, because the source is limited in current
 */
export function standingSteps(node: string, s: Solution, shortfall: number): Step[] {
  const { links } = s.circuitry.project;
  const values: Record<string, readonly [number, string]> = {};
  const lost: string[] = [];
  let at = node;
  for (let link = links.find((l) => l.to === at); link; link = links.find((l) => l.to === at)) {
    if (link.volts !== undefined && (link.kind === 'switching-regulator' || s.regulates(link))) break;
    if (link.kind !== 'wire') {
      const name = unused(values, symbol('V', link.id));
      values[name] = [s.heldAt(link.from) - s.heldAt(link.to), 'V'];
      lost.push(name);
    }
    at = link.from;
  }
  if (shortfall > 0) {
    values['V_limited'] = [shortfall, 'V'];
    lost.push('V_limited');
  }
  const source = unused(values, symbol('V', at));
  return [
    {
      name: 'V',
      says: lost.length === 0 ? 'it stands where what feeds it does' : 'what feeds it, less what is lost on the way',
      formula: [source, ...lost].join(' - '),
      with: { [source]: [s.heldAt(at), 'V'], ...values },
      gives: [s.heldAt(node) - shortfall, 'V'],
    },
  ];
}
