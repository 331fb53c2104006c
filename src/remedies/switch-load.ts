/**
 * What is too much for its pin, or for the sum that the pin counts in, gets a transistor: the pin gives the base or gate its
 * current, and the load is fed from the rail. So does what stands above the pin's supply and pushes into it.
 */
import { isMapping } from '../loads/figures.js';
import type { CircuitPlan } from '../loads/circuit-plan.js';
import { railOfPin } from '../project/rail-of-pin.js';
import { beforeCables } from '../project/same-node.js';
import type { Case, Way } from './cures.js';
import { entryOf } from './entries.js';
import type { Cure } from './prove.js';
import type { Switch } from './switches.js';
import { switchesFor } from './switches.js';

const SUMS = new Set(['group-current', 'total-current', 'chip-heat']);
const RULES = new Set([
  'pin-current',
  'pins-joined',
  'pin-injected',
  'coil-release',
  'load-needs',
  'load-voltage',
  ...SUMS,
]);
/** Behind a transistor a load gets what the pin kept: so much more than it drew from the pin. */
const MORE = 1.3;
/** Types that a transistor at the lower end can switch. */
const TYPES = new Set([
  'led',
  'resistor',
  'lamp',
  'buzzer',
  'constant-current',
  'constant-power',
  'pixels',
  'module',
  'solid-state-relay',
]);

export const switchLoad: Way = (of) => {
  if (!RULES.has(of.finding.rule)) return [];
  const circuits = onPins(of);
  const owners = [...new Set(circuits.map((c) => c.owner))];
  // Of a sum the heaviest first, then the two heaviest, and so on.
  return owners.slice(0, 3).flatMap((_, k) => switched(of, owners.slice(0, k + 1), circuits));
};

/** The circuits on bare pins that the finding is about, the heaviest first. */
function onPins({ finding, judgement, data }: Case): readonly CircuitPlan[] {
  const { circuits } = judgement.project;
  const entries = finding.account?.entries ?? [];
  const named = [...entries].sort((a, b) => b.max - a.max).map((e) => e.circuit);
  const own = finding.path[0] === 'loads' ? [String(finding.path[1])] : [];
  return [...new Set([...(SUMS.has(finding.rule) ? [] : [finding.about, ...own]), ...named])].flatMap((id) =>
    circuits.filter((c) => {
      const driver = entryOf(data, 'loads', c.owner)?.['driver'];
      const open = isMapping(driver) && driver['type'] === 'open-drain';
      return (
        (c.id === id || c.owner === id) &&
        TYPES.has(c.type) &&
        c.wiring.bare === undefined &&
        (c.wiring.by === 'pin' || open)
      );
    }),
  );
}

function switched(of: Case, owners: readonly string[], circuits: readonly CircuitPlan[]): readonly Cure[] {
  const { judgement } = of;
  const draws = judgement.accounts.filter((j) => j.account.kind === 'pin' && j.account.quantity === 'current');
  const most = (c: CircuitPlan): number =>
    Math.max(0, ...draws.flatMap((j) => j.account.entries.filter((e) => e.circuit === c.id).map((e) => e.max)));
  const loads = owners.map((owner) => circuits.filter((c) => c.owner === owner));
  const amps = Math.max(...loads.flat().map(most)) * MORE;
  const first = loads[0]?.[0];
  if (first?.wiring.pin === undefined || !(amps > 0)) return [];
  return switchesFor(of, first.wiring.pin, amps).flatMap((by) => cure(of, loads, by) ?? []);
}

function cure(
  { judgement: { project }, data }: Case,
  loads: readonly (readonly CircuitPlan[])[],
  by: Switch,
): Cure | undefined {
  const parts = loads.map((circuits) => {
    const [c] = circuits;
    const entry = c && entryOf(data, 'loads', c.owner);
    if (c === undefined || entry === undefined) return undefined;
    const rail = railOfPin(project, c.wiring.pin);
    const supply = entry['supply'] ?? (c.wiring.supply === undefined ? rail : beforeCables(project, c.wiring.supply));
    const driver = isMapping(entry['driver']) ? entry['driver'] : {};
    const joined = Array.isArray(entry['joined-pins']) ? (entry['joined-pins'] as readonly unknown[]) : undefined;
    const pins = entry['pins'] ?? driver['pins'];
    const pin = entry['pin'] ?? driver['pin'] ?? joined?.[0];
    if (supply === undefined || (pins === undefined && typeof pin !== 'string')) return undefined;
    const at = ['loads', c.owner];
    return {
      owner: c.owner,
      supply,
      count: circuits.length,
      pins: pins === undefined ? String(pin) : [pins].flat().join(', '),
      changes: [
        ...['pin', 'pins', 'joined-pins', 'active'].map((key) => ({ path: [...at, key], value: undefined })),
        { path: [...at, 'supply'], value: supply },
        { path: [...at, 'driver'], value: { ...by.driver, ...(pins === undefined ? { pin } : { pins }) } },
      ],
    };
  });
  if (parts.some((p) => p === undefined)) return undefined;
  const all = parts.flatMap((p) => p ?? []);
  const names = all.map((p) => p.owner);
  const several = names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : names[0]!;
  const each = all.some((p) => p.count > 1) || all.length > 1;
  return {
    title: `Switch ${several} with ${by.words}${each ? ' each' : ''}`,
    changes: all.flatMap((p) => p.changes),
    parts: [`${by.words}${each ? ', one for each' : ''}`, ...by.resistors],
    steps: all.flatMap((p) => [
      `Take ${p.owner} off ${p.pins}: its plus goes to ${String(p.supply)}, its other end to the ${by.end}.`,
      ...by.steps(p.pins),
      `In the firmware high switches ${p.owner} on now.`,
    ]),
    watch: loads.flatMap((circuits) => circuits.slice(0, 1).flatMap((c) => [c.wiring.pin!, `${c.id}.driver`])),
  };
}
