/** What spares a contact: something across its load that takes the current over, nothing across itself, a cooler heat sink. */
import { capacitorFor, resistorFor, varistorFor } from '../circuit/contact-protection.js';
import type { ContactSide } from '../loads/circuit-plan.js';
import { nextAbove, nextBelow } from '../quantity/preferred.js';
import { partText } from './entries.js';
import type { Case, Way } from './cures.js';
import type { Cure } from './prove.js';

export const spareContact: Way = (of) => {
  const { finding, judgement } = of;
  const circuit = judgement.project.circuits.find((c) => c.id === finding.about);
  if (circuit?.contact === undefined) return [];
  const { contact } = circuit;
  const { other } = contact;
  const side: ContactSide = other && finding.path.join() === other.path.join() ? other : contact;
  switch (finding.rule) {
    case 'contact-leak':
      return side.suppression ? [moved(of, side)] : [];
    case 'contact-arc':
      return [...withElement(of, side), ...withVaristor(of, side)];
    case 'contact-current':
      return side.waveform === 'DC' && side.kind === 'inductive' ? [withDiode(of, side)] : [];
    case 'contact-heat':
      return cooled(of, circuit.owner);
    default:
      return [];
  }
};

const at = ({ path }: ContactSide) => [...path, 'suppression'];

/** Share of a rating that a diode is used to. */
const USED = 0.8;
/** Amperes that rectifiers are sold for (common practice, no source). */
const RECTIFIERS = [1, 3, 6, 10, 25];
/** Relay makers ask for a diode that blocks so many times the load's voltage (ADLINK, as in `circuit/contact-protection.ts`). */
const BLOCKS = 10;

function withDiode({ finding }: Case, side: ContactSide): Cure {
  const load = `the load on ${finding.about}`;
  const amps = side.amps?.max ?? 0;
  const rated = RECTIFIERS.find((each) => amps <= USED * each);
  const small = rated === 1;
  const blocks = Math.ceil((BLOCKS * side.volts) / 50) * 50;
  const value = small
    ? { part: 'diode-1n4007' }
    : { type: 'diode', ...(rated !== undefined && { current: `${rated} A` }), 'reverse-voltage': `${blocks} V` };
  return {
    title: `Put a diode across ${load}`,
    changes: [{ path: at(side), value }],
    parts: [
      small
        ? 'a diode 1N4007'
        : `a diode for ${rated === undefined ? 'the load’s current' : `${rated} A`} and ${blocks} V`,
    ],
    steps: [`Put it across ${load}, close to it, its ring towards the plus.`],
    watch: [`${finding.about}.contact`],
  };
}

/** Largest capacitor for the mains that is easily had, farads (common practice, no source). */
const LARGEST = 1e-6;
/** Voltage that such capacitors are made for (class X2). */
const CAPACITOR = '275 V AC';

function withElement({ finding }: Case, side: ContactSide): Cure[] {
  const { amps, volts, suppression } = side;
  if (amps === undefined || side.waveform !== 'AC') return [];
  const farads = nextAbove('E6', capacitorFor(amps.typ).min);
  if (farads > LARGEST || volts > 250) return [];
  const ohms = nextBelow('E12', (resistorFor(volts).min + resistorFor(volts).max) / 2);
  const [capacitance, resistance] = [partText(farads, 'capacitance'), partText(ohms, 'resistance')];
  const load = `the load on ${finding.about}`;
  return [
    {
      title: `Put an RC element of ${capacitance} and ${resistance} across ${load}`,
      changes: [
        {
          path: at(side),
          value: { type: 'rc', across: 'load', capacitance, resistance, 'working-voltage': CAPACITOR },
        },
      ],
      parts: [`an RC element of ${capacitance} and ${resistance} for ${CAPACITOR}`],
      steps: [
        ...(suppression ? [`Take the ${suppression.type} off ${load}.`] : []),
        `Put it across ${load}, close to it.`,
      ],
      watch: [`${finding.about}.contact`, `${finding.about}.suppression`],
    },
  ];
}

function withVaristor({ finding }: Case, side: ContactSide): Cure[] {
  const volts = varistorFor(side.volts);
  if (volts === undefined || side.waveform !== 'AC') return [];
  const load = `the load on ${finding.about}`;
  return [
    {
      title: `Put a varistor for ${volts} V AC across ${load}`,
      changes: [{ path: at(side), value: { type: 'varistor', across: 'load', 'working-voltage': `${volts} V AC` } }],
      parts: [`a varistor for ${volts} V AC`],
      steps: [
        ...(side.suppression ? [`Take the ${side.suppression.type} off ${load}.`] : []),
        `Put it across ${load}, close to it, behind the fuse.`,
      ],
      watch: [`${finding.about}.contact`, `${finding.about}.suppression`],
    },
  ];
}

/** What lies across the contact goes across the load. */
function moved({ finding }: Case, side: ContactSide): Cure {
  return {
    title: `Move what lies across the contact of ${finding.about} to its load`,
    changes: [{ path: [...at(side), 'across'], value: 'load' }],
    parts: [],
    steps: [`Put it across the load on ${finding.about}, close to it, and nothing across the contact.`],
    watch: [`${finding.about}.contact`],
  };
}

/** A heat sink with which it stays as cool as the policy wants it. */
function cooled({ finding, judgement }: Case, owner: string): Cure[] {
  const { by } = finding;
  if (by === undefined || by.draw <= by.ambient) return [];
  const rise = (by.value - by.ambient) * (1 - judgement.project.policy.temperature);
  const now = judgement.project.accounts.find((a) => a.id === finding.account?.id && a.quantity === 'temperature');
  const watts = now && finding.account?.steps().find((s) => s.name === 'P')?.gives[0];
  if (watts === undefined || watts <= 0) return [];
  const theta = nextBelow('E12', rise / watts);
  if (theta < 0.2) return [];
  const text = partText(theta, 'thermal-resistance');
  return [
    {
      title: `Mount ${owner} on a heat sink, ${text} in all`,
      changes: [{ path: ['loads', owner, 'thermal-resistance'], value: text }],
      parts: [`a heat sink that with the relay’s own part comes to ${text} at most`],
      steps: [
        `Mount ${owner} with heat-conducting paste on a heat sink: ${text} from its junction to the air at most.`,
      ],
      watch: [`${finding.about}.output`],
    },
  ];
}
