/** Laws of the state before firmware runs, and of modes in which controllers sleep or supplies are dead. */
import { describe, expect, it } from 'vitest';
import { bootBooks } from '../../src/ledger/boot.js';
import { BOOT } from '../../src/ledger/moments.js';
import { drawnBuilds, uncertainFigures } from '../../src/ledger/builds.js';
import { TYPICAL } from '../../src/ledger/corner.js';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { resolve } from '../../src/project/resolve.js';
import { builtIn, read } from '../../src/index.js';
import { sized } from '../sizes.js';

const projectOf = (text: string) => {
  const { document, errors } = read(`ampledger: 1\ntitle: t\n${text}`, 't.yaml');
  expect(errors).toEqual([]);
  const resolved = resolve(document!.data, 't.yaml', builtIn);
  if ('problems' in resolved) throw new Error(resolved.problems.map((p) => p.says).join());
  return resolved.project;
};

const gate = (fitted: string, state: string): string => `
supplies: { bench: { voltage: 5 V ±4 %, current: 5 A } }
controllers: { main: { chip: atmega328p, supply: bench, pins: { PB1: { at-boot: ${state} } } } }
loads:
  lamp: { type: resistor, resistance: 50 Ω, power: 5 W, supply: bench, driver: { part: nmos-ao3400a, pin: PB1${fitted} } }
`;

describe('a gate before firmware runs', () => {
  it.each([1e3, 10e3, 47e3, 100e3, 330e3, 680e3])('is off with %d Ω to ground, whatever the pin leaks', (ohms) => {
    const [lamp] = bootBooks(projectOf(gate(`, pull-down: ${ohms} Ω`, 'floating'))).circuits;
    expect(lamp?.does).toBe('off');
  });

  it.each(['', ', gate-resistor: 100 Ω', ', pull-down: 1 MΩ'])('floats with %s', (fitted) => {
    expect(bootBooks(projectOf(gate(fitted, 'floating'))).circuits[0]?.does).toBe('open');
  });

  it.each([
    ['high', 'on'],
    ['low', 'off'],
    ['pulses', 'pulses'],
    ['pulled-up', 'on'],
    ['pulled-down', 'off'],
  ])('follows a pin that is %s', (state, does) => {
    expect(bootBooks(projectOf(gate('', state))).circuits[0]?.does).toBe(does);
  });
});

const STARTING = `
ambient: 5 to 45 °C
supplies: { laptop: { type: usb2-port }, brick: { voltage: 5 V ±5 %, current: 3 A } }
controllers: { main: { board: esp8266-board, powered: { usb: laptop } } }
loads:
  vents: { part: relay-board-opto-low-5v-2, inputs: { 1: D3, 2: D4 }, logic-supply: main.3v3, coil-supply: brick, jumper: removed }
  valve: { part: relay-coil-5v-70r, supply: brick, driver: { part: npn-2n2222a, pin: D8, base-resistor: 1 kΩ ±5 % }, clamp: { part: diode-1n4148 } }
  lamps: { part: led-red-5mm, pins: [D0, D5, D6], series: 330 Ω ±5 % }
`;

const BAR = (interlock: string): string => `
supplies: { brick: { voltage: 5 V ±4 %, current: 4 A } }
controllers: { main: { board: atmega328p-5v-board, powered: { 5v: brick } } }
expanders: { bar: { chip: 74hc595, supply: main.5v, control: { data: D2, clock: D12, latch: D10 } } }
loads: { row: { part: led-red-5mm, pins: [bar.q0..q7], series: 220 Ω ±5 % } }
${interlock}
`;

describe('the sums before firmware runs', () => {
  it.each([
    ['nothing', '', 8],
    [
      'firmware',
      'interlocks: [{ at-most: 2, of: [row.1, row.2, row.3, row.4, row.5, row.6, row.7, row.8], by: firmware }]',
      8,
    ],
    [
      'wiring',
      'interlocks: [{ at-most: 2, of: [row.1, row.2, row.3, row.4, row.5, row.6, row.7, row.8], by: wiring }]',
      2,
    ],
  ])('have as many outputs of a register on as %s keeps apart', (_, interlock, many) => {
    const { accounts } = bootBooks(projectOf(BAR(interlock)), BOOT);
    const sum = accounts.find((a) => a.id === 'bar.supply-pins' && a.direction === 'source')!;
    expect(sum.entries.filter((e) => e.circuit.startsWith('row.'))).toHaveLength(many);
    // 8 × 15.5 mA: (5.2 V − 1.7 V) / (209 Ω + the output's), and 80 µA of the register's own.
    expect(sum.draw!.max).toBeCloseTo(many * 0.0155 + 80e-6, 3);
  });

  it('hold every build that is drawn at random', () => {
    // Asked for by name, all of it is settled.
    const { accounts, bench } = bootBooks(projectOf(STARTING), BOOT);
    const currents = accounts.filter((a) => a.quantity === 'current' && a.draw && a.sampling());
    expect(currents.length).toBeGreaterThan(8);
    const { project } = bench!.circuitry;
    for (const build of drawnBuilds(uncertainFigures(project), sized(100, 2000), 7))
      for (const account of currents) {
        const { moment, peak, read: amps } = account.sampling()!;
        const s = bench!.solveBuild(moment, {
          ...TYPICAL,
          load: peak ? 'peak' : 'typ',
          rest: peak ? 'peak' : 'typ',
          build,
        });
        const { min, max } = account.draw!;
        const drawn = amps(s)!;
        expect(drawn, account.id).toBeLessThanOrEqual(max * (1 + 1e-6) + 1e-8);
        if (!peak) expect(drawn, account.id).toBeGreaterThanOrEqual(min * (1 - 1e-6) - 1e-8);
      }
  });
});

describe('a mode of its own', () => {
  const base = (mode: string): string => `
supplies:
  sun:  { voltage: 6 V, current: 2 A, reverse: blocked }
  cell: { voltage: 5 V, current: 2 A, reverse: blocked }
  logic: { from: [sun, cell], type: linear-regulator, voltage: 3.3 V, current: 1 A, dropout: 0.3 V, quiescent: 0 mA }
controllers: { main: { chip: esp8266ex, supply: logic, draws: { active: 80 mA, asleep: 1 mA } } }
modes:
  day: { active: [], share: 50 % }
  night: { active: [], share: 50 %${mode} }
`;
  const drawOf = (text: string, id: string): { readonly typ: number; readonly mode: string }[] => {
    const { accounts, dead } = ledgerOf(projectOf(text));
    return [...accounts, ...dead].flatMap((a) =>
      a.id === id && a.quantity === 'current' && a.draw ? [{ typ: a.draw.typ, mode: a.mode }] : [],
    );
  };

  it('draws from the other supply while one is dead', () => {
    const cell = drawOf(base(', without: [sun]'), 'cell');
    expect(cell.find((a) => a.mode === 'night')?.typ).toBeCloseTo(0.08, 3);
    expect(cell.find((a) => a.mode !== 'night')?.typ ?? 0).toBeCloseTo(0, 6);
  });

  it('draws what a controller takes asleep, and its mean by the shares of the time', () => {
    const { energy } = ledgerOf(projectOf(base(', asleep: [main]')));
    expect(energy.find((e) => e.supply === 'sun')?.amps).toBeCloseTo((0.08 + 0.001) / 2, 4);
    const both = ledgerOf(projectOf(base(', asleep: [main], without: [sun]'))).energy;
    expect(both.find((e) => e.supply === 'cell')?.amps).toBeCloseTo(0.0005, 6);
  });
});
