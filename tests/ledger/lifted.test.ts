/** Rails whose supply is dead, lifted by what still lives: sums by hand, bounds, and what a maker says of it. */
import { describe, expect, it } from 'vitest';
import { drawnBuilds, uncertainFigures } from '../../src/ledger/builds.js';
import { TYPICAL } from '../../src/ledger/corner.js';
import { waysIntoDead } from '../../src/ledger/into-dead.js';
import { solver } from '../../src/ledger/solver.js';
import { afloat } from '../../src/project/afloat.js';
import { resolve } from '../../src/project/resolve.js';
import { audit, builtIn, read } from '../../src/index.js';
import { sampleText } from '../samples/audited.js';
import { sized } from '../sizes.js';

const projectOf = (text: string) => {
  const { document, errors } = read(`ampledger: 1\ntitle: t\n${text}`, 't.yaml');
  expect(errors).toEqual([]);
  const resolved = resolve(document!.data, 't.yaml', builtIn);
  if ('problems' in resolved) throw new Error(resolved.problems.map((p) => p.says).join());
  return resolved.project;
};

const strip = (drawn: string, line = '', tolerance = ''): string => `
ambient: 25 °C
supplies: { bench: { voltage: 5 V${tolerance}, current: 5 A }, brick: { voltage: 5 V, current: 2 A } }
controllers: { main: { chip: atmega328p, supply: bench, pin-resistance: { source: 25 Ω, sink: 25 Ω } } }
loads: { strip: { type: pixels, count: 30, pin: PB1, supply: brick, full-each: 60 mA, idle-each: ${drawn}${line} } }
`;

