/**
 * Protects a contact that breaks an inductive load: with nothing, or too small a capacitor, to take its current over, an arc does.
 * A diode across a load on alternating voltage shorts every other half wave; one across a contact on direct voltage does nothing.
 */
import { capacitorFor, resistorFor, varistorFor } from '../../circuit/contact-protection.js';
import type { CircuitPlan, ContactSide } from '../../loads/circuit-plan.js';
import { formatValue } from '../../quantity/print.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger }: Judged): Finding[] {
  return ledger.project.circuits.flatMap((circuit) => {
    const { contact } = circuit;
    if (contact === undefined || contact.solidState) return [];
    return [contact, ...(contact.other ? [contact.other] : [])].flatMap((side) => arcOf(circuit, side));
  });
}

function arcOf({ id, contact }: CircuitPlan, side: ContactSide): Finding[] {
  const what = whatOf(side);
  if (what === undefined) return [];
  const { kind, path, suppression } = side;
  return [
    {
      rule: 'contact-arc',
      family: 'contacts',
      about: id,
      path,
      related: [],
      verdict: what === 'shorts' ? 'breach' : 'note',
      names: {
        what,
        kind,
        across: suppression?.across ?? 'load',
        ...valuesOf(side),
        ...(side === contact?.other && { other: 'yes' }),
      },
    },
  ];
}

function whatOf({ kind, waveform, suppression, amps }: ContactSide): 'shorts' | 'arcs' | 'small' | 'aside' | undefined {
  if (waveform === 'AC' && (suppression?.type === 'diode' || suppression?.type === 'zener')) return 'shorts';
  if (
    suppression?.farads !== undefined &&
    kind === 'inductive' &&
    amps &&
    suppression.farads < capacitorFor(amps.typ).min
  )
    return 'small';
  const arcs = kind === 'inductive' || (kind === 'motor' && waveform === 'DC');
  if (suppression?.type === 'diode' && suppression.across === 'contact') return arcs ? 'aside' : undefined;
  if (suppression !== undefined) return undefined;
  return arcs ? 'arcs' : undefined;
}

/** Values by the makers' rules, as words: of an RC element, and of a varistor on alternating voltage. */
function valuesOf({ amps, volts, waveform, suppression }: ContactSide): Readonly<Record<string, string>> {
  const varistor = waveform === 'AC' ? varistorFor(volts) : undefined;
  const [farads, ohms] = [amps && capacitorFor(amps.typ), resistorFor(volts)];
  return {
    waveform,
    ...(farads && {
      rc: `${formatValue(farads.min, 'capacitance', 2)} to ${formatValue(farads.max, 'capacitance', 2)} and ${formatValue(ohms.min, 'resistance', 2)} to ${formatValue(ohms.max, 'resistance', 2)}`,
    }),
    ...(varistor !== undefined && { varistor: `${varistor} V AC` }),
    ...(suppression?.farads !== undefined && { farads: formatValue(suppression.farads, 'capacitance', 2) }),
  };
}

export default { name: 'contact-arc', family: 'contacts', find } satisfies WiringRule;
