/**
 * What a chip turns into heat: in the output stage of each pin its current squared times its resistance, and in the chip itself
 * its own current times its supply voltage. Held against the limits in watts that its data sheet states.
 */
import type { AccountPlan, LimitPlan, Reading, Step } from '../loads/plan.js';
import type { Row } from './chip-limits.js';
import { covers } from './chip-limits.js';
import type { ChipPin, ChipSetting } from './chip-setting.js';
import type { PinAccountPlan } from './project.js';

/** The pins in use and who uses them. */
export interface InUse {
  readonly pins: readonly ChipPin[];
  readonly circuitsOf: (pin: ChipPin) => readonly string[];
  /** What the chip draws itself. */
  readonly own: PinAccountPlan['own'];
}

export function powerAccounts(setting: ChipSetting, rows: readonly Row[], inUse: InUse): AccountPlan[] {
  const { owner, alone } = setting;
  const watts = rows.filter((r) => r.direction === 'power');
  const covered = (row: Row): readonly ChipPin[] => inUse.pins.filter((p) => covers(setting, row, p));
  const each = inUse.pins.flatMap((pin): AccountPlan[] => {
    const limits = watts.filter((r) => r.scope === 'each' && covers(setting, r, pin));
    const narrow = limits.some((r) => r.pins.size > 0) ? limits.filter((r) => r.pins.size > 0) : limits;
    if (narrow.length === 0) return [];
    const title = `pin ${pin.label}${alone ? '' : ` of ${owner}`}, heat`;
    return [account(setting, inUse, { id: pin.account, kind: 'pin', title }, [pin], narrow, false)];
  });
  const sums = watts
    .filter((r) => r.scope !== 'each' && covered(r).length > 0)
    .map((row): AccountPlan => {
      const whole = row.name === 'package';
      const id = `${owner}.${row.name.toLowerCase().replace(/[^a-z0-9]+/g, '-')}`;
      const title = `${row.name.replace('-', ' ')} of ${owner}, heat`;
      const kind = row.scope === 'sum' ? ('group' as const) : ('total' as const);
      return account(setting, inUse, { id, kind, title }, covered(row), [row], whole);
    });
  return [...each, ...sums];
}

function account(
  { rail, path, owner }: ChipSetting,
  { circuitsOf, own }: InUse,
  named: Pick<AccountPlan, 'id' | 'kind' | 'title'>,
  pins: readonly ChipPin[],
  rows: readonly Row[],
  whole: boolean,
): AccountPlan {
  const limits: readonly LimitPlan[] = rows.map((r) => r.limit);
  const chip = whole ? own : [];
  const unknown = whole && own.length === 0;
  const ownHeat = (s: Reading): number => chip.reduce((sum, { part }) => sum + s.current(part) * s.voltage(rail), 0);
  const read = (s: Reading): number => pins.reduce((sum, pin) => sum + pinHeat(s, pin).watts, ownHeat(s));
  return {
    ...named,
    quantity: 'power',
    direction: 'at-most',
    circuits: [...new Set(pins.flatMap(circuitsOf))],
    path,
    recipes: ['draw-most', 'draw-least'],
    read: (s) => (unknown ? undefined : read(s)),
    limits: unknown ? [] : limits,
    ...(unknown && {
      missing: { figure: 'draws', asks: `what does ${owner} draw itself (its \`draws: { active: … }\`)?` },
    }),
    steps: (s) => stepsOf(s, pins, chip, rail, read(s)),
  };
}

/** Heat of one pin with its highest resistance, which is safe: what flows is asked for with its lowest. */
function pinHeat(s: Reading, { account: part }: ChipPin) {
  const amps = s.current(part);
  const member = s.branch(part)?.members.find((m) => m.member.part === part)?.member;
  const ohms = member?.kind !== 'pin' ? 0 : s.typical ? member.ohms.typ : member.ohms.max;
  return { amps, ohms, watts: amps * amps * ohms };
}

function stepsOf(
  s: Reading,
  pins: readonly ChipPin[],
  chip: PinAccountPlan['own'],
  rail: string,
  total: number,
): Step[] {
  const values: Record<string, readonly [number, string]> = {};
  const terms = pins.flatMap((pin, k): string[] => {
    const { amps, ohms, watts } = pinHeat(s, pin);
    if (watts === 0) return [];
    const [i, r] = pins.length === 1 ? ['I', 'R_pin'] : [`I_${k + 1}`, `R_${k + 1}`];
    values[i] = [amps, 'A'];
    values[r] = [ohms, 'Ω'];
    return [`${i}^2 * ${r}`];
  });
  chip.forEach(({ part }) => {
    values['I_chip'] = [s.current(part), 'A'];
    values['V_supply'] = [s.voltage(rail), 'V'];
    terms.push('I_chip * V_supply');
  });
  return [
    {
      name: 'P',
      says: `what ${pins.length === 1 ? 'the pin turns' : 'its pins turn'} into heat at the most${chip.length > 0 ? ', and what it takes itself' : ''}`,
      formula: terms.join(' + ') || '0',
      with: values,
      gives: [total, 'W'],
    },
  ];
}
