/** What is never assumed of a board: the level that switches it on, and whether an indicator sits in series with the coupler. */
import type { OpenQuestion } from '../lowering.js';
import type { AccountPlan } from '../account-plan.js';
import type { Board } from './board.js';

interface Left {
  readonly question: OpenQuestion;
  readonly asks: string;
}

/** What the file leaves open of that: the questions, and an unproven account each. @param circuit the board's first channel */
export function neverAssumed(
  board: Board,
  circuit: string,
): { readonly open: readonly OpenQuestion[]; readonly accounts: readonly AccountPlan[] } {
  const left = leftOpen(board);
  return { open: left.map((l) => l.question), accounts: left.map((l) => unproven(board, circuit, l)) };
}

function leftOpen(board: Board): Left[] {
  const { input, inside, coupling } = board;
  const about = input.id;
  const isOpen = (key: string): boolean =>
    inside.word(key) === undefined && input.bench.answer(about, `input.${key}`) === undefined;
  return [
    ...(isOpen('active') && !tellsItself(board)
      ? [
          {
            question: {
              about,
              figure: 'input.active',
              answers: [
                { value: 'low', says: `a low input switches ${about} on`, briefly: 'a low one does' },
                { value: 'high', says: `a high input switches ${about} on`, briefly: 'a high one does' },
              ],
            },
            asks: `does a low or a high input switch ${about} on (its \`input: { active: … }\`)?`,
          },
        ]
      : []),
    ...(coupling === 'opto' && isOpen('indicator')
      ? [
          {
            question: {
              about,
              figure: 'input.indicator',
              answers: [
                {
                  value: 'none',
                  says: `no indicator sits in series with the couplers of ${about}`,
                  briefly: 'none does',
                },
                {
                  value: 'in-series',
                  says: `an indicator sits in series with the couplers of ${about}`,
                  briefly: 'one does',
                },
              ],
            },
            asks: `does an indicator sit in series with the couplers of ${about} (its \`input: { indicator: none | in-series | parallel | across-coil }\`)?`,
          },
        ]
      : []),
  ];
}

const unproven = ({ input }: Board, circuit: string, { question, asks }: Left): AccountPlan => ({
  id: `${input.id}.input`,
  kind: 'input',
  title: `inputs of ${input.id}, ${question.figure}`,
  quantity: 'voltage',
  direction: question.figure === 'input.active' ? 'at-least' : 'at-most',
  circuits: [circuit],
  path: input.path,
  recipes: ['draw-most'],
  read: () => undefined,
  limits: [],
  missing: { figure: question.figure, asks },
  steps: () => [],
});

/** A transistor at the input that the file names conducts at one level and no other. */
const tellsItself = ({ coupling, output }: Board): boolean =>
  coupling === 'transistor' && (output?.[0]?.figures.says('type') ?? false);
