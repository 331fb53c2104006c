import { describe, expect, it } from 'vitest';
import { besides, placeWords } from '../../src/reports/places.js';

const at = (line: number, column: number, file = 'pond.yaml') => ({ file, line, column });

describe('places', () => {
  it('say of the others what differs, and each once', () => {
    expect(placeWords(at(4, 1))).toBe('pond.yaml:4:1');
    expect(placeWords(at(4, 1), [at(4, 8), at(4, 8), at(5, 2), at(5, 9), at(4, 1)])).toBe('pond.yaml:4:1, 8, 5:2, 9');
    expect(placeWords(at(4, 1), [at(4, 1, 'pool.yaml')])).toBe('pond.yaml:4:1, pool.yaml:4:1');
  });

  it('beside one in the same file need not name the file', () => {
    expect(besides(at(9, 3), at(1, 1))).toBe('9:3');
    expect(besides(at(9, 3, 'pool.yaml'), at(1, 1))).toBe('pool.yaml:9:3');
  });
});
