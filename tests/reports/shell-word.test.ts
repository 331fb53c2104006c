import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { fileWord, shellWord, workingCommand } from '../../src/reports/shell-word.js';

describe('a name in a command to copy', () => {
  it.each(['main.D9', 'my gate', "it's", '$(touch /tmp/never)', '`id`', 'a;b', 'a\\b', '*', '~', '', 'é', '"', '#x'])(
    'reaches the program as it is: %s',
    (name) => {
      expect(execFileSync('sh', ['-c', `printf %s ${shellWord(name)}`], { encoding: 'utf8' })).toBe(name);
    },
  );

  it('is left bare where it can be', () => {
    expect(workingCommand('shed/lights.yaml', 'main.D9')).toBe('ampledger working shed/lights.yaml main.D9');
  });

  it('of a file does not look like an option, and standard input stays what it is', () => {
    expect(fileWord('--all.yaml')).toBe('./--all.yaml');
    expect(fileWord('-')).toBe('-');
  });
});
