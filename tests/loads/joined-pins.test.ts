/** Pins joined for one load (rules 10 and 23): each carries its share and up to a fifth more, sums count what really flows. */
import { describe, expect, it } from 'vitest';
import { onChip } from '../checks/cases/case.js';
import { judged } from '../checks/judged.js';
import { builtIn, read } from '../../src/index.js';
import { judge } from '../../src/checks/judge.js';

const accountsOf = (text: string) => judged(text).accounts.map((j) => j.account);
const draw = (text: string, id: string, direction: string, quantity = 'current') => {
  const found = accountsOf(text).find((a) => a.id === id && a.direction === direction && a.quantity === quantity);
  if (found?.draw === undefined) throw new Error(`no account ${id}, ${quantity}, ${direction}`);
  return found.draw;
};

/** 487.5 Ω behind two pins of exactly 25 Ω: 5 V / 500 Ω are 10 mA. */
const two = (more = ''): string =>
  onChip(`a: { type: resistor, resistance: 487.5 Ω, power: 1 W, joined-pins: [PB1, PB2], ${more} }`);

describe('two pins joined for one load', () => {
  it.each(['high', 'low'])('share it, and one may take a fifth more (active %s)', (active) => {
    const direction = active === 'high' ? 'source' : 'sink';
    for (const pin of ['main.PB1', 'main.PB2']) {
      const { min, typ, max } = draw(two(`active: ${active}`), pin, direction);
      expect(1000 * typ).toBeCloseTo(5, 6);
      expect(1000 * max).toBeCloseTo(6, 6);
      expect(1000 * min).toBeCloseTo(4, 6);
    }
  });

  it('are counted whole in the sum that both belong to', () => {
    // 10 mA of the chip's own beside 10 mA.
    expect(1000 * draw(two('active: high'), 'main.supply-pins', 'source').max).toBeCloseTo(20, 6);
    const own = accountsOf(two('active: high')).find((a) => a.id === 'main.supply-pins')!;
    expect(own.entries.reduce((sum, e) => sum + e.max, 0)).toBeCloseTo(own.draw!.max, 12);
  });

  it('have entries that come to what each carries', () => {
    const pin = accountsOf(two('active: high')).find((a) => a.id === 'main.PB1')!;
    expect(pin.entries).toHaveLength(1);
    expect(1000 * pin.entries[0]!.max).toBeCloseTo(6, 6);
  });

  it('are a note, with what flows while one is high and the other low: 5 V / 50 Ω', () => {
    const [note] = judged(two()).findings.filter((f) => f.rule === 'pins-joined');
    expect(note).toMatchObject({ verdict: 'note', about: 'a', names: { pins: 'PB1 and PB2', amps: '100 mA' } });
  });

  it('drive a transistor together: (5 - 0.7) V / (1 kΩ + 12.5 Ω)', () => {
    const text = onChip(
      'a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: bench, joined-pins: [PB1, PB2], driver: { type: npn, gain: 100, base-emitter: { value: 0.7 V, at: 4.25 mA }, base-resistor: 1 kΩ } }',
    );
    expect(1000 * draw(text, 'a.driver', 'at-least').typ).toBeCloseTo(4.247, 2);
    expect(1000 * draw(text, 'main.PB2', 'source').max).toBeCloseTo((1.2 * 4.247) / 2, 2);
  });

  it('are no double use, and another load on one of them hangs on both', () => {
    const text = `${two('active: high').trimEnd()}\n  b: { type: resistor, resistance: 1 kΩ, power: 1 W, pin: PB2 }\n`;
    expect(judged(text).findings.filter((f) => f.rule === 'pin-used-twice')).toEqual([]);
    // 487.5 Ω beside 1 kΩ are 327.7 Ω; 5 V / 340.2 Ω = 14.7 mA, half of it and a fifth.
    expect(1000 * draw(text, 'main.PB1', 'source').max).toBeCloseTo(8.818, 2);
  });
});

describe('pins that cannot be joined', () => {
  it('are those of two chips: a breach, with what they drive into each other', () => {
    const text = two()
      .replace('PB2]', 'bar.q0]')
      .replace('loads:', 'expanders: { bar: { chip: 74hc595, supply: bench } }\nloads:');
    const [breach] = judged(text).findings.filter((f) => f.rule === 'pins-joined');
    expect(breach?.verdict).toBe('breach');
    expect(breach?.names['apart']).toBe('main and bar');
  });

  it.each([
    ['one joined with itself', 'joined-pins: [PB1, PB1]', 'joined with itself'],
    ['one that is said as `pin`, too', 'joined-pins: [PB1, PB2], pin: PB3', 'are named twice'],
  ])('are %s: an error', (_, pins, says) => {
    const text = onChip(`a: { type: resistor, resistance: 1 kΩ, power: 1 W, ${pins} }`);
    const judgement = judge(read(text, 'case.yaml').document?.data, 'case.yaml', { catalogue: builtIn });
    expect('problems' in judgement && judgement.problems.map((p) => p.says).join()).toContain(says);
  });
});
