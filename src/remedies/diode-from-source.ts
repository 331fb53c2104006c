/** A source that is fed while it is dead: a Schottky diode between it and the boards and chips that it feeds lets nothing back. */
import { isMapping } from '../loads/figures.js';
import type { Way } from './cures.js';
import type { Change } from './prove.js';

const DIODE = 'diode-schottky-1a';

export const diodeFromSource: Way = ({ finding, data }) => {
  if (finding.rule !== 'dead-fed') return [];
  const source = finding.about;
  const [name, isFree] = [
    `${source}-diode`,
    (key: string) => !isMapping(data) || !sectionOf(data, key)[`${source}-diode`],
  ];
  if (!['supplies', 'loads', 'controllers', 'expanders', 'arrays', 'incoming'].every(isFree)) return [];
  const fed = (['controllers', 'expanders'] as const).flatMap((section) =>
    Object.entries(sectionOf(data, section)).flatMap(([id, entry]) =>
      isMapping(entry)
        ? inletsOf(entry, source).map((path): Change => ({ path: [section, id, ...path], value: name }))
        : [],
    ),
  );
  if (fed.length === 0) return [];
  const boards = [...new Set(fed.map(({ path }) => String(path[1])))].join(' and ');
  return [
    {
      title: `Feed ${boards} from ${source} over a Schottky diode`,
      changes: [{ path: ['supplies', name], value: { from: source, type: 'diode', part: DIODE } }, ...fed],
      parts: ['Schottky diode, 1 A, 40 V'],
      steps: [
        `Put a Schottky diode into the plus from ${source} to ${boards}, its cathode (the ring) towards ${boards}.`,
      ],
      watch: fed.map(({ path }) => `${String(path[1])}.${String(path.at(-1))}`),
    },
  ];
};

const sectionOf = (data: unknown, key: string): Readonly<Record<string, unknown>> => {
  const section = isMapping(data) ? data[key] : undefined;
  return isMapping(section) ? section : {};
};

/** Where an entry names what feeds it. */
function inletsOf(entry: Readonly<Record<string, unknown>>, source: string): readonly (readonly string[])[] {
  const powered = isMapping(entry['powered']) ? entry['powered'] : {};
  const inlets = Object.keys(powered).filter((inlet) => powered[inlet] === source);
  return [...inlets.map((inlet) => ['powered', inlet]), ...(entry['supply'] === source ? [['supply']] : [])];
}
