/** Beyond a drive setting that was chosen below the highest nothing breaks, but the level is no longer what its row promises. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project }, accounts }: Judged): Finding[] {
  return project.pinAccounts.flatMap(({ id, direction, drive }): Finding[] => {
    if (drive === undefined) return [];
    const account = accounts.find(({ account: a }) => a.id === id && a.direction === direction)?.account;
    if (account?.draw === undefined || account.draw.max <= drive.amps) return [];
    return [
      {
        rule: 'pin-drive',
        family: 'pins',
        verdict: 'note',
        about: id,
        path: project.uses.find((u) => u.pin === id)?.path ?? account.path,
        account,
        names: { drive: drive.stated },
        related: [],
      },
    ];
  });
}

export default { name: 'pin-drive', family: 'pins', find } satisfies WiringRule;
