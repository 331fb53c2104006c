/**
 * Coils that load a controller's port, fuse, regulator or rail get a supply of their own: the boards' supply jumpers are
 * removed, and the steps say in the boards' own labels which terminals and grounds join and which do not.
 */
import { isMapping } from '../loads/figures.js';
import type { CircuitPlan } from '../loads/circuit-plan.js';
import { beforeCables } from '../project/same-node.js';
import type { Case, Way } from './cures.js';
import type { Change, Cure } from './prove.js';
import { rewired } from './rewire.js';
import type { CoilSupply } from './supply-for.js';
import { suppliesFor } from './supply-for.js';

/** Findings that coils on a controller's supply can be the cause of. */
const RULES = new Set([
  'supply-current',
  'fuse-holds',
  'regulator-heat',
  'regulator-current',
  'rail-current',
  'inlet-current',
  'series-current',
  'coil-pull-in',
  'coil-voltage',
  'coil-heat',
  'jumper-joins-supplies',
  'isolation-defeated',
]);

const OF_COILS = new Set(['coil-pull-in', 'coil-voltage', 'coil-heat']);

/** A load whose coils move, with its circuits. */
interface Moving {
  readonly owner: string;
  readonly circuits: readonly CircuitPlan[];
  readonly isBoard: boolean;
}

export const feedCoilsApart: Way = (of) => {
  const { finding, judgement, data } = of;
  if (!RULES.has(finding.rule) || finding.verdict === 'note') return [];
  const moving = loadsToMove(of);
  const volts = moving[0]?.circuits[0]?.wiring.figures?.coilVolts;
  if (moving.length === 0 || volts === undefined) return [];
  // A supply of one voltage cannot feed coils of another.
  if (moving.some((m) => m.circuits.some((c) => c.wiring.figures?.coilVolts !== volts))) return [];
  const amps = currentOf(of, moving);
  return suppliesFor(data, judgement, volts, amps).map((supply) =>
    cure(of, moving, supply, groundIsShared(of, supply)),
  );
};

/** The coil loads fed from a controller's rail that the finding is about: its contributors, or its own board. */
function loadsToMove({ finding, judgement, data }: Case): Moving[] {
  const { project } = judgement;
  const loads = isMapping(data) && isMapping(data['loads']) ? data['loads'] : {};
  // Heat is no sum of currents: what flows through the same part tells who causes it.
  const flows = judgement.accounts.find((j) => j.account.id === finding.account?.id && j.account.entries.length > 0);
  const concerned = new Set((flows?.account ?? finding.account)?.entries.map((e) => e.circuit) ?? []);
  const owners = [...new Set(project.circuits.map((c) => c.owner))];
  return owners.flatMap((owner): Moving[] => {
    const circuits = project.circuits.filter(
      (c) => c.owner === owner && c.wiring.coil !== undefined && c.wiring.bare === undefined,
    );
    const first = circuits[0];
    if (first === undefined || !isMapping(loads[owner])) return [];
    const isBoard = first.type === 'relay-board';
    if (!isBoard && first.type !== 'coil') return [];
    if (finding.rule === 'jumper-joins-supplies' || finding.rule === 'isolation-defeated')
      return finding.about === owner ? [{ owner, circuits, isBoard }] : [];
    const from = first.wiring.supply && beforeCables(project, first.wiring.supply);
    const onController = from?.includes('.') === true;
    // Coils that get too little or too much where they are want a supply of their own voltage, wherever they hang.
    const own = OF_COILS.has(finding.rule);
    const meant = circuits.some((c) => (own ? c.id === finding.about : concerned.has(c.id)));
    return (onController || own) && meant ? [{ owner, circuits, isBoard }] : [];
  });
}

/** Worst-case current of the coils that move, all on: what each draws at most, from its own accounts. */
function currentOf({ judgement }: Case, moving: readonly Moving[]): number {
  const most = (c: CircuitPlan): number =>
    Math.max(
      0,
      ...judgement.accounts
        .filter(
          (j) =>
            j.account.id === `${c.id}.driver` && j.account.quantity === 'current' && j.account.direction === 'at-most',
        )
        .map((j) => j.account.draw?.max ?? 0),
    );
  // Base currents of boards come on top, about a twentieth (common practice, no source).
  return 1.1 * moving.flatMap((m) => m.circuits).reduce((sum, c) => sum + most(c), 0);
}

