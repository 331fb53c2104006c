/** Names and what they bind to: supplies and rails, pins, circuits; ranges spelled out, near spellings offered. */
import { nearestSpelling } from '../source/nearest-spelling.js';
import type { Path, Problem } from '../source/place.js';
import { quote } from '../source/visible.js';
import type { Chip } from './chip.js';
import type { ChipPin } from './chip-setting.js';
import type { Tree } from './tree.js';

/** Longest range that is spelled out, so that a stranger's file cannot fill the memory. */
const LONGEST_RANGE = 512;

export type Bound<T> = { readonly found: T } | { readonly problem: Problem };

/** `D5..D11` and `bar.q0..q7` spelled out; anything else stands for itself. */
export function spelledOut(text: string): readonly string[] | undefined {
  const parts = text.split('..');
  if (parts.length === 1) return [text];
  const [from, to] = [/^(.*?)(\d+)$/.exec(parts[0]!), /^(.*?)(\d+)$/.exec(parts[1] ?? '')];
  if (parts.length > 2 || from === null || to === null) return undefined;
  const [first, last] = [Number(from[2]), Number(to[2])];
  // The second name may leave its owner off: bar.q0..q7, vents.1..4.
  if (to[1] !== from[1] && !from[1]!.endsWith(to[1]!)) return undefined;
  if (last < first || last - first >= LONGEST_RANGE) return undefined;
  return Array.from({ length: last - first + 1 }, (_, k) => `${from[1]}${first + k}`);
}

/**
 * A pin of any chip by name: header or chip name, in any case, with its owner or, where only one of the controllers has such
 * a pin, without.
 */
export function pinNamed(
  chips: ReadonlyMap<string, Chip>,
  controllers: readonly string[],
  name: string,
  path: Path,
): Bound<{ chip: Chip; pin: ChipPin }> {
  const low = name.toLowerCase();
  const [only] = controllers.length === 1 ? controllers : [];
  const alone = only === undefined ? undefined : chips.get(only);
  const bearing = controllers.flatMap((owner) => {
    const chip = chips.get(owner);
    const pin = chip?.pins.get(low);
    return chip && pin ? [{ owner, chip, pin }] : [];
  });
  const [own, other] = bearing;
  if (own && other)
    return lost(
      path,
      `${bearing.map(({ owner }) => `\`${owner}\``).join(' and ')} both have a pin \`${name}\``,
      undefined,
      `\`${own.owner}.${own.pin.label}\` or \`${other.owner}.${other.pin.label}\``,
    );
  if (own) return { found: { chip: own.chip, pin: own.pin } };
  for (const [owner, chip] of chips) {
    if (!low.startsWith(`${owner.toLowerCase()}.`)) continue;
    const pin = chip.pins.get(low.slice(owner.length + 1));
    if (pin) return { found: { chip, pin } };
    const nearest = nearestSpelling(name.slice(owner.length + 1), labels(chip));
    return lost(
      path,
      `\`${owner}\` has no pin \`${name.slice(owner.length + 1)}\``,
      nearest && `${owner}.${nearest}`,
      `a pin of ${owner}: ${some(labels(chip))}`,
    );
  }
  const known = [
    ...(alone ? labels(alone) : []),
    ...[...chips].flatMap(([owner, chip]) => labels(chip).map((l) => `${owner}.${l}`)),
  ];
  if (known.length === 0)
    return lost(path, `there is no pin \`${name}\``, undefined, 'a controller in `controllers:` whose pin it is');
  const hint = alone
    ? `a pin of ${only}: ${some(labels(alone))}`
    : 'the controller’s name and the pin’s, as in `main.D4`';
  return lost(path, `there is no pin \`${name}\``, nearestSpelling(name, known), hint);
}

const labels = (chip: Chip): string[] => [...new Set([...chip.pins.values()].map((p) => p.label))];

const some = (names: readonly string[]): string =>
  names.length > 6 ? `${names.slice(0, 5).join(', ')} … ${names.at(-1)}` : names.join(', ');

/** Supplies, inlets and rails that have a name of their own. */
export const nodeNames = (tree: Pick<Tree, 'nodes'>): string[] =>
  tree.nodes.flatMap((n) => (n.kind === 'joint' ? [] : [n.id]));

/** A supply or rail by name. */
export function nodeNamed(
  ids: readonly string[],
  controllers: readonly string[],
  name: string,
  path: Path,
): Bound<string> {
  const exact = ids.find((id) => id === name) ?? ids.find((id) => id.toLowerCase() === name.toLowerCase());
  if (exact !== undefined) return { found: exact };
  if (controllers.length === 1) {
    const own = ids.find((id) => id.toLowerCase() === `${controllers[0]!.toLowerCase()}.${name.toLowerCase()}`);
    if (own !== undefined) return { found: own };
  }
  return lost(
    path,
    `there is no supply or rail \`${name}\``,
    nearestSpelling(name, ids),
    ids.length === 0 ? 'an entry in `supplies:`' : `one of ${ids.join(', ')}`,
  );
}

/** Circuits by name: `heartbeat`, `vents.2`, `vents.*`, `vents.1..4`, and `vents` for all its circuits. */
export function circuitsNamed(
  circuits: readonly { readonly id: string; readonly owner: string }[],
  name: string,
  path: Path,
): Bound<readonly string[]> {
  if (name.endsWith('.*')) {
    const owner = name.slice(0, -2);
    const found = circuits.filter((c) => c.owner === owner).map((c) => c.id);
    if (found.length > 0) return { found };
  }
  const names = spelledOut(name) ?? [name];
  const found = names.flatMap((n) => circuits.filter((c) => c.id === n || c.owner === n).map((c) => c.id));
  const missing = names.find((n) => !circuits.some((c) => c.id === n || c.owner === n));
  if (missing === undefined && found.length > 0) return { found };
  const known = [...new Set(circuits.flatMap((c) => [c.owner, c.id]))];
  return lost(
    path,
    `there is no circuit \`${missing ?? name}\``,
    nearestSpelling(missing ?? name, known),
    known.length === 0 ? 'a load in `loads:`' : 'the name of a load, or of one of its circuits, as in `vents.2`',
  );
}

function lost(path: Path, says: string, nearest: string | undefined, otherwise: string): { problem: Problem } {
  return {
    problem: {
      path,
      on: 'value',
      says,
      expected: nearest === undefined ? otherwise : `did you mean ${quote(nearest)}?`,
    },
  };
}
