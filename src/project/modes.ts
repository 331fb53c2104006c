/** Modes and interlocks. */
import { isMapping } from '../loads/figures.js';
import type { CircuitPlan } from '../loads/circuit-plan.js';
import { parseQuantity } from '../quantity/parse.js';
import type { Path } from '../source/place.js';
import { circuitsNamed } from './names.js';
import type { InterlockPlan, ModePlan } from './project.js';
import type { Gathered } from './remarks.js';

/** Names that stand for states of their own. */
const RESERVED = ['free', 'runaway', 'boot'];

export function modesFrom(raw: unknown, circuits: readonly CircuitPlan[], remarks: Gathered): ModePlan[] {
  if (!isMapping(raw)) return [];
  const modes = Object.entries(raw).flatMap(([name, mode]): ModePlan[] => {
    const path = ['modes', name];
    if (RESERVED.includes(name)) {
      remarks.problem({
        path,
        on: 'key',
        says: `\`${name}\` is the name of a state of its own`,
        expected: 'another name for this mode',
      });
      return [];
    }
    if (!isMapping(mode)) return [];
    const active = new Set(named(mode['active'], [...path, 'active'], circuits, remarks));
    const share = mode['share'] === undefined ? undefined : shareOf(mode['share'], [...path, 'share'], remarks);
    const boot = mode['during'] === 'boot';
    if (boot && share !== undefined)
      remarks.problem({
        path: [...path, 'share'],
        on: 'key',
        says: `\`${name}\` lasts until firmware runs, and has no share of the time`,
        expected: 'no `share` beside `during: boot`',
      });
    const [asleep, without] = [strings(mode['asleep']), strings(mode['without'])];
    return [
      {
        name,
        active,
        path,
        asleep,
        without,
        ...(share !== undefined && { share }),
        ...(boot && { during: 'boot' as const }),
      },
    ];
  });
  const whole = modes.reduce((sum, m) => sum + (m.share ?? 0), 0);
  if (whole > 1 + 1e-9)
    remarks.problem({
      path: ['modes'],
      on: 'key',
      says: `the modes’ shares add up to ${Math.round(whole * 1000) / 10} %`,
      expected: 'no more than 100 %',
    });
  if (modes.some((m) => m.share !== undefined) && whole < 1 - 1e-6)
    remarks.assume(
      'modes',
      `their shares add up to ${Math.round(whole * 1000) / 10} % of the time, so that no averages are told`,
    );
  const mentioned = new Set(modes.flatMap((m) => [...m.active]));
  if (modes.length > 0)
    for (const c of circuits)
      if (!c.always && !c.signal && !mentioned.has(c.id))
        remarks.assume(c.id, 'counted as on in every mode, since no mode names it', c.path);
  return modes;
}

const strings = (raw: unknown): string[] => (Array.isArray(raw) ? raw.map(String) : []);

function shareOf(raw: unknown, path: Path, remarks: Gathered): number | undefined {
  const parsed = parseQuantity(raw as string, 'ratio');
  if ('quantity' in parsed && parsed.quantity.typ !== undefined && parsed.quantity.typ >= 0 && parsed.quantity.typ <= 1)
    return parsed.quantity.typ;
  remarks.problem({
    path,
    on: 'value',
    says: 'problem' in parsed ? parsed.problem : 'a share of the time lies between 0 and 100 %',
    expected: '`20 %`',
  });
  return undefined;
}

/** Circuits of a list of names. */
function named(raw: unknown, path: Path, circuits: readonly CircuitPlan[], remarks: Gathered): string[] {
  const list = Array.isArray(raw) ? raw : raw === undefined ? [] : [raw];
  return list.flatMap((name: unknown, k) => {
    const bound = circuitsNamed(circuits, String(name), Array.isArray(raw) ? [...path, k] : path);
    if ('found' in bound) return [...bound.found];
    if (!unread(String(name), remarks)) remarks.problem(bound.problem);
    return [];
  });
}

/** A load that could not be read has said so itself: that its circuits are missing is no second mistake. */
const unread = (name: string, { problems }: Gathered): boolean => {
  const [owner] = name.split('.');
  return problems.some(({ path }) => path[0] === 'loads' && path[1] === owner);
};

export function interlocksFrom(raw: unknown, circuits: readonly CircuitPlan[], remarks: Gathered): InterlockPlan[] {
  if (!Array.isArray(raw)) return [];
  return raw.flatMap((item: unknown, k): InterlockPlan[] => {
    if (!isMapping(item)) return [];
    const path = ['interlocks', k];
    const by = item['by'] === 'wiring' ? 'wiring' : 'firmware';
    if (item['by'] === undefined)
      remarks.assume(`interlock ${k + 1}`, 'kept by firmware, since the file does not say', path);
    const read = (key: string): string[] => named(item[key], [...path, key], circuits, remarks);
    if (item['at-most'] !== undefined)
      return [{ kind: 'at-most', most: Number(item['at-most']), of: read('of'), by, path }];
    if (item['needs'] !== undefined) return [{ kind: 'needs', of: read('needs'), when: read('for'), by, path }];
    if (item['excludes'] !== undefined)
      return [{ kind: 'excludes', of: read('excludes'), when: read('for'), by, path }];
    return [];
  });
}
