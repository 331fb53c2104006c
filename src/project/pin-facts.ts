/** What rules and cures have to know of a chip's pins: what they are good for, how they start, where their straps stand. */
import type { InputPin } from '../loads/lines/line.js';
import type { Chip } from './chip.js';
import type { ChipPin, Strap } from './chip-setting.js';
import type { PinFact, StrapPlan } from './pin-plan.js';
import type { Project } from './project.js';
import { carriesAnything } from '../loads/branch-plan.js';

/** A pin as one that takes what is pushed in, by its account. */
export function inputNamed(chips: ReadonlyMap<string, Chip>, account: string): InputPin | undefined {
  for (const chip of chips.values())
    for (const pin of chip.pins.values()) if (pin.account === account) return chip.input(pin);
  return undefined;
}

/** Shares of its supply up to which an input of unpublished levels reads low, and from which it reads high (rule 8 of the format). */
const USUAL_LEVELS = { low: 0.3, high: 0.7 };

function strapPlan(chip: Chip, pin: ChipPin, { level, says }: Strap): StrapPlan {
  const { thresholds, pulls, rail } = chip.input(pin);
  const side = level === 'high' ? 'rail' : 'ground';
  return {
    level,
    rail,
    reads: thresholds ? thresholds[level].volts : (supply) => USUAL_LEVELS[level] * supply,
    held:
      chip.bootState(pin) === (level === 'high' ? 'pulled-up' : 'pulled-down') ||
      pulls.some((p) => !p.inside && p.to === side),
    ...(says !== undefined && { says }),
  };
}

/** The pins of a chip that a builder can reach. */
export const pinFacts = (chip: Chip, inUse: ReadonlySet<string>): PinFact[] =>
  [...new Set(chip.pins.values())]
    .filter((pin) => pin.reachable)
    .map((pin) => ({
      id: pin.account,
      label: pin.told,
      owner: chip.owner,
      reserved: pin.reserved !== undefined,
      inputOnly: pin.inputOnly,
      sums: chip.sumsOf(pin),
      rail: chip.rail,
      boot: chip.bootState(pin),
      ...(inUse.has(pin.account) && fittedAt(chip, pin)),
      ...(pin.strap && { strap: strapPlan(chip, pin, pin.strap) }),
    }));

function fittedAt(chip: Chip, pin: ChipPin): Pick<PinFact, 'fitted'> {
  const ohms = chip.fitted(pin).map((p) => p.ohms.max);
  return ohms.length === 0 ? {} : { fitted: Math.min(...ohms) };
}

/** Each pin in use and the directions its current can take. */
export function usedPins(networks: Project['networks']): ReadonlyMap<string, ReadonlySet<'source' | 'sink'>> {
  const used = new Map<string, Set<'source' | 'sink'>>();
  for (const network of networks)
    for (const plans of [network.on, network.off])
      for (const branch of plans) {
        if (branch.pin === undefined || !carriesAnything(branch, plans)) continue;
        const directions = used.get(branch.pin.pin) ?? new Set();
        directions.add(branch.pin.level === 'high' ? 'source' : 'sink');
        used.set(branch.pin.pin, directions);
      }
  return used;
}
