/** Cases of the rules about how relay boards are wired. */
import type { Case } from './case.js';
import { onBoard } from './case.js';

const BRICK = { supplies: 'bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 5 V, current: 2 A }' };
const board = (wiring: string, part = 'relay-board-opto-low-5v-1'): string =>
  onBoard(`a: { part: ${part}, inputs: { 1: D4 }, ${wiring} }`, BRICK);
const transistors = (grounds: string): string =>
  board(`coil-supply: brick, grounds: ${grounds}`, 'relay-board-transistor-high-5v-1');

export const RELAY_BOARDS: readonly Case[] = [
  {
    rule: 'jumper-joins-supplies',
    when: 'breaks on a jumper between the controller’s 5 V and a brick',
    verdict: 'breach',
    text: board('logic-supply: main.5v, coil-supply: brick, jumper: fitted'),
  },
  {
    rule: 'jumper-joins-supplies',
    when: 'is content once the jumper is off',
    verdict: 'silent',
    text: board('logic-supply: main.5v, coil-supply: brick, jumper: removed'),
  },
  {
    rule: 'jumper-joins-supplies',
    when: 'is content with a jumper that joins a supply with itself',
    verdict: 'silent',
    text: board('logic-supply: main.5v, coil-supply: main.5v, jumper: fitted'),
  },
  {
    rule: 'ground-missing',
    when: 'breaks on a board without couplers between separate grounds',
    verdict: 'breach',
    text: transistors('separate'),
  },
  {
    rule: 'ground-missing',
    when: 'is content once the grounds are joined',
    verdict: 'silent',
    text: transistors('joined'),
  },
  {
    rule: 'ground-missing',
    when: 'is content with couplers between separate grounds: their LEDs hang between logic supply and pin',
    verdict: 'silent',
    text: board('logic-supply: main.5v, coil-supply: brick, jumper: removed, grounds: separate'),
  },
  {
    rule: 'isolation-defeated',
    when: 'strains where isolation is wanted and the grounds are joined',
    verdict: 'strain',
    text: board('logic-supply: main.5v, coil-supply: brick, jumper: removed, grounds: joined, isolation: wanted'),
  },
  {
    rule: 'isolation-defeated',
    when: 'strains where isolation is wanted and one supply feeds both sides',
    verdict: 'strain',
    text: board('logic-supply: main.5v, coil-supply: main.5v, jumper: removed, grounds: separate, isolation: wanted'),
  },
  {
    rule: 'isolation-defeated',
    when: 'strains where isolation is wanted and the coils’ supply powers the controller, too',
    verdict: 'strain',
    text: board('logic-supply: main.5v, coil-supply: bench, jumper: removed, grounds: separate, isolation: wanted'),
  },
  {
    rule: 'isolation-defeated',
    when: 'is a note where nobody wants it',
    verdict: 'note',
    text: board('logic-supply: main.5v, coil-supply: brick, jumper: removed, grounds: joined, isolation: not-needed'),
  },
  {
    rule: 'isolation-defeated',
    when: 'is content with two supplies, separate grounds and no jumper',
    verdict: 'silent',
    text: board('logic-supply: main.5v, coil-supply: brick, jumper: removed, grounds: separate, isolation: wanted'),
  },
];
