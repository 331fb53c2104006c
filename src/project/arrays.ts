/** Driver arrays: their figures, where their clamps lead, and whether they are set over control lines. */
import { Figures, isMapping } from '../loads/figures.js';
import type { Path } from '../source/place.js';
import { checkEntry } from '../source/check.js';
import type { ArrayEntry } from './bench.js';
import { reportPart } from './bench.js';
import type { Chip } from './chip.js';
import type { Around } from './around.js';
import { heldOff } from './held-off.js';
import { nodeNamed, nodeNames } from './names.js';
import type { Project } from './project.js';

export function arraysFrom(raw: unknown, around: Around): ReadonlyMap<string, ArrayEntry> {
  const { remarks, catalogue } = around;
  const arrays = new Map<string, ArrayEntry>();
  for (const [id, entry] of Object.entries(isMapping(raw) ? raw : {})) {
    if (!isMapping(entry)) continue;
    const path: Path = ['arrays', id];
    checkEntry('array', entry, path).forEach(remarks.problem);
    const named = entry['part'];
    const profile = typeof named === 'string' ? catalogue.profile(named) : undefined;
    if (typeof named === 'string' && profile?.kind !== 'array') {
      reportPart({ catalogue, remarks }, named, [...path, 'part'], 'array');
      continue;
    }
    const figures = new Figures(id, path, [{ data: entry, path }], remarks).over(profile);
    const common =
      entry['common'] === undefined
        ? undefined
        : nodeNamed(nodeNames(around.tree), around.controllers, String(entry['common']), [...path, 'common']);
    if (common && 'problem' in common) remarks.problem(common.problem);
    arrays.set(id, {
      figures,
      path,
      channels: figures.count('channels') ?? 7,
      ...(common && 'found' in common && { common: common.found }),
    });
  }
  return arrays;
}

/** Arrays that are set over control lines, and whether these hold their channels off at boot. */
export const serialArrays = (
  raw: unknown,
  arrays: ReadonlyMap<string, ArrayEntry>,
  chips: ReadonlyMap<string, Chip>,
  controllers: readonly string[],
): Project['serial'] =>
  new Map(
    [...arrays].flatMap(([id, { figures }]) => {
      const entry = isMapping(raw) ? raw[id] : undefined;
      const control: unknown = isMapping(entry) ? entry['control'] : undefined;
      return figures.flag('serial') ? [[id, heldOff(figures, control, chips, controllers) !== undefined]] : [];
    }),
  );
