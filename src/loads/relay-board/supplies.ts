/** Which node feeds the inputs of a relay board and which its coils, as jumper and supplies say. */
import type { LoadInput } from '../lowering.js';
import type { Board } from './board.js';

export function suppliesOf(input: LoadInput, opto: boolean): Pick<Board, 'logic' | 'supply' | 'wiring'> {
  const { entry, figures, bench, path } = input;
  const node = (key: string): string | undefined =>
    entry[key] === undefined ? undefined : bench.node(entry[key], [...path, key]);
  const both = node('supply');
  const [logicOwn, coilOwn] = [node('logic-supply'), node('coil-supply')];
  const hasJumper = figures.flag('jumper') || typeof figures.word('jumper') === 'string';
  const said = entry['jumper'];
  const jumper =
    said === 'fitted' || said === 'removed'
      ? said
      : both !== undefined && hasJumper
        ? ('fitted' as const)
        : ('removed' as const);
  if (said === undefined && hasJumper) figures.assume(`its supply jumper is ${jumper}, since the file does not say`);
  const grounds = entry['grounds'] === 'separate' ? 'separate' : 'joined';
  if (entry['grounds'] === undefined && opto) figures.assume('its grounds are joined, since the file does not say');
  const [logic, coil] = [logicOwn ?? both, coilOwn ?? both];
  const bridged = jumper === 'fitted';
  const terminals = figures.within('terminals');
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
      grounds,
      isolation: entry['isolation'] === 'wanted' ? 'wanted' : 'not-needed',
      coupling: opto ? 'opto' : (figures.within('input').word('coupling') as 'transistor' | 'none'),
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
