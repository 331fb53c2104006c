/** Meter readings: what each is of, and how much it says. */
import { isMapping } from '../loads/figures.js';
import type { AccountPlan } from '../loads/account-plan.js';
import type { NetworkPlan } from '../loads/branch-plan.js';
import type { CircuitPlan } from '../loads/circuit-plan.js';
import { parseQuantity } from '../quantity/parse.js';
import { closed } from '../quantity/quantity.js';
import { didYouMean, oneOf } from '../source/did-you-mean.js';
import type { Path } from '../source/place.js';
import type { Chip } from './chip.js';
import { pinNamed } from './names.js';
import type { ModePlan, ReadingPlan, Spot } from './project.js';
import type { Link, TreeNode } from './tree-plan.js';
import type { Gathered } from './remarks.js';

/** No more readings are taken: each is solved for, and a stranger's file must not take for ever. */
const MOST_READINGS = 100;
const QUANTITIES = ['voltage', 'current', 'power', 'temperature'] as const;

/** Where a meter can be held. */
export interface Measurable {
  readonly networks: readonly NetworkPlan[];
  readonly circuits: readonly CircuitPlan[];
  readonly accounts: readonly AccountPlan[];
  readonly nodes: readonly TreeNode[];
  readonly links: readonly Link[];
  readonly modes: readonly ModePlan[];
  readonly chips: ReadonlyMap<string, Chip>;
  readonly controllers: readonly string[];
}

/** Readings of `measured`; what does not bind is a problem. */
export function measuredFrom(raw: unknown, around: Measurable, remarks: Gathered): ReadingPlan[] {
  if (!Array.isArray(raw)) return [];
  if (raw.length > MOST_READINGS) {
    remarks.problem({
      path: ['measured'],
      on: 'key',
      says: `there are ${raw.length} readings`,
      expected: `no more than ${MOST_READINGS}`,
    });
    return [];
  }
  const spots = spotsOf(around);
  return raw.flatMap((row: unknown, k): ReadingPlan[] => {
    if (!isMapping(row) || row['of'] === undefined) return [];
    const path: Path = ['measured', k];
    const mode = modeOf(row['mode'], [...path, 'mode'], around.modes, remarks);
    const spot = spotNamed(String(row['of']), [...path, 'of'], spots, around, remarks);
    if (spot === undefined || mode === undefined) return [];
    return QUANTITIES.flatMap((quantity): ReadingPlan[] => {
      const written = row[quantity];
      if (written === undefined) return [];
      const at = [...path, quantity];
      if (!spot.quantities.includes(quantity)) {
        remarks.problem({
          path: at,
          on: 'key',
          says: `\`${spot.id}\` has no ${quantity} that is reckoned`,
          expected: spot.quantities.map((q) => `\`${q}\``).join(', '),
        });
        return [];
      }
      const parsed = parseQuantity(written as string, quantity);
      if (!('quantity' in parsed)) {
        remarks.problem({ path: at, on: 'value', says: parsed.problem, expected: parsed.expected });
        return [];
      }
      const { exact, stated } = parsed.quantity;
      const of: Spot = { sort: spot.sort, id: spot.id };
      return [
        {
          of,
          quantity,
          value: closed(parsed.quantity),
          exact,
          stated,
          path: at,
          ...(mode.name !== undefined && { mode: mode.name }),
        },
      ];
    });
  });
}

/** The mode of a reading; undefined after a problem. */
function modeOf(
  raw: unknown,
  path: Path,
  modes: readonly ModePlan[],
  remarks: Gathered,
): { readonly name?: string } | undefined {
  if (raw === undefined) return {};
  const name = String(raw);
  if (modes.some((m) => m.name === name)) return { name };
  const names = modes.map((m) => m.name);
  remarks.problem({
    path,
    on: 'value',
    says: `there is no mode \`${name}\``,
    expected: names.length === 0 ? 'no `mode`, since the file states none' : didYouMean(name, names, oneOf(names)),
  });
  return undefined;
}

/** A place that a meter can be held to, and what it can show there. */
interface Measured extends Spot {
  readonly quantities: readonly ReadingPlan['quantity'][];
}

function spotsOf({ networks, circuits, accounts, nodes, links }: Measurable): ReadonlyMap<string, Measured> {
  const spots = new Map<string, Measured>();
  const add = (name: string, spot: Measured): void => {
    const known = spots.get(name);
    const quantities = [...new Set([...(known?.quantities ?? []), ...spot.quantities])];
    spots.set(name, { ...(known ?? spot), quantities });
  };
  for (const { on, off } of networks)
    for (const branch of [...on, ...off])
      for (const { part, kind } of branch.members)
        add(
          part,
          kind === 'pin'
            ? { sort: 'pin', id: part, quantities: ['voltage', 'current'] }
            : { sort: 'part', id: part, quantities: ['voltage', 'current', 'power'] },
        );
  for (const { id } of nodes.filter((n) => n.kind !== 'joint'))
    add(id, { sort: 'node', id, quantities: ['voltage', 'current', 'power'] });
  for (const { id, kind, inner } of links)
    if (kind !== 'wire' && !inner) add(id, { sort: 'link', id, quantities: ['voltage', 'current'] });
  for (const { id, heat } of links) if (heat) add(id, { sort: 'link', id, quantities: ['temperature'] });
  // What is reckoned beside the circuit's branches: how warm a part is, at which level a line stands.
  for (const { id, kind, quantity } of accounts)
    if (quantity === 'temperature' || (kind === 'level' && quantity === 'voltage' && !spots.has(id)))
      add(id, { sort: 'account', id, quantities: [quantity] });
  for (const { id, wiring } of circuits) {
    const load = wiring.coil === undefined ? undefined : spots.get(wiring.coil);
    if (load === undefined) continue;
    if (!spots.has(id)) spots.set(id, load);
    // A clamp lies across its winding.
    if (wiring.clamp !== 'none') spots.set(`${id}.clamp`, { ...load, quantities: ['voltage'] });
  }
  return spots;
}

function spotNamed(
  name: string,
  path: Path,
  spots: ReadonlyMap<string, Measured>,
  { chips, controllers }: Measurable,
  remarks: Gathered,
): Measured | undefined {
  const pin = chips.size === 0 ? undefined : pinNamed(chips, controllers, name, path);
  const own = controllers.length === 1 ? `${controllers[0]}.${name}` : name;
  const found =
    (pin && 'found' in pin ? spots.get(pin.found.pin.account) : undefined) ?? spots.get(name) ?? spots.get(own);
  if (found) return found;
  remarks.problem({
    path,
    on: 'value',
    says: pin && 'found' in pin ? `nothing hangs on pin \`${name}\`` : `there is nothing called \`${name}\` to measure`,
    expected: didYouMean(
      name,
      spots.keys(),
      'a supply, a rail, a pin in use, a load or one of its parts, as in `vents.1.coil`',
    ),
  });
  return undefined;
}
