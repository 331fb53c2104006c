/** What is said of a name that a controller does not have. */
import { didYouMean, oneOf } from '../source/did-you-mean.js';
import type { Path } from '../source/place.js';
import type { Gathered } from './remarks.js';

/** @param what it is a name of: 'pin', 'rail' @param path where it stands, as a key */
export function unknownName(
  { remarks, id }: { readonly remarks: Gathered; readonly id: string },
  what: string,
  name: string,
  known: readonly string[],
  path: Path,
): void {
  remarks.problem({
    path,
    on: 'key',
    says: `\`${id}\` has no ${what} \`${name}\``,
    expected: didYouMean(name, known, oneOf(known)),
  });
}
