/**
 * Every way to feed a relay board: supply jumper, logic side, coil side, grounds. Each is a changed project; none is left
 * out because it looks wrong, for the audit is what says so.
 */
import type { Judgement } from '../checks/judge.js';
import { isMapping } from '../loads/figures.js';
import type { BoardWiring } from '../loads/circuit-plan.js';
import { beforeCables } from '../project/same-node.js';
import { withChanges } from '../remedies/change.js';
import type { Change } from '../remedies/prove.js';
import { rewired } from '../remedies/rewire.js';
import type { CoilSupply } from '../remedies/supply-for.js';
import type { SupplyLead } from './supply-lead.js';
import { leadEntry } from './supply-lead.js';

/** One way to feed a board. */
export interface Arrangement {
  readonly jumper: BoardWiring['jumper'];
  /** Node that feeds the inputs. */
  readonly logic: string;
  /** Node that feeds the coils; undefined stands for a supply that is not there yet. */
  readonly coil: string | undefined;
  readonly grounds: BoardWiring['grounds'];
}

/** What stands for a supply that is not there yet, where it feeds the inputs. */
const NEW_SUPPLY = 'a new supply';

/** All arrangements of a board: the product of its jumper, the rails, all that can feed coils and the grounds. */
export function arrangementsOf(judgement: Judgement, data: unknown, board: BoardWiring): readonly Arrangement[] {
  const rails = judgement.project.nodes.filter((n) => n.kind === 'rail').map((n) => n.id);
  const supplies = Object.keys(isMapping(data) && isMapping(data['supplies']) ? data['supplies'] : {});
  // A board of a project without controllers has only supplies to take its logic from.
  const logics = rails.length > 0 ? rails : supplies;
  const jumpers = board.hasJumper ? (['removed', 'fitted'] as const) : (['removed'] as const);
  const coils = [...rails, ...supplies, undefined];
  // At one terminal whatever feeds the coils feeds the inputs, too.
  if (board.oneTerminal)
    return coils.flatMap((coil) =>
      (['separate', 'joined'] as const).map((grounds) => ({
        ...{ jumper: 'removed' as const, logic: coil ?? NEW_SUPPLY, coil, grounds },
      })),
    );
  return jumpers.flatMap((jumper) =>
    logics.flatMap((logic) =>
      coils.flatMap((coil) => (['separate', 'joined'] as const).map((grounds) => ({ jumper, logic, coil, grounds }))),
    ),
  );
}

/** What is brought in where the coils need a new supply. */
export interface Fresh {
  readonly supply: CoilSupply;
  readonly lead?: SupplyLead;
}

/** The changes that bring an arrangement about. Wires of the file that led to the board follow it. */
export function changesFor(
  { project }: Judgement,
  data: unknown,
  owner: string,
  board: BoardWiring,
  way: Arrangement,
  fresh?: Fresh,
): readonly Change[] {
  const at = ['loads', owner];
  const coil = way.coil ?? fresh?.supply.name;
  const logic = board.oneTerminal ? coil : way.logic;
  const feeds = [...new Set([coil, logic])].filter((node) => node !== undefined);
  return [
    ...(way.coil === undefined ? (fresh?.supply.changes ?? []) : []),
    ...(board.hasJumper ? [{ path: [...at, 'jumper'], value: way.jumper }] : []),
    { path: [...at, 'supply'], value: undefined },
    { path: [...at, 'logic-supply'], value: logic },
    { path: [...at, 'coil-supply'], value: coil },
    { path: [...at, 'grounds'], value: way.grounds },
    ...(fresh?.lead && coil !== undefined
      ? [withLead(data, project, owner, feeds, leadEntry(fresh.lead, coil, owner))]
      : rewired(data, project, owner, feeds)),
  ];
}

/** The wires of the file with a new one to the board; what led to it before from elsewhere is pulled out. */
function withLead(
  data: unknown,
  project: Judgement['project'],
  owner: string,
  feeds: readonly string[],
  lead: Readonly<Record<string, unknown>>,
): Change {
  const moved = rewired(data, project, owner, feeds);
  const gone = new Set(moved.filter((c) => c.path[2] === 'from').map((c) => c.path[1]));
  const changed = withChanges(data, moved);
  const wires: unknown = isMapping(changed) ? changed['wires'] : undefined;
  const kept = Array.isArray(wires) ? wires.filter((_, k) => !gone.has(k)) : [];
  return { path: ['wires'], value: [...kept, lead] };
}

/** A board's wiring with the supplies themselves, where wires of the file lead from them to it. */
export const asFed = ({ project }: Judgement, board: BoardWiring): BoardWiring => ({
  ...board,
  ...(board.logic !== undefined && { logic: beforeCables(project, board.logic) }),
  ...(board.coil !== undefined && { coil: beforeCables(project, board.coil) }),
});

/** Whether a board is fed so now. */
export const isPresent = (board: BoardWiring, way: Arrangement): boolean =>
  way.coil !== undefined &&
  way.jumper === board.jumper &&
  way.grounds === board.grounds &&
  way.logic === board.logic &&
  way.coil === board.coil;
