/** What stands between a supply and what feeds it: said by its `type`, or by a `part` of the catalogue. */
import type { Catalogue } from '../catalogue/catalogue.js';
import type { Profile } from '../catalogue/profile.js';
import { didYouMean } from '../source/did-you-mean.js';
import type { Path } from '../source/place.js';
import type { Gathered } from './remarks.js';

export const DERIVED_TYPES = [
  'linear-regulator',
  'switching-regulator',
  'diode',
  'fuse',
  'limiter',
  'switch',
  'divider',
] as const;

export type DerivedType = (typeof DERIVED_TYPES)[number];

type Raw = Readonly<Record<string, unknown>>;

export const isDerivedType = (type: unknown): type is DerivedType => DERIVED_TYPES.some((known) => known === type);

/** The catalogue's entry of a supply: the source that its `type` names, or the part that stands before it. */
export function supplyProfile(catalogue: Catalogue, raw: Raw): Profile | undefined {
  const named = raw['part'] ?? raw['type'];
  return typeof named === 'string' ? catalogue.profile(named) : undefined;
}

/** What a part is between two supplies; undefined of one that cannot stand there. A clamp's diode is a diode here, too. */
export function typeOfPart(profile: Profile | undefined): DerivedType | undefined {
  if (profile?.kind === 'supply-part' && isDerivedType(profile.type)) return profile.type;
  return profile?.kind === 'clamp' && (profile.type === 'diode' || profile.type === 'schottky') ? 'diode' : undefined;
}

/** All that may stand between two supplies. */
const partIds = (catalogue: Catalogue): readonly string[] =>
  [...catalogue.ids('supply-part'), ...catalogue.ids('clamp')].filter((id) => typeOfPart(catalogue.profile(id)));

/**
 * What stands between a supply and what feeds it, and the catalogue's figures of it; several sources alone are joined by
 * diodes.
 */
export function betweenOf(
  raw: Raw,
  catalogue: Catalogue,
  remarks: Gathered,
  path: Path,
): { readonly type?: DerivedType; readonly profile?: Profile } {
  const { type, part } = raw;
  if (typeof part !== 'string') {
    if (isDerivedType(type)) return { type };
    if (type === undefined && Array.isArray(raw['from'])) return { type: 'diode' };
    remarks.problem(untold(type, catalogue, path));
    return {};
  }
  const profile = catalogue.profile(part);
  const known = typeOfPart(profile);
  if (known === undefined) {
    const others = 'a regulator, fuse or diode of the catalogue';
    remarks.problem({
      path: [...path, 'part'],
      on: 'value',
      says: profile
        ? `\`${part}\` is a ${profile.type ?? profile.kind}, which does not stand between two supplies`
        : `no \`${part}\` is in the catalogue`,
      expected: profile ? others : didYouMean(part, partIds(catalogue), others),
    });
    return {};
  }
  if (type !== undefined && type !== known)
    remarks.problem({
      path: [...path, 'type'],
      on: 'value',
      says: `\`${part}\` is a ${known}, and not a ${String(type)}`,
      expected: `no \`type\`, or \`${known}\``,
    });
  return { type: known, profile: profile! };
}

function untold(type: unknown, catalogue: Catalogue, path: Path) {
  if (type === undefined)
    return {
      path,
      on: 'key' as const,
      says: 'nothing says what stands between it and what feeds it',
      expected: `\`type:\` with one of ${DERIVED_TYPES.join(', ')}, or a \`part:\` of the catalogue`,
    };
  const name = String(type);
  const isPart = typeOfPart(catalogue.profile(name)) !== undefined;
  return {
    path: [...path, 'type'],
    on: 'value' as const,
    says: isPart ? `\`${name}\` is a part, not a type` : `\`${name}\` does not stand between two supplies`,
    expected: isPart
      ? `\`part: ${name}\``
      : didYouMean(name, DERIVED_TYPES, `\`type:\` with one of ${DERIVED_TYPES.join(', ')}`),
  };
}
