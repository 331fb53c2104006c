/**
 * A register wakes as it likes, and what hangs on its outputs with it: its enable line is held at the level that keeps them
 * off until firmware has set them, by a resistor and a pin that lets go of it only then.
 */
import { BOOT } from '../ledger/moments.js';
import { isMapping } from '../loads/figures.js';
import { LEAKAGE } from '../project/loose-pins.js';
import { nextBelow } from '../quantity/preferred.js';
import type { Case, Way } from './cures.js';
import { entryOf, partText } from './entries.js';
import type { Cure } from './prove.js';

/** Amperes that the line's pin and its input leak together. */
const LEAKING = 2 * LEAKAGE;
/** Volts that they may move it by: little against what any input of 3.3 V and more still reads as high (common practice, no source). */
const LITTLE = 0.2;

export const holdOutputsOff: Way = ({ finding, judgement: { project, boot }, data }: Case) => {
  const pin = wakingPin(finding, boot);
  if (pin === undefined) return [];
  const owner = pin.slice(0, pin.lastIndexOf('.'));
  const section = project.expanders.has(owner) ? 'expanders' : 'arrays';
  const entry = entryOf(data, section, owner);
  const off = project.outputsOff.get(owner);
  if (entry === undefined || off === undefined) return [];
  const { line, at } = off;
  const control = isMapping(entry['control']) ? entry['control'] : {};
  const wired = control[line];
  const used = new Set(project.uses.map((u) => u.pin));
  const free = project.pins.filter(
    (p) =>
      !project.expanders.has(p.owner) &&
      !p.reserved &&
      !p.inputOnly &&
      !p.strap &&
      !used.has(p.id) &&
      p.boot !== 'pulses',
  );
  const found =
    typeof wired === 'string' ? project.uses.find((u) => u.by === owner && u.role === line)?.pin : free[0]?.id;
  const holder = project.pins.find((p) => p.id === found);
  if (holder === undefined) return [];
  const ohms = partText(nextBelow('E6', LITTLE / LEAKING), 'resistance');
  const [key, to] = at === 'high' ? (['pull-up', 'its rail'] as const) : (['pull-down', 'ground'] as const);
  const label = holder.id.slice(holder.id.lastIndexOf('.') + 1);
  const cure: Cure = {
    title: `Hold ${line} of ${owner} ${at} until firmware runs, with ${ohms} from ${holder.label} to ${to}`,
    changes: [
      ...(typeof wired === 'string' ? [] : [{ path: [section, owner, 'control', line], value: holder.id }]),
      { path: ['controllers', holder.owner, 'pins', label, key], value: `${ohms} ±5 %` },
    ],
    parts: [ohms],
    steps: [
      ...(typeof wired === 'string'
        ? []
        : [`Take ${line} of ${owner} off where it is tied, and put it on ${holder.label}.`]),
      `Put ${ohms} from ${holder.label} to ${to}.`,
      `In the firmware set the outputs first, and only then drive ${holder.label} ${at === 'high' ? 'low' : 'high'}.`,
    ],
    watch: [],
  };
  return [cure];
};

/** An output that wakes as it likes and brings the finding about: it switches a load, or what all of them draw together is too much. */
function wakingPin({ rule, names, account }: Case['finding'], boot: Case['judgement']['boot']): string | undefined {
  if (rule === 'boot-drives') return names['state'] === 'any' ? names['ids']?.split(', ')[0] : undefined;
  if (account?.mode !== BOOT) return undefined;
  const drawing = new Set(account.entries.map((e) => e.circuit));
  return boot.circuits.flatMap((c) => (drawing.has(c.circuit) ? c.pins.filter((p) => p.state === 'any') : []))[0]?.pin;
}
