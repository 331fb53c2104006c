/** Two supplies that a wire or a second inlet joins are parted, and two grounds that couplers should keep apart. */
import { isMapping } from '../loads/figures.js';
import type { Way } from './cures.js';
import { entryOf, valueAt } from './entries.js';
import type { Cure } from './prove.js';

/** The wire between two supplies, or one of two ways to power a board, comes off. */
export const partSupplies: Way = ({ finding, data }) => {
  if (finding.rule !== 'supplies-joined' && finding.rule !== 'regulator-back-fed') return [];
  const paths = [finding.path, ...finding.related.map((r) => r.path)];
  return paths.flatMap((path): Cure[] => {
    const [section, name, key, inlet] = path;
    if (section === 'wires') {
      const wires: unknown = valueAt(data, ['wires']);
      if (!Array.isArray(wires)) return [];
      return [
        {
          title: 'Take the wire between the two supplies out',
          changes: [
            { path: ['wires'], value: wires.length > 1 ? wires.filter((_, k) => k !== Number(name)) : undefined },
          ],
          parts: [],
          steps: [
            `Take the wire between ${finding.names['from'] ?? finding.about} and ${finding.names['other'] ?? 'the other supply'} out; only their minus ends may join.`,
          ],
          watch: [],
        },
      ];
    }
    const powered = entryOf(data, String(section), String(name))?.['powered'];
    if (section !== 'controllers' || key !== 'powered' || !isMapping(powered) || Object.keys(powered).length < 2)
      return [];
    return Object.keys(powered)
      .filter((each) => inlet === undefined || each === inlet)
      .map((each): Cure => ({
        title: `Power ${String(name)} without its ${each}`,
        changes: [{ path: ['controllers', String(name), 'powered', each], value: undefined }],
        parts: [],
        steps: [
          `Take ${typeof powered[each] === 'string' ? powered[each] : 'what feeds it'} off ${each} of ${String(name)}: the other one is enough, and the two drive each other.`,
        ],
        watch: [],
      }));
  });
};

/** Couplers isolate once the two grounds are apart: where the coils have a supply of their own, only a wire has to go. */
export const partGrounds: Way = ({ finding, judgement, data }) => {
  if (finding.rule !== 'isolation-defeated' || entryOf(data, 'loads', finding.about) === undefined) return [];
  const board = judgement.project.circuits.find((c) => c.owner === finding.about)?.wiring.board;
  if (board === undefined || board.coupling !== 'opto') return [];
  const at = ['loads', finding.about];
  return [
    {
      title: `Part the grounds of ${finding.about}`,
      changes: [
        { path: [...at, 'grounds'], value: 'separate' },
        ...(board.hasJumper ? [{ path: [...at, 'jumper'], value: 'removed' }] : []),
      ],
      parts: [],
      steps: [
        ...(board.hasJumper ? [`${finding.about}: take the jumper off (${board.terminals['jumper']}).`] : []),
        `${finding.about}: take the controller’s ground off ${board.terminals['ground']}; only the minus of the coils’ supply stays there.`,
      ],
      watch: [`${finding.about}.1.coil`],
    },
  ];
};
