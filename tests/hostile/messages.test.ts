/** What the command says of words and files that attack the terminal or the log that it speaks to. */
import { expect, it } from 'vitest';
import { ampledger } from '../commands/program.js';
import { attacks } from './attacks.js';
import { expectQuiet } from './harmless.js';
import { line } from './project.js';

const WORD = `${attacks.join(' ')}${line}`.replaceAll('\0', '');

it.each([[['audit', `${WORD}.yaml`]], [['compare', '--from', WORD]], [[WORD]]])('nothing of it acts: %j', (words) => {
  const { status, out, err } = ampledger(words);
  expect(status).toBe(2);
  expectQuiet(out);
  expectQuiet(err);
  expect(err).not.toBe('');
});

it.each(['catalogue', 'rule'])('%s of a name that is none', async (command) => {
  const said: string[] = [];
  const { commands } = await import('../../src/cli/commands.js');
  const write = process.stderr.write.bind(process.stderr);
  process.stderr.write = (text: string | Uint8Array) => said.push(String(text)) > 0;
  try {
    expect(await commands[command]!.run({ operands: [WORD], options: {} })).toBe(2);
  } finally {
    process.stderr.write = write;
  }
  expectQuiet(said.join(''));
});
