/**
 * What is asked of a load only while no firmware drives its pin: whether a pull, or the microampere that a floating pin
 * leaks, moves it. Where a load or driver has an account of its own that proves it off or on, that one is asked.
 */
import type { AccountPlan, LimitPlan, Reading } from './account-plan.js';

/** Below this share of what it takes when it is on a load does next to nothing. Common practice, no source. */
const NEXT_TO_NOTHING = 0.1;
/** From this share on it does its work, more or less. Common practice, no source. */
const AT_WORK = 0.5;
/** Shares of its supply up to which a logic input of unpublished levels reads low, and from which it reads high (rule 8). */
const READS = { low: 0.3, high: 0.7 };

type Path = AccountPlan['path'];

const usual = (value: LimitPlan['value'], stated: string): LimitPlan => ({
  value,
  stated,
  grade: 'practice',
  isFunction: true,
  margin: 'none',
  origin: { document: 'common practice, no source', basis: 'practice' },
});

/** The two questions: does it stay off, does it come on. */
function bothWays(
  id: string,
  circuit: string,
  path: Path,
  quantity: 'current' | 'voltage',
  read: (s: Reading) => number,
  { off, on }: { readonly off: LimitPlan; readonly on?: LimitPlan },
): AccountPlan[] {
  const base = {
    id,
    kind: 'input' as const,
    title: `${circuit} at boot`,
    quantity,
    circuits: [circuit],
    path,
    atBoot: true as const,
    read,
    steps: () => [],
  };
  return [
    { ...base, direction: 'at-most', recipes: ['let-go-worst', 'let-go-best'], limits: [off] },
    ...(on ? [{ ...base, direction: 'at-least' as const, recipes: ['drive-worst'] as const, limits: [on] }] : []),
  ];
}

/** Of a load on a bare pin. @param part what carries its current @param expected amperes that it takes when it is on */
export const bareAtBoot = (circuit: string, path: Path, part: string, expected: number): AccountPlan[] =>
  bothWays(part, circuit, path, 'current', (s) => Math.abs(s.current(part)), {
    off: usual(NEXT_TO_NOTHING * expected, `a tenth of what ${circuit} takes`),
    on: usual(AT_WORK * expected, `half of what ${circuit} takes`),
  });

/** Of a logic input whose levels nobody publishes. @param part its input @param rail what feeds the pin before it */
export const inputAtBoot = (circuit: string, path: Path, part: string, rail: string): AccountPlan[] =>
  bothWays(part, circuit, path, 'voltage', (s) => s.across(part), {
    off: usual((s) => READS.low * s.voltage(rail), '30 % of its supply'),
    on: usual((s) => READS.high * s.voltage(rail), '70 % of its supply'),
  });

/** Of a channel with a logic input. @param low volts up to which it surely reads low */
export const thresholdAtBoot = (circuit: string, path: Path, part: string, low: number): AccountPlan[] =>
  bothWays(part, circuit, path, 'voltage', (s) => Math.abs(s.across(part)), {
    off: usual(low, 'what its input surely reads as low'),
  });

/** Of a channel that amplifies its input current. @param carries amperes that it can carry at the most */
export const channelAtBoot = (
  circuit: string,
  path: Path,
  part: string,
  carries: (s: Reading) => number,
  expected: number,
): AccountPlan[] =>
  bothWays(part, circuit, path, 'current', carries, {
    off: usual(NEXT_TO_NOTHING * expected, `a tenth of what ${circuit} takes`),
  });