/** A supply that already feeds something without a coupler has its ground on the controller's. */
const groundIsShared = ({ judgement: { project } }: Case, supply: CoilSupply): boolean =>
  project.circuits.some(
    ({ wiring: { by, supply: from, board } }) =>
      from === supply.name && (by === 'driver' || by === 'array' || (board !== undefined && board.coupling !== 'opto')),
  ) ||
  project.networks.some((n) =>
    n.on.some((b) => b.pin !== undefined && (b.from === supply.name || b.to === supply.name)),
  );

function cure(
  { judgement: { project }, data }: Case,
  moving: readonly Moving[],
  supply: CoilSupply,
  shared: boolean,
): Cure {
  const changes: Change[] = [...supply.changes];
  const steps: string[] = [];
  for (const { owner, circuits, isBoard } of moving) {
    const at = ['loads', owner];
    const board = circuits[0]!.wiring.board;
    if (!isBoard || board === undefined) {
      changes.push({ path: [...at, 'supply'], value: supply.name }, ...rewired(data, project, owner, [supply.name]));
      steps.push(
        `Take the plus of ${owner} off ${beforeCables(project, circuits[0]!.wiring.supply!)} and put it on the plus of ${supply.name}${circuits[0]!.wiring.by === 'nothing' ? '' : '; its driver stays as it is'}.`,
      );
      if (circuits[0]!.wiring.by !== 'nothing')
        steps.push(`Join the ground of ${supply.name} and that of the controller.`);
      continue;
    }
    const fed = board.logic ?? board.coil ?? circuits[0]!.wiring.supply;
    const logic = fed && beforeCables(project, fed);
    const { terminals: t } = board;
    if (board.oneTerminal) {
      changes.push(
        { path: [...at, 'supply'], value: supply.name },
        { path: [...at, 'logic-supply'], value: undefined },
        { path: [...at, 'coil-supply'], value: undefined },
        { path: [...at, 'grounds'], value: 'joined' },
        ...rewired(data, project, owner, [supply.name]),
      );
      steps.push(
        `${owner}: put the plus of ${supply.name} on ${t['coil-supply']}, which feeds its inputs, too, and its minus on ${t['ground']}.`,
        `${owner}: join the ground of ${supply.name} and that of the controller.`,
      );
      continue;
    }
    const apart = board.coupling === 'opto' && !shared;
    changes.push(
      { path: [...at, 'supply'], value: undefined },
      { path: [...at, 'logic-supply'], value: logic },
      { path: [...at, 'coil-supply'], value: supply.name },
      ...(board.hasJumper ? [{ path: [...at, 'jumper'], value: 'removed' }] : []),
      { path: [...at, 'grounds'], value: apart ? 'separate' : 'joined' },
      ...rewired(data, project, owner, [supply.name, ...(logic === undefined ? [] : [logic])]),
    );
    if (board.hasJumper) steps.push(`${owner}: take the jumper off (${t['jumper']}).`);
    steps.push(`${owner}: put the plus of ${supply.name} on ${t['coil-supply']} and its minus on ${t['ground']}.`);
    if (apart)
      steps.push(
        `${owner}: leave ${t['logic-supply']} on ${logic}. Do not join the ground of ${supply.name} and that of the controller: the couplers need none, and so they isolate.`,
      );
    else if (board.coupling === 'opto')
      steps.push(
        `${owner}: leave ${t['logic-supply']} on ${logic}. The ground of ${supply.name} is joined with the controller's already, for its other loads, so that the couplers isolate nothing.`,
      );
    else
      steps.push(
        `${owner}: join the ground of ${supply.name} and that of the controller, or its inputs have no way back.`,
      );
  }
  const names = moving.map((m) => m.owner);
  const several = names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${names.at(-1)}` : names[0]!;
  const boards = moving.some((m) => m.isBoard);
  return {
    title: `Feed the coils of ${several} from ${supply.isNew ? `a supply of their own (${supply.words})` : supply.name}${boards ? ', jumper removed' : ''}`,
    changes,
    parts: supply.isNew ? [`a supply of ${supply.words}`] : [],
    steps: [...new Set(steps)],
    watch: [supply.name, ...moving.flatMap((m) => m.circuits.slice(0, 1).map((c) => `${c.id}.coil`))],
  };
}
