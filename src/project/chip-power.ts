/** The limits in watts that a chip's data sheet states: of one pin, of some together, of the whole chip. */
import type { Row } from './chip-limits.js';
import { covers, sumId } from './chip-limits.js';
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
  const several = watts.filter((r) => r.scope !== 'each');
  const sums = [...new Set(several.map((r) => r.name))].flatMap((name): PinAccountPlan[] => {
    // One package or another: where nobody says which it is held to the limits of all.
    const limits = several.filter((r) => r.name === name);
    const row = limits[0]!;
    const members = pins.filter((p) => covers(setting, row, p));
    if (members.length === 0) return [];
    const named = {
      id: sumId(owner, name),
      kind: row.scope === 'sum' ? ('group' as const) : ('total' as const),
      title: `${name.replace('-', ' ')} of ${owner}, heat`,
    };
    if (name !== 'package') return [plan(setting, named, members, limits)];
    if (own.length > 0) return [{ ...plan(setting, named, members, limits), own }];
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
