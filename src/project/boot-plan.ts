/** The project from a reset until firmware runs. */
import type { NetworkSketch, PinAtBoot } from '../loads/lowering.js';
import type { AccountPlan } from '../loads/plan.js';
import { assemble } from './assemble.js';
import { AT_BOOT, bootOf } from './loose-pins.js';
import type { BootPlan } from './project.js';

export function bootPlan(sketches: readonly NetworkSketch[], accounts: readonly AccountPlan[]): BootPlan {
  const pins = new Map<string, PinAtBoot>();
  for (const { hooks } of sketches)
    for (const { pin } of hooks) for (const each of [pin, ...(pin.joined ?? [])]) pins.set(each.account, bootOf(each));
  return { networks: assemble(sketches, AT_BOOT), accounts: accounts.filter((a) => a.atBoot === true), pins };
}
