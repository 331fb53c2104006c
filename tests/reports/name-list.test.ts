import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nameList } from '../../src/reports/name-list.js';

const channels = (load: string, ...numbers: readonly number[]): string[] => numbers.map((each) => `${load}.${each}`);

describe('a list of names', () => {
  it.each([
    [['horn'], 'horn'],
    [['horn', 'bell'], 'horn and bell'],
    [channels('vents', 1, 2, 3, 4), 'vents.1 to 4'],
    [channels('vents', 1, 2), 'vents.1 and 2'],
    [channels('vents', 1, 3, 5), 'vents.1, 3 and 5'],
    [channels('vents', 1, 2, 3, 5, 6), 'vents.1 to 3, 5 and 6'],
    [channels('vents', 8, 9, 10), 'vents.8 to 10'],
    [['D4', 'D5', 'D6', 'D7'], 'D4 to D7'],
    [['D4', 'D5'], 'D4 and D5'],
    [[...channels('vents', 1, 2, 3), 'horn', 'lamp.1'], 'vents.1 to 3, horn and lamp.1'],
    [[...channels('vents', 1, 2), 'horn'], 'vents.1, vents.2 and horn'],
    [['a.1', 'b.2', 'c.3'], 'a.1, b.2 and c.3'],
    [['x.7', 'x.08', 'x.9'], 'x.7, 08 and 9'],
    [[], ''],
  ])('%j reads %s', (names, text) => {
    expect(nameList(names)).toBe(text);
  });

  it('ends in others when it is long', () => {
    expect(nameList(['a', 'b', 'c', 'd'], 2)).toBe('a, b and others');
    expect(nameList(['a', ...channels('vents', 1, 2, 3, 4, 5)], 2)).toBe('a and vents.1 to 5');
  });

  it('names every channel of a load, and none that was not named', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 30 }), { minLength: 1 }), (unsorted) => {
        const numbers = unsorted.sort((a, b) => a - b);
        const [head = '', ...rest] = nameList(channels('x', ...numbers)).split(/, | and /);
        const said = [head.replace('x.', ''), ...rest].flatMap((part) => {
          const [from = NaN, to = from] = part.split(' to ').map(Number);
          return Array.from({ length: to - from + 1 }, (_, k) => from + k);
        });
        expect(said).toEqual(numbers);
      }),
    );
  });
});
