/** A load that starts, or may start, before firmware runs: a resistor that holds it, another pin, another active level. */
import { LEAKAGE } from '../project/loose-pins.js';
import { nextBelow } from '../quantity/preferred.js';
import type { CircuitPlan } from '../loads/circuit-plan.js';
import type { PinUse } from '../project/pin-plan.js';
import type { Project } from '../project/project.js';
import { isMapping } from '../loads/figures.js';
import type { Case, Way } from './cures.js';
import { onWrongSide } from './rewire-contact.js';
import { entryOf, partText, valueAt } from './entries.js';
import type { Cure } from './prove.js';

const RULES = new Set(['boot-drives', 'boot-floats']);

/** Volts that a leak may move a control by: little against any threshold (common practice, no source). */
const LITTLE = 0.1;
/** Share of the rail that a pull which is overcome may leave: less than any input reads as on (common practice, no source). */
const OVERCOME = 0.1;

/** The circuits of a finding and the pins that switch them. */
function started({ finding, judgement: { project } }: Case): { circuits: CircuitPlan[]; uses: PinUse[] } {
  const circuits = project.circuits.filter((c) => (finding.names['circuits'] ?? '').split(', ').includes(c.id));
  const line = finding.names['line'];
  const uses = project.uses.filter(
    (u) =>
      circuits.some((c) => c.id === u.by) &&
      (u.as === 'output' || (u.as === 'signal' && u.role !== undefined && u.role === line)),
  );
  return { circuits, uses };
}

/** The largest resistor that holds a pin against its leakage, and against the pull inside the chip where there is one. */
function holding({ boot }: Project, uses: readonly PinUse[]): number {
  return Math.min(
    ...uses.map(({ pin }) => {
      const pull = boot.pins.get(pin)?.pull;
      return nextBelow('E6', pull === undefined ? LITTLE / LEAKAGE : (OVERCOME / (1 - OVERCOME)) * pull.min);
    }),
  );
}

export const holdAtBoot: Way = (of) => {
  const { finding, judgement, data } = of;
  const { project } = judgement;
  if (!RULES.has(finding.rule) || finding.names['stated'] !== undefined || finding.names['does'] === 'pulses')
    return [];
  const { circuits, uses } = started(of);
  const loose = uses.every(({ pin }) => {
    const state = project.boot.pins.get(pin)?.state;
    return state !== 'high' && state !== 'low';
  });
  const [first] = uses;
  if (first === undefined || !loose || uses.some((u) => u.joined)) return [];
  // What is not safe without power either belongs on its other contact, where this would hold it the wrong way.
  if (
    onWrongSide(
      judgement,
      circuits.map((c) => c.id),
    ).length > 0
  )
    return [];
  // Towards the side on which its load does no harm.
  const { line } = finding.names;
  const runsSafe = line === undefined && finding.names['safe'] === 'load-running';
  const wantsOn = runsSafe === (finding.names['runs'] === 'on');
  const up = line === undefined && (first.active === 'high') === wantsOn;
  const [key, to] = up ? (['pull-up', 'its rail'] as const) : (['pull-down', 'ground'] as const);
  const most = holding(project, uses);
  const driver = circuits.length === 1 ? entryOf(data, 'loads', circuits[0]!.owner)?.['driver'] : undefined;
  const named = `${driverWord(driver, 'part')} ${driverWord(driver, 'type')}`;
  return [1, 10].map((less): Cure => {
    const value = nextBelow('E6', most / less);
    const ohms = partText(value, 'resistance');
    const names = uses.map((u) => u.label);
    const atGate =
      uses.length === 1 && !up && /\bnmos/.test(named) && isMapping(driver) && driver['pull-down'] === undefined;
    return {
      title: `Hold ${line === undefined ? `${finding.about} ${wantsOn ? 'on' : 'off'}` : `${line} of ${finding.about}`} with ${ohms} from ${atGate ? 'its gate' : names.join(', ')} to ${to}`,
      changes: atGate
        ? [{ path: ['loads', circuits[0]!.owner, 'driver', 'pull-down'], value: `${ohms} ±5 %` }]
        : uses.map(({ pin }) => ({ path: settingPath(project, pin, key), value: `${ohms} ±5 %` })),
      parts: uses.map(() => ohms),
      steps: [
        `Put ${ohms} from ${atGate ? `the gate of ${finding.about}` : `pin ${names.join(', and as much from ')}`} to ${to}.`,
      ],
      watch: circuits.map((c) => `${c.id}.driver`),
    };
  });
};

const driverWord = (driver: unknown, key: string): string => (isMapping(driver) ? String(driver[key] ?? '') : '');

/** Where the file says what is fitted at a pin. */
function settingPath(project: Project, pin: string, key: string): readonly string[] {
  const dot = pin.indexOf('.');
  const owner = pin.slice(0, dot);
  const section = project.expanders.has(owner) ? 'expanders' : 'controllers';
  return [section, owner, 'pins', pin.slice(dot + 1), key];
}

/** Pins that are quiet at boot, in the place of one that is not. */
export const quietPin: Way = (of) => {
  const { finding, judgement, data } = of;
  const { project } = judgement;
  if (!RULES.has(finding.rule) || finding.names['stated'] !== undefined) return [];
  const { uses } = started(of);
  const [use] = uses;
  const written: unknown = use && valueAt(data, use.path);
  if (use === undefined || uses.length > 1 || typeof written !== 'string' || /\.\.|\*/.test(written)) return [];
  const owner = use.pin.slice(0, use.pin.indexOf('.'));
  const own = project.boot.pins.get(use.pin)?.state;
  const used = new Set(project.uses.map((u) => u.pin));
  const byState = new Map<string, string>();
  for (const p of project.pins)
    if (p.owner === owner && !p.reserved && !p.inputOnly && !p.strap && !used.has(p.id) && p.boot !== own)
      if (p.boot !== 'pulses' && p.boot !== 'any' && !byState.has(p.boot)) byState.set(p.boot, p.label);
  return [...byState.values()].map((label): Cure => ({
    title: `Move ${use.by} from ${use.label} to ${label}`,
    changes: [{ path: use.path, value: label }],
    parts: [],
    steps: [`Take ${use.by} off ${use.label} and put it on ${label}; change the pin in the firmware, too.`],
    watch: [],
  }));
};

/** A load on a bare pin that rests at the level which lights it, the other way round. */
export const otherLevel: Way = (of) => {
  const { finding, data } = of;
  if (finding.rule !== 'boot-drives' || finding.names['stated'] !== undefined || finding.names['does'] !== 'on')
    return [];
  const { circuits, uses } = started(of);
  const [circuit] = circuits;
  const entry = circuit && entryOf(data, 'loads', circuit.owner);
  if (circuit?.wiring.by !== 'pin' || entry === undefined || entry['driver'] !== undefined) return [];
  const other = uses[0]?.active === 'low' ? 'high' : 'low';
  return [
    {
      title: `Turn ${circuit.owner} round, so that its pin switches it on ${other}`,
      changes: [{ path: ['loads', circuit.owner, 'active'], value: other }],
      parts: [],
      steps: [
        `Take the end of ${circuit.owner} that is not on its pin to ${other === 'low' ? 'the pin’s rail' : 'ground'}; in the firmware turn its level over.`,
      ],
      watch: uses.map((u) => u.pin),
    },
  ];
};
