/** What a load needs at its own terminals to do its job: a least current, a window of voltages, a least voltage to start. */
import { closed } from '../quantity/quantity.js';
import type { Figures } from './figures.js';
import { functionOf } from './limits.js';
import type { AccountPlan, Reading, Step } from './account-plan.js';
import type { Member } from './branch-plan.js';

type Base = Pick<AccountPlan, 'kind' | 'circuits' | 'path'>;

/**
 * The accounts of `needs` and `supply-voltage`, for any load with two ends.
 *
 * @param members the load itself, without its series resistor and its driver @param part the one that carries its current
 */
export function terminalAccounts(
  figures: Figures,
  circuit: string,
  path: AccountPlan['path'],
  members: readonly Member[],
  part: string,
): AccountPlan[] {
  const base: Base = { kind: 'input', circuits: [circuit], path };
  const about = { id: circuit, title: `supply voltage of ${circuit}` };
  return [
    ...neededCurrent(figures, base, circuit, part),
    ...supplyWindow(figures, 'supply-voltage', { ...base, ...about }, members),
  ];
}

function neededCurrent(figures: Figures, base: Base, circuit: string, part: string): AccountPlan[] {
  const figure = figures.figure('needs', 'current');
  if (figure === undefined) return [];
  const { typ, max } = closed(figure.quantity);
  return [
    {
      ...base,
      id: circuit,
      title: `current of ${circuit}, for its job`,
      quantity: 'current',
      direction: 'at-least',
      recipes: ['draw-least', 'draw-most'],
      read: (s) => s.current(part),
      limits: [functionOf(figure, (s) => (s.typical ? typ : max), 'none')],
      books: [{ circuit, part }],
      steps: (s) => [
        {
          name: 'I',
          says: 'what it gets',
          formula: 'I_load',
          with: { I_load: [s.current(part), 'A'] },
          gives: [s.current(part), 'A'],
        },
      ],
    },
  ];
}

/** The window of supplies that something works on. @param key the figure @param members what the supply has to reach */
export function supplyWindow(
  figures: Figures,
  key: 'supply-voltage' | 'logic-voltage',
  base: Base & Pick<AccountPlan, 'id' | 'title'>,
  members: readonly Member[],
): AccountPlan[] {
  const figure = figures.figure(key, 'voltage');
  if (figure === undefined) return [];
  const { min, max, exact } = figure.quantity;
  if (exact) {
    figures.problem(
      key,
      `\`${key}\` is the window in which \`${figures.about}\` works, and this one has no width`,
      `\`${key}: 4.5 to 5.5 V\``,
    );
    return [];
  }
  const voltage = {
    ...base,
    quantity: 'voltage' as const,
    read: (s: Reading): number => reaching(s, members),
    steps: (s: Reading): readonly Step[] => voltageSteps(s, members),
  };
  return [
    ...(min === undefined
      ? []
      : [
          {
            ...voltage,
            direction: 'at-least' as const,
            recipes: ['starved', 'flooded'] as const,
            peaks: true as const,
            limits: [functionOf(figure, min, 'window')],
          },
        ]),
    ...(max === undefined
      ? []
      : [
          {
            ...voltage,
            direction: 'at-most' as const,
            recipes: ['flooded', 'starved'] as const,
            limits: [functionOf(figure, max, 'window')],
          },
        ]),
  ];
}

/** The least voltage at which a motor starts: it has to be there while the motor stalls. */
export function startingVoltage(
  figures: Figures,
  circuit: string,
  path: AccountPlan['path'],
  member: Member,
): AccountPlan[] {
  const figure = figures.figure('minimum-voltage', 'voltage');
  if (figure === undefined) return [];
  const { typ, max } = closed(figure.quantity);
  return [
    {
      kind: 'input',
      circuits: [circuit],
      path,
      id: member.part,
      title: `motor ${circuit}, voltage to start`,
      quantity: 'voltage',
      direction: 'at-least',
      recipes: ['starved', 'flooded'],
      peaks: true,
      read: (s) => reaching(s, [member]),
      limits: [functionOf(figure, (s) => (s.typical ? typ : max), 'function-voltage')],
      steps: (s) => voltageSteps(s, [member]),
    },
  ];
}

const acrossAll = (s: Reading, members: readonly Pick<Member, 'part'>[]): number =>
  Math.max(
    members.reduce((volts, m) => volts + s.across(m.part), 0),
    0,
  );

/** What reaches them, capacitors on their supply counted. */
export const reaching = (s: Reading, members: readonly Pick<Member, 'part'>[]): number =>
  Math.max(acrossAll(s, members) + heldUp(s, members), 0);

/** Volts by which capacitors hold up what feeds them. */
function heldUp(s: Reading, [first]: readonly Pick<Member, 'part'>[]): number {
  const feed = s.branch(first!.part)?.from.node;
  return feed === undefined ? 0 : s.heldAt(feed) - s.voltage(feed);
}

/** The supply's voltage less what is lost on the way. */
function voltageSteps(s: Reading, members: readonly Member[]): Step[] {
  const branch = s.branch(members[0]!.part);
  const volts = reaching(s, members);
  if (branch === undefined) return [];
  const feed = branch.from.volts - branch.to.volts + heldUp(s, members);
  return [
    {
      name: 'V_load',
      says: 'what reaches it, less what is lost on the way',
      formula: 'V_supply - V_losses',
      with: { V_supply: [feed, 'V'], V_losses: [branch.from.volts - branch.to.volts - acrossAll(s, members), 'V'] },
      gives: [volts, 'V'],
    },
  ];
}
