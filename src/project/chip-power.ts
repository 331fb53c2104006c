/** The limits in watts that a chip's data sheet states: of one pin, of some together, of the whole chip. */
import type { Row } from './chip-limits.js';
import { covers } from './chip-limits.js';
import type { ChipPin, ChipSetting } from './chip-setting.js';
import type { PinAccountPlan } from './pin-plan.js';

/** @param pins those in use @param own what the chip draws itself */
export function powerAccounts(
  setting: ChipSetting,
  rows: readonly Row[],
  pins: readonly ChipPin[],
  own: PinAccountPlan['own'],
): PinAccountPlan[] {
  const { owner, alone } = setting;
  const watts = rows.filter((r) => r.direction === 'power');
  const each = pins.flatMap((pin): PinAccountPlan[] => {
    const limits = watts.filter((r) => r.scope === 'each' && covers(setting, r, pin));
    const narrow = limits.some((r) => r.pins.size > 0) ? limits.filter((r) => r.pins.size > 0) : limits;
    if (narrow.length === 0) return [];
    const title = `pin ${pin.label}${alone ? '' : ` of ${owner}`}, heat`;
    return [plan(setting, { id: pin.account, kind: 'pin', title }, [pin], narrow)];
  });
  const sums = watts.flatMap((row): PinAccountPlan[] => {
    const members = pins.filter((p) => covers(setting, row, p));
    if (row.scope === 'each' || members.length === 0) return [];
    const named = {
      id: `${owner}.${row.name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`,
      kind: row.scope === 'sum' ? ('group' as const) : ('total' as const),
      title: `${row.name.replace('-', ' ')} of ${owner}, heat`,
    };
    if (row.name !== 'package') return [plan(setting, named, members, [row])];
    if (own.length > 0) return [{ ...plan(setting, named, members, [row]), own }];
    const asks = `what does ${owner} draw itself (its \`draws: { active: … }\`)?`;
    return [{ ...plan(setting, named, members, []), missing: { figure: 'draws', asks } }];
  });
  return [...each, ...sums];
}

const plan = (
  { rail, path }: ChipSetting,
  named: Pick<PinAccountPlan, 'id' | 'kind' | 'title'>,
  pins: readonly ChipPin[],
  rows: readonly Row[],
): PinAccountPlan => ({
  ...named,
  direction: 'at-most',
  pins: pins.map((p) => p.account),
  own: [],
  path,
  limits: rows.map((r) => r.limit),
  heat: { rail },
});
