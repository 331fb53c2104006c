/** Runs a command of the program in this process, and keeps what it prints. */
import { vi } from 'vitest';
import { commands } from '../../src/cli/commands.js';
import { readArguments } from '../../src/cli/arguments.js';

export async function captured(name: string, ...words: readonly string[]) {
  const said = { status: 0, out: '', err: '' };
  const spies = (['stdout', 'stderr'] as const).map((stream) =>
    vi.spyOn(process[stream], 'write').mockImplementation(((text: string | Uint8Array, done?: () => void) => {
      said[stream === 'stdout' ? 'out' : 'err'] += typeof text === 'string' ? text : new TextDecoder().decode(text);
      done?.();
      return true;
    }) as typeof process.stdout.write),
  );
  try {
    const command = commands[name]!;
    const given = readArguments(words, command);
    if ('problem' in given) throw new Error(given.problem);
    said.status = await command.run(given);
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
  return said;
}
