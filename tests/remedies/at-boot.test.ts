/** What is offered for loads that start by themselves, and for pins that feed what is dead: each kind where it is the best. */
import { describe, expect, it } from 'vitest';
import { onBoard, onChip } from '../checks/cases/case.js';
import { faultsOf, judgedText, remediesOf } from './cured.js';

/** The titles of what is offered for a rule's first finding; each is tried from outside as well. */
function offered(text: string, rule: string): string[] {
  const judgement = judgedText(text);
  if (typeof judgement === 'string') throw new Error(judgement);
  const finding = judgement.findings.find((f) => f.rule === rule)!;
  const remedies = remediesOf(text, judgement)(finding);
  for (const remedy of remedies) expect(faultsOf(text, judgement, finding, remedy)).toEqual([]);
  return remedies.map((r) => r.title);
}

const lamp = (more: string): string =>
  `lamp: { type: resistor, resistance: 50 Ω, power: 5 W, supply: bench, driver: { part: nmos-ao3400a, pin: PB1 }${more} }`;
const whose = (state: string, loads: string): string =>
  onChip(loads).replace('main: { chip: atmega328p,', `main: { chip: atmega328p, pins: { PB1: { at-boot: ${state} } },`);

describe('a load that starts by itself', () => {
  it('is held off by a resistor: 1 µA leaves 0.1 V at 100 kΩ', () => {
    expect(offered(onChip(lamp(', safe-when: load-stopped')), 'boot-floats')[0]).toBe(
      'Hold lamp off with 100 kΩ from its gate to ground',
    );
  });

  it('is held on by one, where that is safe', () => {
    expect(offered(onChip(lamp(', safe-when: load-running')), 'boot-floats')[0]).toBe(
      'Hold lamp on with 100 kΩ from PB1 to its rail',
    );
  });

  it('is held off against the pull inside the chip: 20 kΩ and 2.2 kΩ leave a tenth', () => {
    expect(offered(whose('pulled-up', lamp(', safe-when: load-stopped')), 'boot-drives')[0]).toBe(
      'Hold lamp off with 2.2 kΩ from its gate to ground',
    );
  });

  it('moves to another pin, where its own pulses', () => {
    const valve =
      'valve: { part: relay-coil-5v-70r, supply: bench, driver: { part: npn-2n2222a, pin: D13, base-resistor: 1 kΩ }, clamp: { part: diode-1n4148 }, safe-when: load-stopped }';
    expect(offered(onBoard(valve), 'boot-drives')[0]).toBe('Move valve from D13 to D2');
  });

  it('is turned round, where its pin rests at the level that lights it', () => {
    const led = 'led: { part: led-red-5mm, pin: PB1, series: 330 Ω, safe-when: load-stopped }';
    expect(offered(whose('high', led), 'boot-drives')).toContain('Turn led round, so that its pin switches it on low');
  });

  it('goes to the other contact of its relay, where no power leaves it wrong as well: held on it would be wrong there', () => {
    const fan =
      'fan: { part: relay-board-opto-low-5v-1, inputs: { 1: D4 }, supply: main.5v, contacts: { 1: { wired: normally-open, load: { type: resistive, voltage: 24 V DC, current: 1 A }, safe-when: load-running } } }';
    expect(offered(onBoard(fan), 'boot-drives')).toEqual(['Move the load of fan.1 to the normally closed contact']);
  });

  it('is not held on by a resistor that leaves its coupler next to nothing: 100 kΩ pass 30 µA', () => {
    const fan = 'fan: { part: relay-board-opto-low-5v-1, inputs: { 1: D4 }, supply: main.5v, safe-when: load-running }';
    expect(offered(onBoard(fan), 'boot-drives').join()).not.toContain('Hold');
  });

  it('is held off with all outputs of its register, whether it is wrong by itself or all at once are too many', () => {
    const valves = (safe: string): string =>
      onChip(
        `valves: { part: relay-coil-5v-70r, supply: brick, driver: { part: npn-2n2222a, pins: [bar.q0..q5], base-resistor: 1 kΩ }, clamp: { part: diode-1n4148 }${safe} }`,
        {
          more: 'expanders: { bar: { chip: 74hc595, supply: bench, control: { data: PB1, clock: PB2, latch: PB3 } } }\ninterlocks: [{ at-most: 2, of: [valves.*], by: firmware }]',
        },
      ).replace('current: 5 A }', 'current: 5 A }, brick: { voltage: 5 V, current: 300 mA }');
    const hold = 'Hold enable of bar high until firmware runs, with 100 kΩ from PB0 to its rail';
    expect(offered(valves(', safe-when: load-stopped'), 'boot-drives')).toContain(hold);
    expect(offered(valves(''), 'supply-current')[0]).toBe(hold);
  });
});

describe('a pin that feeds what is dead', () => {
  const strip = (rest: string): string =>
    onChip(`strip: { type: pixels, count: 300, pin: PB1, supply: brick, full-each: 5 mA, idle-each: 1 mA${rest} }`, {
      more: 'modes: { dark: { active: [], without: [brick] } }',
    }).replace('current: 5 A }', 'current: 5 A }, brick: { voltage: 5 V, current: 2 A }');

  it('is given a resistor in its line: 4.5 V / 32 mA, less its tolerance', () => {
    expect(offered(strip(''), 'dead-pushed')).toEqual(['Put 150 Ω in series with the signal of strip']);
  });
});
