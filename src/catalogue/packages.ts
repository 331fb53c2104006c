/** The packages that a chip's limits tell apart. */
import { field, type Profile } from './profile.js';

export function packagesOf(chip: Profile): readonly string[] {
  const limits = Array.isArray(chip['limits']) ? chip['limits'] : [];
  const named = limits.map((row: unknown) => field(field(row, 'when'), 'package'));
  return [...new Set(named.filter((name): name is string => typeof name === 'string'))];
}
