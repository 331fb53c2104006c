/** States of USB ports by mode: what a port gives depends on what it has been asked and has granted. */
import { isMapping } from '../loads/figures.js';
import { didYouMean, oneOf } from '../source/did-you-mean.js';
import type { TreeNode } from './tree-plan.js';
import type { Gathered } from './remarks.js';

export type SupplyState = 'unconfigured' | 'configured' | 'suspended';

/** State by mode, for each supply that a mode names. */
export type SupplyStates = ReadonlyMap<string, ReadonlyMap<string, SupplyState>>;

/** The states in which no firmware runs yet: that of a reset, and those modes of the file. @param modes as the file has them */
export const bootModes = (modes: unknown): ReadonlySet<string> =>
  new Set([
    'boot',
    ...entries(modes).flatMap(([name, raw]) => (isMapping(raw) && raw['during'] === 'boot' ? [name] : [])),
  ]);

/** Whether the modes say what share of the time they take. */
export const isShared = (modes: unknown): boolean =>
  entries(modes).some(([, raw]) => isMapping(raw) && raw['share'] !== undefined);

const entries = (raw: unknown): [string, unknown][] => (isMapping(raw) ? Object.entries(raw) : []);

/** The controllers and expanders that sleep in some mode. @param data the file's */
export function sleepersIn(data: Readonly<Record<string, unknown>>, remarks: Gathered): ReadonlySet<string> {
  const known = ['controllers', 'expanders'].flatMap((section) => entries(data[section]).map(([id]) => id));
  const names = entries(data['modes']).flatMap(([mode, raw]) =>
    (isMapping(raw) && Array.isArray(raw['asleep']) ? (raw['asleep'] as unknown[]) : []).map((name, k) => {
      if (!known.includes(String(name))) {
        remarks.problem({
          path: ['modes', mode, 'asleep', k],
          on: 'value',
          says: `there is no controller \`${String(name)}\` that could sleep`,
          expected: didYouMean(String(name), known, oneOf(known)),
        });
      }
      return String(name);
    }),
  );
  return new Set(names);
}

/** @param modes as the file has them */
export function supplyStates(modes: unknown): SupplyStates {
  const states = new Map<string, Map<string, SupplyState>>();
  for (const [mode, raw] of entries(modes))
    for (const [supply, state] of entries(isMapping(raw) ? raw['supplies'] : undefined)) {
      const known = states.get(supply) ?? new Map<string, SupplyState>();
      states.set(supply, known.set(mode, state as SupplyState));
    }
  return states;
}

/** Reports the names in modes that are no port or other source. */
export function checkStates(modes: unknown, nodes: readonly TreeNode[], remarks: Gathered): void {
  const sources = nodes.filter((n) => n.kind === 'supply' && n.states !== undefined).map((n) => n.id);
  for (const [mode, raw] of entries(modes))
    for (const [supply] of entries(isMapping(raw) ? raw['supplies'] : undefined)) {
      if (sources.includes(supply)) continue;
      remarks.problem({
        path: ['modes', mode, 'supplies', supply],
        on: 'key',
        says: `there is no port \`${supply}\` that could be in one state or another`,
        expected: didYouMean(supply, sources, 'the name of a supply that nothing else feeds'),
      });
    }
}

/** Reports the names among dead supplies that are no source of their own. */
export function checkDead(modes: unknown, nodes: readonly TreeNode[], remarks: Gathered): void {
  const sources = nodes.filter((n) => n.kind === 'supply' && n.states !== undefined).map((n) => n.id);
  for (const [mode, raw] of entries(modes))
    for (const [k, name] of (isMapping(raw) && Array.isArray(raw['without']) ? raw['without'] : []).entries()) {
      if (sources.includes(String(name))) continue;
      remarks.problem({
        path: ['modes', mode, 'without', k],
        on: 'value',
        says: `there is no supply \`${String(name)}\` that could be dead`,
        expected: didYouMean(String(name), sources, oneOf(sources)),
      });
    }
}
