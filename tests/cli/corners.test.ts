import { describe, expect, it } from 'vitest';
import { readCorners } from '../../src/cli/corners.js';

const read = (options: Readonly<Record<string, string>>) => readCorners({ operands: [], options });

describe('what the command line says about corners', () => {
  it.each([
    [{}, {}],
    [{ corners: 'rss' }, { corners: 'rss' }],
    [
      { corners: 'monte-carlo', builds: '5000', seed: '0' },
      { corners: 'monte-carlo', builds: 5000, seed: 0 },
    ],
  ])('reads %j', (options, expected) => {
    expect(read(options)).toEqual(expected);
  });

  it.each([
    [{ builds: '500' }, '--builds goes with --corners monte-carlo.'],
    [{ corners: 'rss', seed: '5' }, '--seed goes with --corners monte-carlo.'],
    [{ corners: 'monte-carlo', builds: '99' }, '--builds is a whole number from 100 to 1000000; not 99.'],
    [{ corners: 'monte-carlo', builds: '1e3' }, '--builds is a whole number from 100 to 1000000; not 1e3.'],
    [{ corners: 'monte-carlo', seed: '-1' }, '--seed is a whole number; not -1.'],
  ])('says of %j what would be right', (options, problem) => {
    expect(read(options)).toEqual({ problem });
  });
});
