/**
 * The seedling house as somebody types it: three slips told at once, each with its place and the nearest right spelling, and
 * two edits that cure what the audit told.
 */
import { afterEach, describe, expect, it } from 'vitest';
import type { Report, UnreadReport } from '../../src/reports/report.js';
import { accountOf, reportOf, sampleText, worseThanNote } from '../samples/audited.js';
import { ampledger, folder } from './program.js';

const SAMPLE = sampleText('seedling-house');

let bench: ReturnType<typeof folder> | undefined;
afterEach(() => {
  bench?.remove();
  bench = undefined;
});

/** The text with each slip or edit made, every one of which has to be there to be made. */
function changed(edits: readonly (readonly [from: string, to: string])[]): string {
  return edits.reduce((text, [from, to]) => {
    if (text.split(from).length !== 2) throw new Error(`'${from}' does not stand exactly once in the sample`);
    return text.replace(from, to);
  }, SAMPLE);
}

function audit(text: string, ...words: readonly string[]): ReturnType<typeof ampledger> {
  bench?.remove();
  bench = folder({ 'house.yaml': text });
  return ampledger(['audit', 'house.yaml', ...words], { cwd: bench.path });
}

/** Line and column, from 1, of the first place where a text stands. */
function placeOf(text: string, what: string): { line: number; column: number } {
  const before = text.slice(0, text.indexOf(what)).split('\n');
  return { line: before.length, column: [...before.at(-1)!].length + 1 };
}

describe('three mistakes in one file', () => {
  const wrong = changed([
    ['coil-supply: main.5v', 'coil-suply: main.5v'],
    ['part: npn-2n2222a', 'part: npn-2n222a'],
    ['pin: D13, series', 'pin: D-13, series'],
  ]);

  it('are told at once, with their places and near spellings, and nothing that only follows from them', () => {
    const { status, out } = audit(wrong, '--format', 'json');
    expect(status).toBe(2);
    const { verdict, errors } = JSON.parse(out) as UnreadReport;
    expect(verdict).toBe('unread');
    expect(errors.map(({ line, column, says, expected }) => ({ line, column, says, expected }))).toEqual([
      {
        ...placeOf(wrong, 'coil-suply'),
        says: 'unknown key `coil-suply` in load `flaps`',
        expected: 'did you mean `coil-supply`?',
      },
      {
        ...placeOf(wrong, 'npn-2n222a'),
        says: 'no driver `npn-2n222a` is in the catalogue',
        expected: 'did you mean `npn-2n2222a`?',
      },
      { ...placeOf(wrong, 'D-13'), says: 'there is no pin `D-13`', expected: 'did you mean `D13`?' },
    ]);
  });

  it('are shown with the line and a marker under it, on standard error', () => {
    const { status, out, err } = audit(wrong);
    expect([status, out]).toEqual([2, '']);
    const lines = err.split('\n');
    for (const word of ['coil-suply', 'npn-2n222a', 'D-13']) {
      const { line, column } = placeOf(wrong, word);
      expect(err).toContain(`house.yaml:${line}:${column}`);
      const at = lines.findIndex((text) => text.trimStart().startsWith(`${line} |`) && text.includes(word));
      expect(lines[at + 1]?.indexOf('^')).toBe(lines[at]?.indexOf(word));
    }
    expect(err).toMatch(/3 errors/);
  });
});

describe('the sample edited', () => {
  const MOVED = [
    'frost-bell: { part: relay-coil-5v-70r, pin: D9 }',
    'frost-bell: { part: relay-coil-5v-70r, supply: brick-5v, clamp: { part: diode-1n4148 }, driver: { part: npn-2n2222a, pin: D9, base-resistor: 470 Ω ±5 %, pull-down: 10 kΩ ±5 % } }',
  ] as const;
  const APART = [
    ['coil-supply: main.5v', 'coil-supply: brick-5v'],
    ['jumper: fitted', 'jumper: removed'],
  ] as const;
  /** 3.23 V of a sensor where the controller reads 3.13 V as high. */
  const LINES = ['thin level-high main.A4', 'thin level-high main.A5'];
  const FLAPS = ['1', '2', '3', '4'].map((n) => `strain coil-pull-in flaps.${n}`);

  it('by moving the coil behind a driver is rid of what was told of the coil, and of nothing else', () => {
    const after = reportOf(changed([MOVED]));
    expect(worseThanNote(after)).toEqual([...FLAPS, ...LINES, 'thin total-current bar.supply-pins'].sort());
    expect(after.verdict).toBe('strain');
    // The base takes (5.23 V - 0.56 V) / (446.5 Ω + 12.5 Ω) at most, where the coil took 72.7 mA.
    const { draw, verdict } = accountOf(after, 'main.D9', 'source');
    expect(draw?.max).toBeGreaterThan(10.1e-3);
    expect(draw?.max).toBeLessThan(10.3e-3);
    expect(verdict).toBe('sound');
  });

  it('by taking the jumper off and feeding the coils from the brick is rid of the coils that might not pull in', () => {
    const before = reportOf(SAMPLE);
    const after = reportOf(changed(APART));
    expect(worseThanNote(after)).toEqual(worseThanNote(before).filter((line) => !FLAPS.includes(line)));
    // By day two coils and two bases leave the port: 2 x (86.5 + 4.7) mA.
    const port = (r: Report): number => accountOf(r, 'laptop', 'at-most').draw!.max;
    expect(port(before) - port(after)).toBeGreaterThan(0.17);
    expect(port(before) - port(after)).toBeLessThan(0.19);
  });

  it('by taking the jumper off alone keeps its verdict: the coils still hang on the controller', () => {
    const after = reportOf(changed([['jumper: fitted', 'jumper: removed']]));
    expect(worseThanNote(after)).toEqual(worseThanNote(reportOf(SAMPLE)));
  });

  it('by fitting the jumper between two supplies is told that they drive each other', () => {
    const after = reportOf(changed([['coil-supply: main.5v', 'coil-supply: brick-5v']]));
    expect(worseThanNote(after)).toContain('breach jumper-joins-supplies flaps');
  });

  it('by both edits is left with the lamps that are merely thin', () => {
    const after = audit(changed([MOVED, ...APART]), '--format', 'json');
    expect(worseThanNote(JSON.parse(after.out) as Report)).toEqual([...LINES, 'thin total-current bar.supply-pins']);
    expect(after.status).toBe(0);
  });
});
