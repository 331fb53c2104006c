/** The accounts of a chip's pins in use, of the sums they belong to, and of its totals. */
import type { Grade } from '../loads/account-plan.js';
import { lowerDrive } from './chip-drive.js';
import type { Row } from './chip-limits.js';
import { covers, sumId } from './chip-limits.js';
import { powerAccounts } from './chip-power.js';
import type { ChipPin, ChipSetting } from './chip-setting.js';
import type { PinAccountPlan } from './pin-plan.js';

export function chipAccounts(
  setting: ChipSetting,
  names: ReadonlyMap<string, ChipPin>,
  rows: readonly Row[],
  used: ReadonlyMap<string, ReadonlySet<'source' | 'sink'>>,
  own: PinAccountPlan['own'],
): PinAccountPlan[] {
  const { owner, path } = setting;
  const pins = [...new Set(names.values())].filter((p) => used.has(p.account));
  const single = pins.flatMap((pin) =>
    [...used.get(pin.account)!].map((direction): PinAccountPlan => {
      const each = rows.filter((r) => r.scope === 'each' && r.direction === direction && covers(setting, r, pin));
      // A row that names its pins is narrower than one for all.
      const narrow = (grade: Grade): readonly Row[] => {
        const named = each.filter((r) => r.grade === grade && r.pins.size > 0);
        return named.length > 0 ? named : each.filter((r) => r.grade === grade);
      };
      const limits = (['absolute', 'operating', 'characterised', 'practice'] as const)
        .flatMap(narrow)
        .map((r) => r.limit);
      return {
        id: pin.account,
        kind: 'pin',
        title: `pin ${pin.label}${setting.alone ? '' : ` of ${owner}`}, ${direction}`,
        direction,
        pins: [pin.account],
        own: [],
        path,
        limits,
        ...lowerDrive(setting, pin),
        ...(limits.length === 0 && {
          missing: { figure: 'limits', asks: `what current may one pin of ${owner} ${direction}?` },
        }),
      };
    }),
  );
  const sums = new Map<string, PinAccountPlan>();
  for (const row of rows) {
    if (row.scope === 'each' || row.direction === 'power') continue;
    const members = pins.filter((p) => covers(setting, row, p));
    if (members.length === 0) continue;
    const direction = row.name === 'supply-pins' ? 'source' : row.name === 'ground-pins' ? 'sink' : row.direction;
    const id = sumId(owner, row.name);
    const key = `${id} ${direction}`;
    const known = sums.get(key);
    sums.set(key, {
      id,
      kind: row.scope === 'sum' ? 'group' : 'total',
      title:
        row.scope === 'sum'
          ? `${row.name}${row.listed && row.listed !== row.name ? ` (${row.listed})` : ''}${setting.alone ? '' : ` of ${owner}`}, ${direction}`
          : `${row.name.replace('-', ' ')} of ${owner}, ${direction}`,
      direction,
      pins: members.map((p) => p.account),
      own: row.name === 'supply-pins' || row.name === 'ground-pins' ? own : [],
      path,
      limits: [...(known?.limits ?? []), row.limit],
    });
  }
  return [...single, ...sums.values(), ...powerAccounts(setting, rows, pins, own)];
}
