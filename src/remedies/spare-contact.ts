/** What spares a contact: something across its load that takes the current over, nothing across itself, a cooler heat sink. */
import type { ContactPlan } from '../loads/plan.js';
import { nextBelow } from '../quantity/preferred.js';
import { partText } from './entries.js';
import type { Case, Way } from './cures.js';
import type { Cure } from './prove.js';

export const spareContact: Way = (of) => {
  const { finding, judgement } = of;
  const circuit = judgement.project.circuits.find((c) => c.id === finding.about);
  if (circuit?.contact === undefined) return [];
  const { contact } = circuit;
  switch (finding.rule) {
    case 'contact-leak':
      return contact.suppression ? [suppressed(of, contact, 'rc', contact.suppression)] : [];
    case 'contact-arc':
      return contact.waveform === 'AC' ? [suppressed(of, contact, 'rc')] : [];
    case 'contact-current':
      return contact.waveform === 'DC' && contact.kind === 'inductive' ? [suppressed(of, contact, 'diode')] : [];
    case 'contact-heat':
      return cooled(of, circuit.owner);
    default:
      return [];
  }
};

const WORDS = { diode: 'a diode', rc: 'an RC element' } as const;

/** Something across the load; what the contact had is taken over where it is moved. */
function suppressed(
  { finding }: Case,
  { path, suppression }: ContactPlan,
  type: 'diode' | 'rc',
  moved?: ContactPlan['suppression'],
): Cure {
  const what = WORDS[type];
  const at = [...path, 'suppression'];
  const load = `the load on ${finding.about}`;
  return {
    title: moved ? `Move ${what} from the contact of ${finding.about} to its load` : `Put ${what} across ${load}`,
    changes: moved ? [{ path: [...at, 'across'], value: 'load' }] : [{ path: at, value: { type } }],
    parts: moved ? [] : [what],
    steps: [
      ...(suppression && !moved ? [`Take the ${suppression.type} off ${load}.`] : []),
      type === 'diode'
        ? `Put a diode that bears the load’s current across ${load}, close to it, its ring towards the plus.`
        : `Put ${what} rated for the voltage across ${load}, close to it${moved ? ', and nothing across the contact' : ''}.`,
    ],
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
