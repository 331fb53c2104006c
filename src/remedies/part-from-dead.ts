/**
 * A line that feeds what is dead at its other end: a resistor in it lets so little through that the pin bears it, or that the
 * dead rail stays down.
 */
import { CLAMP_VOLTS } from '../loads/lines/pin-clamp.js';
import type { LineEnd } from '../loads/lines/line.js';
import type { Project } from '../project/project.js';
import { nextAbove } from '../quantity/preferred.js';
import type { Case, Way } from './cures.js';
import { entryOf, partText } from './entries.js';
import type { Cure } from './prove.js';

/** Share of a limit that is used. */
const USED = 0.8;
/** Ohms that slow lines bear, a serial line or a servo's, and those of a strip with its 800 kHz (common practice, no source). */
const TRIES = [1e3, 4.7e3, 10e3, 22e3];
const FAST = 1e3;

const RULES = new Set(['dead-pushed', 'dead-lifted', 'dead-fed']);

export const partFromDead: Way = (of) => {
  const { finding, judgement } = of;
  if (!RULES.has(finding.rule)) return [];
  const names = (finding.names['into'] ?? finding.names['through'] ?? '').split(', ');
  const lines = judgement.project.ends.filter((end) => names.includes(end.told));
  const places = lines.flatMap((end) => placeOf(of, end) ?? []);
  if (places.length === 0 || places.length < lines.length) return [];
  return valuesFor(of, lines).map((value): Cure => {
    const ohms = partText(value, 'resistance');
    const all = places.map((p) => p.name).join(' and ');
    return {
      title: `Put ${ohms} in series with ${all}`,
      changes: places.map(({ path }) => ({ path, value: `${ohms} ±5 %` })),
      parts: places.map(() => `${ohms}, 5 %`),
      steps: [`Fit ${ohms} into the line of ${all}, near the pin that drives it.`],
      watch: [],
    };
  });
};

/** Where the file says what lies in a line; a line that steers an expander has no such place. */
function placeOf({ data, judgement: { project } }: Case, { about, owner }: LineEnd) {
  if (entryOf(data, 'incoming', about)) return { name: about, path: ['incoming', about, 'series'] };
  const circuit = project.circuits.find((c) => c.id === owner);
  if (circuit?.listens !== true || circuit.id !== circuit.owner) return undefined;
  return { name: `the signal of ${owner}`, path: ['loads', owner, 'series'] };
}

/** By the limit that is broken, where one is; else what such lines bear. */
function valuesFor({ finding, judgement: { project } }: Case, lines: readonly LineEnd[]): readonly number[] {
  const most = Number(finding.names['most']);
  const fast = lines.some(({ owner }) => project.circuits.some((c) => c.owner === owner && c.type === 'pixels'));
  const bearable = TRIES.filter((ohms) => !fast || ohms <= FAST);
  if (finding.rule === 'dead-lifted' || !(most > 0)) return bearable;
  const volts = Math.max(...lines.map(({ source }) => highest(project, source)));
  const least = (volts - CLAMP_VOLTS.min) / (USED * most) / 0.95;
  return [nextAbove('E24', least), ...bearable.filter((ohms) => ohms > least)];
}

/** The most that the rail of a pin stands at, volts. */
function highest(project: Project, pin: string | undefined): number {
  const feeds = new Map(project.links.map((l) => [l.to, l]));
  for (let at = project.pins.find((p) => p.id === pin)?.rail; at !== undefined; at = feeds.get(at)?.from) {
    const volts = project.nodes.find((n) => n.id === at)?.volts?.max ?? feeds.get(at)?.volts?.max;
    if (volts !== undefined) return volts;
  }
  return 0;
}
