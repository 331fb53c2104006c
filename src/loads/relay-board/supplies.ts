/** Which node feeds the inputs of a relay board and which its coils, as jumper and supplies say. */
import type { Figures } from '../figures.js';
import type { LoadInput } from '../lowering.js';
import type { BoardWiring } from '../circuit-plan.js';
import type { Board, Coupling } from './board.js';

export function suppliesOf(
  input: LoadInput,
  coupling: Coupling,
  active: 'high' | 'low',
): Pick<Board, 'logic' | 'supply' | 'wiring'> {
  const { entry, figures, bench, path } = input;
  const node = (key: string): string | undefined =>
    entry[key] === undefined ? undefined : bench.node(entry[key], [...path, key]);
  const both = node('supply');
  const [logicOwn, coilOwn] = [node('logic-supply'), node('coil-supply')];
  const terminals = figures.within('terminals');
  const oneTerminal = isOneTerminal(terminals);
  const said = entry['jumper'];
  if (oneTerminal && said !== undefined)
    figures.problem(
      'jumper',
      `\`${input.id}\` has no supply jumper: one terminal feeds its inputs and its coils`,
      'the board without `jumper`',
    );
  const hasJumper = !oneTerminal && (figures.flag('jumper') || typeof figures.word('jumper') === 'string');
  const jumper =
    said === 'fitted' || said === 'removed'
      ? said
      : both !== undefined && hasJumper
        ? ('fitted' as const)
        : ('removed' as const);
  if (said === undefined && hasJumper) figures.assume(`its supply jumper is ${jumper}, since the file does not say`);
  const isolating = isolatingBy(input, coupling);
  const grounds = entry['grounds'] === 'separate' ? 'separate' : 'joined';
  if (entry['grounds'] === undefined && (isolating === 'opto' || isolating === 'unknown'))
    figures.assume('its grounds are joined, since the file does not say');
  const [logic, coil] = [logicOwn ?? both, coilOwn ?? both];
  const bridged = jumper === 'fitted' || oneTerminal;
  const label = (role: string, otherwise: string): string => terminals.word(role) ?? otherwise;
  return {
    logic: logic ?? (bridged ? coil : undefined),
    supply: coil ?? (bridged ? logic : undefined),
    wiring: {
      channels: figures.count('channels') ?? 1,
      ...(logic && { logic }),
      ...(coil && { coil }),
      jumper,
      hasJumper,
      oneTerminal,
      grounds,
      isolation: entry['isolation'] === 'wanted' ? 'wanted' : 'not-needed',
      coupling: isolating,
      fedByLogic: active === 'low' && (coupling === 'opto' || coupling === 'black-box'),
      terminals: {
        ground: label('ground', 'ground'),
        'logic-supply': label('logic-supply', 'logic supply'),
        'coil-supply': label('coil-supply', 'coil supply'),
        input: label('input', 'input {n}'),
        jumper: label('jumper', 'supply jumper'),
      },
    },
  };
}

/** Where both supplies have one label on the board, they are one terminal. */
function isOneTerminal(terminals: Figures): boolean {
  const logic = terminals.word('logic-supply');
  return logic !== undefined && logic === terminals.word('coil-supply');
}

/** What stands between the two sides; of a black box only what the file says. */
function isolatingBy({ figures }: LoadInput, coupling: Coupling): BoardWiring['coupling'] {
  if (coupling !== 'black-box') return coupling;
  const said = figures.within('input').word('coupling');
  return said === 'opto' || said === 'transistor' || said === 'none' ? said : 'unknown';
}
