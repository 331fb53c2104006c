/** Project files as a large repository has them: small to medium, of many kinds, the same for the same seed. */

/** A generator of numbers from 0 to 1 (mulberry32). */
function drawsFrom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const BOARDS = [
  { board: 'atmega328p-5v-board', rail: '5v', pins: range('D', 2, 12) },
  { board: 'atmega2560-5v-board', rail: '5v', pins: range('D', 22, 49) },
  { board: 'rp2040-board', rail: '3v3', pins: range('GP', 2, 15) },
  {
    board: 'esp32-devkit',
    rail: '3v3',
    pins: range('GPIO', 16, 19).concat(range('GPIO', 25, 27), ['GPIO32', 'GPIO33']),
  },
];

function range(name, from, to) {
  return Array.from({ length: to - from + 1 }, (_, at) => `${name}${from + at}`);
}

/** The text of project number `seed`. */
export function projectText(seed) {
  const draw = drawsFrom(seed + 1);
  const pick = (list) => list[Math.floor(draw() * list.length)];
  const { board, rail, pins } = pick(BOARDS);
  const free = [...pins];
  const pin = () => free.splice(Math.floor(draw() * free.length), 1)[0];
  const loads = {
    led: () =>
      `{ part: led-${pick(['red', 'green'])}-5mm, pin: ${pin()}, series: ${pick([100, 150, 220, 330, 470, 1000])} Ω ±5 % }`,
    coil: () =>
      `{ part: relay-coil-5v-70r, supply: brick, driver: { part: npn-2n2222a, pin: ${pin()}, base-resistor: ${pick([390, 1000, 4700])} Ω ±5 %, pull-down: 10 kΩ }, clamp: { part: diode-1n4148 } }`,
    board: () =>
      `{ part: relay-board-opto-low-5v-2, inputs: { 1: ${pin()}, 2: ${pin()} }, logic-supply: main.${rail}, coil-supply: brick, jumper: removed }`,
    motor: () =>
      `{ type: dc-motor, supply: brick, run: ${pick([80, 180, 300])} mA, stall: 800 mA, stall-time: 150 ms, driver: { part: nmos-ao3400a, pin: ${pin()}, gate-resistor: 100 Ω, pull-down: 100 kΩ }, clamp: { type: schottky, current: 1 A } }`,
    sensor: () => `{ part: sensor-bme280, supply: main.3v3 }`,
  };
  // Mostly small; a load takes two pins at most.
  const count = Math.min(1 + Math.floor(draw() ** 2 * 8), free.length >> 1);
  const lines = Array.from({ length: count }, (_, at) => `  load-${at + 1}: ${loads[pick(Object.keys(loads))]()}`);
  const modes =
    draw() < 0.4 ? `modes:\n  busy: { active: ['load-1.*'], share: 20 % }\n  idle: { active: [], share: 80 % }\n` : '';
  return `# Project ${seed} of a bench.
ampledger: 1
title: Bench ${seed}
ambient: ${pick(['0 to 40', '5 to 35', '-10 to 50'])} °C
supplies:
  laptop: { type: usb2-port }
  brick: { voltage: 5 V ±${pick([2, 4, 5])} %, current: ${pick([1, 2, 3])} A }
controllers:
  main: { board: ${board}, powered: { usb: laptop } }
loads:
${lines.join('\n')}
${modes}`;
}
