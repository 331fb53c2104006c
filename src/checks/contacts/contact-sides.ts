/**
 * Protects a changeover with a load on either side. Both hang on its one common terminal, and it breaks before it makes: for some
 * milliseconds neither is fed, and an arc that still burns then joins the two.
 */
import type { ContactSide } from '../../loads/circuit-plan.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

/** Above these a voltage can hurt, volts (common practice, no source). */
const TOUCHABLE = { AC: 50, DC: 60 };

const isDangerous = ({ volts, waveform }: ContactSide): boolean => volts > TOUCHABLE[waveform];
const told = ({ volts, waveform }: ContactSide): string => `${Number(volts.toPrecision(4))} V ${waveform}`;
/** What keeps its current going when the contact opens, with nothing that takes it over. */
const arcs = ({ kind, suppression }: ContactSide): boolean =>
  (kind === 'inductive' || kind === 'motor') && suppression === undefined;

function find({ ledger }: Judged): Finding[] {
  return ledger.project.circuits.flatMap(({ id, contact }): Finding[] => {
    if (contact?.other === undefined) return [];
    const { other } = contact;
    const about = { rule: 'contact-sides', family: 'contacts', about: id, path: other.path, related: [] } as const;
    const names = { one: told(contact), two: told(other) };
    if (isDangerous(contact) !== isDangerous(other))
      return [{ ...about, verdict: 'breach', names: { ...names, what: 'meets' } }];
    if (contact.waveform !== other.waveform)
      return [{ ...about, verdict: 'strain', names: { ...names, what: 'mixed' } }];
    if (arcs(contact) || arcs(other)) return [{ ...about, verdict: 'note', names: { ...names, what: 'arcs' } }];
    return [];
  });
}

export default { name: 'contact-sides', family: 'contacts', find } satisfies WiringRule;
