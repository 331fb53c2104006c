/** What loads do until firmware runs, held against what the file says is safe. */
import type { AtBoot } from '../../ledger/boot.js';
import type { BootState, CircuitPlan, Purpose } from '../../loads/circuit-plan.js';
import type { Finding, Judged } from '../finding.js';

/** What a circuit does, and why. */
type Doing = AtBoot & { readonly dead?: readonly string[]; readonly line?: string; readonly clamps?: string };

/** A circuit with what it does before firmware runs. */
export interface Started {
  readonly plan: CircuitPlan;
  readonly boot: Doing;
}

/** What a circuit's load is to do, and whether it runs while the circuit is on: not behind a normally closed contact. */
export interface Care {
  readonly safe?: Purpose['safeWhen'];
  readonly runsOn: boolean;
  /** It is the load on the other side of a changeover. */
  readonly other?: true;
}

/** Where the file says nothing of the load itself, the one on the other side of its contact counts. */
export function careOf({ purpose, contact }: CircuitPlan): Care {
  const runsOn = purpose?.runs !== 'off';
  const other = contact?.other;
  if (purpose?.safeWhen !== undefined) return { safe: purpose.safeWhen, runsOn };
  return other?.safeWhen === undefined
    ? { runsOn }
    : { safe: other.safeWhen, runsOn: other.wired === 'normally-open', other: true };
}

/**
 * What it comes to: `against` its safe state, `unsure` where nothing promises that it is kept, `acts` where the file says of no
 * state that it is safe and it comes on by itself; undefined where it is as it should be.
 */
export function startOf({ plan, boot }: Started): 'against' | 'unsure' | 'acts' | undefined {
  const { safe, runsOn } = careOf(plan);
  switch (boot.does) {
    case 'open':
      return 'unsure';
    case 'pulses':
      return safe === undefined ? 'acts' : 'against';
    case 'on':
    case 'off': {
      // What latches stays as its last pulse left it: that no power brings it back is another rule's affair.
      if (boot.does === 'off' && plan.latching) return undefined;
      if (safe === undefined) return boot.does === 'on' ? 'acts' : undefined;
      const runs = (boot.does === 'on') === runsOn;
      return runs === (safe === 'load-running') ? undefined : 'against';
    }
    default:
      return boot.does satisfies never;
  }
}

/** Circuits of a load that do the same for the same reason are one finding. */
export function startFindings(
  judged: Judged,
  rule: string,
  verdictOf: (started: Started) => Finding['verdict'] | undefined,
  doings: readonly Doing[] = judged.boot.circuits,
): Finding[] {
  const { project } = judged.ledger;
  const groups = new Map<string, { readonly verdict: Finding['verdict']; readonly of: Started[] }>();
  for (const boot of doings) {
    const plan = project.circuits.find((c) => c.id === boot.circuit)!;
    const verdict = verdictOf({ plan, boot });
    if (verdict === undefined) continue;
    const states = [...new Set(boot.pins.map((p) => p.state))].join();
    const key = [
      plan.owner,
      verdict,
      boot.does,
      states,
      careOf(plan).safe,
      boot.stated,
      boot.dead?.join(),
      boot.line,
      boot.clamps,
    ].join('|');
    const group = groups.get(key) ?? { verdict, of: [] };
    group.of.push({ plan, boot });
    groups.set(key, group);
  }
  return [...groups.values()].map(({ verdict, of }) => finding(judged, rule, verdict, of));
}

function finding({ ledger: { project } }: Judged, rule: string, verdict: Finding['verdict'], of: Started[]): Finding {
  const [{ plan, boot }] = of as [Started];
  const care = careOf(plan);
  const labelOf = (pin: string): string => project.pins.find((p) => p.id === pin)?.label ?? pin;
  const pins = [...new Set(of.flatMap((s) => s.boot.pins.map((p) => labelOf(p.pin))))];
  const use = project.uses.find((u) => u.by === plan.id && u.as === 'output');
  return {
    rule,
    family: 'boot',
    verdict,
    about: of.length > 1 ? plan.owner : plan.id,
    path: use?.path ?? plan.path,
    ...(boot.account && { account: boot.account, ...(boot.account.limits[0] && { by: boot.account.limits[0] }) }),
    names: {
      circuits: of.map((s) => s.plan.id).join(', '),
      pins: pins.join(', '),
      ...(boot.pins.every(({ pin }) => project.pins.every((p) => p.id !== pin)) && { channels: 'yes' }),
      ids: of.flatMap((s) => s.boot.pins.map((p) => p.pin)).join(', '),
      // All circuits of a load go by its name.
      who:
        of.length > 1 && of.length === project.circuits.filter((c) => c.owner === plan.owner).length ? plan.owner : '',
      state: stateOf(boot.pins.map((p) => p.state)),
      does: boot.does,
      runs: care.runsOn ? 'on' : 'off',
      ...(boot.stated !== undefined && { stated: boot.stated }),
      ...(boot.clamps !== undefined && { clamps: boot.clamps }),
      ...(boot.line !== undefined && { line: boot.line }),
      ...(plan.latching && { latches: plan.latching.coils }),
      ...(boot.dead && { dead: boot.dead.join(', ') }),
      ...(care.safe && { safe: care.safe }),
      ...(care.other && { other: 'yes' }),
    },
    related: of.slice(1, 8).map((s) => ({ path: s.plan.path, name: s.plan.id })),
  };
}

/** Of several pins the one that leaves most open tells. */
const stateOf = (states: readonly BootState[]): BootState =>
  ['floating', 'any', 'pulses'].flatMap((worst) => states.filter((s) => s === worst))[0] ?? states[0]!;
