/** The project from a reset until firmware runs. */
import type { NetworkSketch, PinAtBoot } from '../loads/lowering.js';
import type { AccountPlan } from '../loads/account-plan.js';
import { assemble, pinOf } from './assemble.js';
import { AT_BOOT, bootOf, strappedTo } from './loose-pins.js';
import type { BootPlan } from './project.js';

/** @param straps the level that each strapping pin has to have, by account */
export function bootPlan(
  sketches: readonly NetworkSketch[],
  accounts: readonly AccountPlan[],
  straps: ReadonlyMap<string, 'high' | 'low'>,
): BootPlan {
  const strapped = assemble(sketches, strappedTo(straps)).filter((n) =>
    n.inner.some((node) => straps.has(pinOf(node))),
  );
  const pins = new Map<string, PinAtBoot>();
  for (const { hooks } of sketches)
    for (const { pin } of hooks) for (const each of [pin, ...(pin.joined ?? [])]) pins.set(each.account, bootOf(each));
  return {
    strapped,
    networks: assemble(sketches, AT_BOOT),
    accounts: accounts.filter((a) => a.atBoot === true),
    pins,
  };
}
