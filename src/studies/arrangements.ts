/**
 * Every way to feed a relay board: supply jumper, logic side, coil side, grounds. Each is a changed project; none is left
 * out because it looks wrong, for the audit is what says so.
 */
import type { Judgement } from '../checks/judge.js';
import { isMapping } from '../loads/figures.js';
import type { BoardWiring } from '../loads/plan.js';
import type { Change } from '../remedies/prove.js';
import type { CoilSupply } from '../remedies/supply-for.js';

/** One way to feed a board. */
export interface Arrangement {
  readonly jumper: BoardWiring['jumper'];
  /** Node that feeds the inputs. */
  readonly logic: string;
  /** Node that feeds the coils; undefined stands for a supply that is not there yet. */
  readonly coil: string | undefined;
  readonly grounds: BoardWiring['grounds'];
}

/** All arrangements of a board: the product of its jumper, the rails, all that can feed coils and the grounds. */
export function arrangementsOf(judgement: Judgement, data: unknown, board: BoardWiring): readonly Arrangement[] {
  const rails = judgement.project.nodes.filter((n) => n.kind === 'rail').map((n) => n.id);
  const supplies = Object.keys(isMapping(data) && isMapping(data['supplies']) ? data['supplies'] : {});
  // A board of a project without controllers has only supplies to take its logic from.
  const logics = rails.length > 0 ? rails : supplies;
  const jumpers = board.hasJumper ? (['removed', 'fitted'] as const) : (['removed'] as const);
  const coils = [...rails, ...supplies, undefined];
  return jumpers.flatMap((jumper) =>
    logics.flatMap((logic) =>
      coils.flatMap((coil) => (['separate', 'joined'] as const).map((grounds) => ({ jumper, logic, coil, grounds }))),
    ),
  );
}

/** The changes that bring an arrangement about. @param fresh the supply to bring in where the coils need a new one */
export function changesFor(owner: string, board: BoardWiring, way: Arrangement, fresh?: CoilSupply): readonly Change[] {
  const at = ['loads', owner];
  const coil = way.coil ?? fresh?.name;
  return [
    ...(way.coil === undefined ? (fresh?.changes ?? []) : []),
    ...(board.hasJumper ? [{ path: [...at, 'jumper'], value: way.jumper }] : []),
    { path: [...at, 'supply'], value: undefined },
    { path: [...at, 'logic-supply'], value: way.logic },
    { path: [...at, 'coil-supply'], value: coil },
    { path: [...at, 'grounds'], value: way.grounds },
  ];
}

/** Whether a board is fed so now. */
export const isPresent = (board: BoardWiring, way: Arrangement): boolean =>
  way.coil !== undefined &&
  way.jumper === board.jumper &&
  way.grounds === board.grounds &&
  way.logic === board.logic &&
  way.coil === board.coil;
