/** Cases of the rules about how relay boards are wired. */
import type { Case } from './case.js';
import { onBoard, onChip } from './case.js';

const BRICK = { supplies: 'bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 5 V, current: 2 A }' };
const board = (wiring: string, part = 'relay-board-opto-low-5v-1'): string =>
  onBoard(`vents: { part: ${part}, inputs: { 1: D4 }, ${wiring} }`, BRICK);
const transistors = (grounds: string): string =>
  board(`coil-supply: brick, grounds: ${grounds}`, 'relay-board-transistor-high-5v-1');

/** A board of which only levels and current are known, on a bare 5 V chip whose pins have exactly 25 Ω. */
const blackBox = (input: string, pin = 'PB1'): string =>
  onChip(
    `vents: { type: relay-board, channels: 1, input: { ${input} }, coil: { voltage: 5 V, resistance: 1 kΩ }, inputs: { 1: ${pin} }, supply: bench }`,
    { policy: 'classroom' },
  );
/** A board with couplers whose input says no more than it is told to. */
const couplers = (input: string, loads = 'inputs: { 1: D4 }, supply: main.5v'): string =>
  onBoard(
    `vents: { type: relay-board, channels: 1, input: { coupling: opto, series: 1 kΩ, led-drop: 1.2 V, led-maximum-current: 50 mA, transfer-ratio: 200 %, ${input} },
          output: { type: npn, gain: 120, base-resistor: 1 kΩ }, coil: { voltage: 5 V, resistance: 100 Ω }, ${loads} }`.replace(
      /\s+/g,
      ' ',
    ),
  );

/** A latching coil in a bridge whose input reads high from a voltage on, on a pin of exactly 5 V. */
const bridged = (threshold: string): string =>
  onChip(
    `a: { type: relay-board, channels: 1, input: { coupling: transistor, active: high, indicator: none }, output: { type: h-bridge, threshold: ${threshold}, on-resistance: 1 Ω, maximum-current: 1.5 A }, coil: { voltage: 5 V, resistance: 100 Ω, latching: one-coil }, inputs: { 1: PB1 }, supply: bench }`,
    { policy: 'classroom' },
  );
/** A gate driver and its MOSFET behind a coupler, with what is fitted at the gate driver's input. */
const gateDriven = (pull: string): string =>
  couplers('active: low, indicator: none').replace(
    'output: { type: npn, gain: 120, base-resistor: 1 kΩ }',
    `output: { stages: [{ type: gate-driver, threshold: 0.8 to 2.4 V${pull} }, { part: nmos-ao3400a }] }`,
  );

export const RELAY_BOARDS: readonly Case[] = [
  {
    rule: 'driver-drive',
    when: 'strains on a bridge whose input may read high from more than the pin gives',
    verdict: 'strain',
    text: bridged('1 to 5.1 V'),
  },
  {
    rule: 'driver-drive',
    when: 'is content with a bridge that reads high from just that',
    verdict: 'silent',
    text: bridged('1 to 5 V'),
  },
  {
    rule: 'driver-drive',
    when: 'breaks on a coupler that cannot hold a gate driver’s input up against the resistor beside it',
    verdict: 'breach',
    text: gateDriven(', pull-down: 100 Ω'),
  },
  {
    rule: 'driver-drive',
    when: 'is content with one that leaves it enough',
    verdict: 'silent',
    text: gateDriven(', pull-down: 4.7 kΩ'),
  },
  {
    rule: 'driver-release',
    when: 'breaks on a gate driver behind a coupler with nothing that takes its input down',
    verdict: 'breach',
    text: gateDriven(''),
  },
  {
    rule: 'driver-release',
    when: 'is content with a resistor that does',
    verdict: 'silent',
    text: gateDriven(', pull-down: 10 kΩ'),
  },
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
    rule: 'jumper-joins-supplies',
    when: 'breaks on two supplies at the one terminal of a board that has no jumper',
    verdict: 'breach',
    text: board('logic-supply: main.5v, coil-supply: brick', 'relay-board-opto-low-5v-1-no-jumper'),
  },
  {
    rule: 'jumper-joins-supplies',
    when: 'is content with one supply there',
    verdict: 'silent',
    text: board('supply: brick, grounds: joined', 'relay-board-opto-low-5v-1-no-jumper'),
  },
  {
    rule: 'ground-missing',
    when: 'breaks on couplers that live from the coils’ supply, with a minus of its own',
    verdict: 'breach',
    text: board('supply: brick, grounds: separate', 'relay-board-opto-low-5v-1-no-jumper'),
  },
  {
    rule: 'ground-missing',
    when: 'is content where the controller feeds that terminal',
    verdict: 'silent',
    text: board('supply: main.5v, grounds: separate', 'relay-board-opto-low-5v-1-no-jumper'),
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
  {
    // 5 V less 25 Ω x 20 mA leave exactly 4.5 V.
    rule: 'input-levels',
    when: 'is content with an input that gets exactly the voltage at which it is surely on',
    verdict: 'silent',
    text: blackBox('active: high, on-above: 4.5 V, off-below: 1 V, current: 20 mA'),
  },
  {
    rule: 'input-levels',
    when: 'strains on a hundredth of a volt more, since a typical input switches midway between its levels',
    verdict: 'strain',
    text: blackBox('active: high, on-above: 4.51 V, off-below: 1 V, current: 20 mA'),
  },
  {
    rule: 'input-levels',
    when: 'breaks on an input that not even midway between its levels is reached',
    verdict: 'breach',
    text: blackBox('active: high, on-above: 6 V, off-below: 3.1 V, current: 20 mA'),
  },
  {
    rule: 'input-levels',
    when: 'strains on a 3.3 V pin that leaves 1.7 V at an input fed with 5 V, surely off below 1.5 V',
    verdict: 'strain',
    text: blackBox('active: low, on-above: 3.5 V, off-below: 1.5 V, current: 3 mA')
      .replace('supply: bench, pin-resistance', 'supply: low, pin-resistance')
      .replace('supplies: { ', 'supplies: { low: { voltage: 3.3 V, current: 1 A }, '),
  },
  {
    rule: 'input-levels',
    when: 'asks for the level at which an input is surely off',
    verdict: 'unproven',
    text: blackBox('active: high, on-above: 2 V, current: 3 mA'),
  },
  {
    rule: 'input-left-open',
    when: 'asks whether an indicator sits in series with the couplers',
    verdict: 'unproven',
    text: couplers('active: low'),
  },
  {
    rule: 'input-left-open',
    when: 'asks which level switches an input on',
    verdict: 'unproven',
    text: couplers('indicator: none'),
  },
  {
    rule: 'input-left-open',
    when: 'is content once both are said',
    verdict: 'silent',
    text: couplers('active: low, indicator: none'),
  },
  {
    rule: 'ground-missing',
    when: 'asks for couplers where the grounds of a black box are separate',
    verdict: 'unproven',
    text: blackBox('active: high, on-above: 2 V, off-below: 1 V, current: 3 mA').replace(
      'supply: bench }',
      'supply: bench, grounds: separate }',
    ),
  },
  {
    rule: 'isolation-defeated',
    when: 'asks for couplers where isolation is wanted of a black box',
    verdict: 'unproven',
    text: blackBox('active: high, on-above: 2 V, off-below: 1 V, current: 3 mA').replace(
      'supply: bench }',
      'supply: bench, isolation: wanted }',
    ),
  },
];
