/** The schema check of a catalogue profile: complete documents, known keys, a source beside every figure. */
import { explain } from './explain.js';
import { known as load } from './generated/profile-validators.js';
import type { Problem } from './place.js';

/** Holds a profile's data against the schema of its kind. Empty when nothing is wrong. */
export function checkProfile(data: unknown): Problem[] {
  const { kind, type } = (typeof data === 'object' && data !== null ? data : {}) as { kind?: unknown; type?: unknown };
  const known = load();
  const word = (of: unknown): string => (typeof of === 'string' ? of : '');
  const own = `profile-${word(kind)}`;
  const name = [`${own}-${word(type)}`, own].find((each) => Object.hasOwn(known.validators, each)) ?? 'frame';
  const validator = known.validators[name]!;
  const subject = { sort: 'profile', data, path: [], known, ...(typeof type === 'string' ? { type } : {}) };
  return validator(data) ? [] : explain(validator.errors ?? [], subject);
}
