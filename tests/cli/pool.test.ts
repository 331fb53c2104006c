import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { openPool } from '../../src/cli/pool.js';

const script = fileURLToPath(new URL('fixtures/odd-worker.mjs', import.meta.url));

it('tells of a file whose audit hangs, eats, ends or breaks its worker, and goes on with the others', async () => {
  const pool = openPool(2, { milliseconds: 1200, stated: '1.2 s' }, script, 16);
  const files = ['one', 'hangs', 'two', 'ends', 'eats', 'throws', 'three', 'four'];
  const told = await Promise.all(
    files.map((file, at) => pool.run({ file, at, whole: at, conditions: { today: '' }, wishes: [] })),
  );
  await pool.close();
  const said = told.map(({ summary }) => ('says' in summary ? `${summary.verdict}: ${summary.says}` : summary.verdict));
  expect(said).toEqual([
    'sound',
    'unread: its audit took more than 1.2 s and was stopped; --time-limit gives it more',
    'sound',
    expect.stringContaining('unread: its audit broke off, by a fault of ampledger itself and not of this file: '),
    'unread: its audit needed more than 16 MB of memory and was stopped; by itself it may have more',
    'unread: its audit broke off, by a fault of ampledger itself and not of this file: a fault',
    'sound',
    'sound',
  ]);
  expect(told[1]?.said).toEqual(['hangs: its audit took more than 1.2 s and was stopped; --time-limit gives it more']);
});
