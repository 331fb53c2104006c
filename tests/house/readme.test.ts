import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';

it('shows the output that the program really prints', () => {
  const { status, stderr } = spawnSync(process.execPath, ['tools/readme.mjs', '--check'], { encoding: 'utf8' });
  expect(stderr).toBe('');
  expect(status).toBe(0);
});
