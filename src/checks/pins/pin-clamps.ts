/** A pin whose clamp carries a little all the time works, and is worth knowing of: what pushes it stands above its supply. */
import type { Finding, Judged, WiringRule } from '../finding.js';

/** Less than this, amperes, is the leakage of a junction that does not conduct yet. */
const LITTLE = 1e-6;

function find({ accounts }: Judged): Finding[] {
  return accounts.flatMap(({ account, verdict }): Finding[] =>
    account.kind === 'pin' &&
    account.direction === 'injected' &&
    verdict === 'sound' &&
    (account.draw?.max ?? 0) > LITTLE
      ? [
          {
            rule: 'pin-clamps',
            family: 'pins',
            verdict: 'note',
            about: account.id,
            path: account.path,
            account,
            names: {},
            related: [],
          },
        ]
      : [],
  );
}

export default { name: 'pin-clamps', family: 'pins', find } satisfies WiringRule;
