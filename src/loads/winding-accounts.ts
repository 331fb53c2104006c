/** What the windings of a stepper are held to: the current that heats them, and that its chopper can reach. */
import type { Figure } from './figures.js';
import { functionOf } from './limits.js';
import type { AccountPlan, Held, LimitPlan, Reading } from './account-plan.js';
import { reaching } from './terminals.js';

/** @param share of what the chopper is set to that each winding carries while as many do @param stated what it is set to */
export function windingAccounts(
  circuit: string,
  path: AccountPlan['path'],
  part: string,
  { share, stated, rated }: { readonly share: number; readonly stated: Figure; readonly rated: LimitPlan | undefined },
): AccountPlan[] {
  const base = { id: part, kind: 'coil' as const, circuits: [circuit], path, quantity: 'current' as const };
  const amps = (s: Reading): number => s.held(part)?.amps ?? 0;
  return [
    {
      ...base,
      title: `a winding of ${circuit}`,
      direction: 'at-most',
      recipes: ['draw-most', 'draw-least'],
      read: amps,
      books: [{ circuit, part, share: carries(part, 1) }],
      limits: rated ? [rated] : [],
      ...(!rated && {
        missing: {
          figure: 'maximum-current',
          asks: `what current may a winding of ${circuit} carry for ever (its \`maximum-current\`)?`,
        },
      }),
      steps: (s) => phaseSteps(s, part, share),
    },
    {
      ...base,
      title: `current that ${circuit} can reach`,
      direction: 'at-least',
      peaks: true,
      recipes: ['starved', 'flooded'],
      read: (s) => reached(s, part),
      limits: [functionOf(stated, (s) => amps(s) / share, 'function-voltage')],
      steps: (s) => reachedSteps(s, part),
    },
  ];
}

/** What flows in a winding as a multiple of what the supply gives for it. @param share see `windingAccounts` */
export const carries =
  (part: string, share: number) =>
  (s: Reading): number => {
    const given = s.current(part);
    return given > 0 ? (s.held(part)?.amps ?? 0) / share / given : 0;
  };

/** What each winding carries of what the chopper is set to. */
export function phaseSteps(s: Reading, part: string, share: number): ReturnType<AccountPlan['steps']> {
  const amps = s.held(part)?.amps ?? 0;
  return [
    {
      name: 'I_phase',
      says: 'what a winding carries of what its chopper is set to, while as many do',
      formula: 'x * I_set',
      with: { x: [share, ''], I_set: [amps / share, 'A'] },
      gives: [amps, 'A'],
    },
  ];
}

/** Amperes that one winding alone would come to without any chopping. */
function reached(s: Reading, part: string): number {
  const held = s.held(part);
  return held === undefined ? 0 : whole(s, part) / loop(held);
}

const whole = (s: Reading, part: string): number => reaching(s, [{ part }]);
const loop = ({ ohms, bridge }: Held): number => ohms + bridge;

function reachedSteps(s: Reading, part: string): ReturnType<AccountPlan['steps']> {
  const held = s.held(part);
  if (held === undefined) return [];
  return [
    {
      name: 'I_reached',
      says: 'what a winding takes, as warm as it is, with its bridge on all the time',
      formula: 'V / (R_winding + R_bridge)',
      with: { V: [whole(s, part), 'V'], R_winding: [held.ohms, 'Ω'], R_bridge: [held.bridge, 'Ω'] },
      gives: [reached(s, part), 'A'],
    },
  ];
}
