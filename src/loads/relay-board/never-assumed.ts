/** What is never assumed of a board: the level that switches it on, and whether an indicator sits in series with the coupler. */
import type { Figures } from '../figures.js';
import type { AccountPlan } from '../plan.js';
import type { Board } from './board.js';

/** What the file leaves open of that, as an unproven account each. @param circuit the board's first channel */
export const neverAssumed = (board: Board, inside: Figures, circuit: string): AccountPlan[] =>
  leftOpen(board, inside).map((missing) => unproven(board.input.id, circuit, board.input.path, missing));

function leftOpen(board: Board, inside: Figures): NonNullable<AccountPlan['missing']>[] {
  const { id } = board.input;
  return [
    ...(inside.word('active') === undefined
      ? [{ figure: 'input.active', asks: `does a low or a high input switch ${id} on (its \`input: { active: … }\`)?` }]
      : []),
    ...(board.coupling === 'opto' && inside.word('indicator') === undefined
      ? [
          {
            figure: 'input.indicator',
            asks: `does an indicator sit in series with the couplers of ${id} (its \`input: { indicator: none | in-series | parallel | across-coil }\`)?`,
          },
        ]
      : []),
  ];
}

const unproven = (
  id: string,
  circuit: string,
  path: readonly (string | number)[],
  missing: NonNullable<AccountPlan['missing']>,
): AccountPlan => ({
  id: `${id}.input`,
  kind: 'input',
  title: `inputs of ${id}, ${missing.figure}`,
  quantity: 'voltage',
  direction: missing.figure === 'input.active' ? 'at-least' : 'at-most',
  circuits: [circuit],
  path,
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing,
  steps: () => [],
});
