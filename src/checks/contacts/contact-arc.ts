/**
 * Protects a contact that breaks an inductive load on direct voltage: with nothing to take its current over, an arc does. A diode
 * across a load on alternating voltage shorts every other half wave.
 */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger }: Judged): Finding[] {
  return ledger.project.circuits.flatMap(({ id, contact }): Finding[] => {
    if (contact === undefined || contact.solidState) return [];
    const { kind, waveform, suppression, path } = contact;
    const shorts = waveform === 'AC' && (suppression?.type === 'diode' || suppression?.type === 'zener');
    const arcs = waveform === 'DC' && suppression === undefined && (kind === 'inductive' || kind === 'motor');
    if (!shorts && !arcs) return [];
    const about = { rule: 'contact-arc', family: 'contacts', about: id, path, related: [] } as const;
    return [
      {
        ...about,
        verdict: shorts ? 'breach' : 'note',
        names: { kind, type: suppression?.type ?? 'none', across: suppression?.across ?? 'load' },
      },
    ];
  });
}

export default { name: 'contact-arc', family: 'contacts', find } satisfies WiringRule;
