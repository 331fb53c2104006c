/**
 * What the file format defines and this version does not compute yet. None of it may be accepted and ignored: an audit
 * that leaves out a contact, a wire or a pull-up would be a wrong audit. Take a row out when its law is in.
 *
 * A row's name is the sort of entry, then the way inside it: `load`, `load:coil`, `load/series`, `controller/pins/*`.
 */
const laterKeys: Readonly<Record<string, readonly string[]>> = {};

const laterValues: Readonly<Record<string, readonly string[]>> = {
  'load/output/type': ['h-bridge', 'gate-driver'],
};

const advice = 'take it out to have the rest audited';

/** @param scopes names of rows, the nearest first @returns what to say of a key, or undefined when it is not one of these */
export function laterKey(scopes: readonly string[], key: string): { says: string; expected: string } | undefined {
  if (!scopes.some((scope) => laterKeys[scope]?.includes(key))) return undefined;
  return {
    says: `\`${key}\` is part of the format, but this version does not compute it yet`,
    expected: advice,
  };
}

/** The same for a value: `type: servo`. */
export function laterValue(scopes: readonly string[], value: unknown): { says: string; expected: string } | undefined {
  if (typeof value !== 'string' || !scopes.some((scope) => laterValues[scope]?.includes(value))) return undefined;
  return { says: `\`${value}\` is part of the format, but this version does not compute it yet`, expected: advice };
}

/** Values that a spelling may be near to, though they are not computed yet. */
export const laterSpellings = (scopes: readonly string[]): readonly string[] =>
  scopes.flatMap((scope) => laterValues[scope] ?? []);