describe('a rail that only an input feeds', () => {
  const lifted = (text: string) => waysIntoDead(projectOf(text), { dead: ['brick'], stated: false }).lifted;

  it('stands where it draws as much as comes in', () => {
    // 30 mA at 5 V are 167 Ω; (5 V - 0.6 V in the clamp) over 167 Ω, 470 Ω and 25 Ω are 6.6 mA, and those 1.1 V at 167 Ω
    // The clamp: 0.65 V at 1 mA typically, and 60 mV more for a decade: 0.70 V at 6.5 mA.
    const [rail] = lifted(strip('1 mA', ', series: 470 Ω'));
    expect(rail!.usual.typ).toBeCloseTo(((5 - 0.7) * 166.7) / (166.7 + 470 + 25), 2);
    expect(rail!.on.map((w) => w.about)).toEqual(['strip']);
  });

  it('is held at 0 V by what takes all that comes', () => {
    const { pushed } = waysIntoDead(projectOf(strip('1 mA', ', series: 470 Ω')), { dead: ['brick'], stated: false });
    // (5 - 0.70) V / 495 Ω
    // It counts in its port and in the chip's total as well.
    expect(pushed.map((p) => p.account.id)).toEqual(['main.PB1', 'main.right-group', 'main.supply-pins']);
    expect(pushed[0]!.account.draw!.typ).toBeCloseTo(8.69e-3, 4);
  });

  it('shows the sum of what is pushed into each input that has a limit', () => {
    const { document } = read(sampleText('balcony-taps-wake-up'), 'taps.yaml');
    const { report } = audit(document!, { advice: false });
    const { says, working } = report!.findings.find((f) => f.rule === 'dead-pushed')!;
    expect(says).toContain('into each of latch of bar, data of bar and clock of bar');
    // The pin's rail, behind the fuse of the laptop's port, less 0.64 V in the input's clamp, through the pin at its least.
    const [step] = working;
    const { V_5v: rail, V_line: line, R_pin: pin } = step!.with;
    expect(step!.gives[0]).toBeCloseTo(0.356, 3);
    expect((rail![0] - line![0]) / pin![0]).toBeCloseTo(step!.gives[0], 3);
    expect(pin).toEqual([12.5, 'Ω']);
  });

  // "Back powering: why are the lights on when the power is off?", Texas Instruments, Analog Wire: what stands at the input
  // appears at the supply pin, less one diode.
  it('comes up to one diode below the input where next to nothing hangs on it', () => {
    const [rail] = lifted(strip('1 µA'));
    expect(5 - rail!.most).toBeGreaterThan(0.25);
    expect(5 - rail!.usual.min).toBeLessThan(0.8);
  });

  it.each([
    // Through the base resistor of a Darlington, the junction to its collector (0.68 V at 2 mA) and backwards through the coil.
    ['sink.1', (5 - 0.67) / (25 + 2700 + 360)],
    // A pin for each of two coils.
    ['sink.1, sink.2', (2 * (5 - 0.67)) / (25 + 2700 + 360)],
  ])('takes what the inputs of %s lead back through the coils', (channels, amps) => {
    const pins = channels.replaceAll('sink.', 'PB');
    const project = projectOf(`
ambient: 25 °C
supplies: { bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 12 V, current: 2 A } }
controllers: { main: { chip: atmega328p, supply: bench, pin-resistance: { source: 25 Ω, sink: 25 Ω } } }
arrays: { sink: { part: darlington-array-7, common: brick, input-resistance: 2.7 kΩ } }
loads: { bells: { type: coil, voltage: 12 V, resistance: 360 Ω, supply: brick, driver: { array: [${channels}], pins: [${pins}] } } }
`);
    const { fed, lifted } = waysIntoDead(project, { dead: ['brick'], stated: false });
    // The junction at its least keeps 0.15 V less, and copper at 25 °C has 2 % more.
    expect(fed[0]!.amps / amps).toBeGreaterThan(1);
    expect(fed[0]!.amps / amps).toBeLessThan(1.05);
    // Two junctions up to the base, and one down that leads next to nothing: no more comes up there.
    expect(lifted[0]!.most).toBeLessThan(1.5 - 0.3);
  });

  it('comes up further where what hangs on it takes its least, and no further than where that takes more than comes in', () => {
    const text = (ohms: string): string => `
ambient: 25 °C
supplies: { bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 5 V, current: 2 A } ,
  logic: { from: brick, type: linear-regulator, voltage: 3.3 V, current: 800 mA, dropout: 1 V, quiescent: 5 mA } }
controllers: { main: { chip: atmega328p, supply: bench, pin-resistance: { source: 25 Ω, sink: 25 Ω } } }
loads:
  lamp: { type: resistor, resistance: ${ohms}, active: low, pin: PB1, supply: brick }
  climate: { type: module, idle: 1 mA, active: 1 mA, supply: brick, supply-voltage: 3 to 5.5 V }
`;
    // 1 mA and the regulator's 5 mA at 5 V are 833 Ω beside the pin's 25 Ω and the lamp; 2 V over 4.73 kΩ are less than 1 mA.
    const [starved] = lifted(text('4.7 kΩ'));
    expect(starved!.usual.typ).toBeCloseTo((5 * 833) / (833 + 4725), 2);
    expect(starved!.most).toBe(3);
    // 2 V over 1.03 kΩ are more: nothing but what it takes holds the rail down.
    const [fed] = lifted(text('1 kΩ'));
    expect(fed!.usual.typ).toBeCloseTo((5 * 833) / (833 + 1025), 1);
    expect(fed!.most).toBeCloseTo(5, 1);
  });

  it('is not asked for where both ends live from one supply', () => {
    expect(waysIntoDead(projectOf(strip('1 mA')), { dead: ['bench'], stated: false }).lifted).toEqual([]);
    const one = strip('1 mA').replace('supply: brick', 'supply: bench');
    expect(afloat(projectOf(one), ['bench'])).toBeUndefined();
  });

  it('stands within its bounds in every build that is drawn at random', () => {
    const project = projectOf(strip('0.5 to 1.5 mA', ', series: 470 Ω ±10 %', ' ±5 %'));
    const [rail] = waysIntoDead(project, { dead: ['brick'], stated: false }).lifted;
    const floating = afloat(project, ['brick'])!;
    const bench = solver(floating.project);
    const on = Uint8Array.from(project.circuits, (c) => (c.signal ? 1 : 0));
    const stands = [...drawnBuilds(uncertainFigures(floating.project), sized(100, 2000), 11)].map((build) =>
      bench.solveBuild({ mode: 'dead', on }, { ...TYPICAL, build }).voltage('brick'),
    );
    expect(Math.max(...stands)).toBeLessThanOrEqual(rail!.usual.max + 1e-9);
    expect(Math.min(...stands)).toBeGreaterThanOrEqual(rail!.usual.min - 1e-9);
    expect(Math.max(...stands) - Math.min(...stands)).toBeGreaterThan(0.3 * (rail!.usual.max - rail!.usual.min));
  });
});
