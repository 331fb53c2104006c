/** One run of the command: finds the subcommand and does it. */
import { readArguments, type Slip } from './arguments.js';
import { commands } from './commands.js';
import { commandHelp, generalHelp, usage } from './help.js';
import { complain, say } from './output.js';
import { version } from './version.js';

/** What the input could not be audited for, wrong usage included. */
const unusable = 2;

/** Runs the words after the program's name; gives the exit status. */
export async function run(argv: readonly string[]): Promise<number> {
  const [name, ...rest] = argv;
  if (name === undefined) return refuse({ problem: generalHelp().trimEnd() });
  if (name === '--version') return answer(version + '\n');
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
  const asked = rest[0] !== undefined && Object.hasOwn(commands, rest[0]) ? commands[rest[0]] : undefined;
  if (name === '--help' || name === '-h' || name === 'help') {
    return answer(asked && rest[0] ? commandHelp(rest[0], asked) : generalHelp());
  }
  if (!command) return refuse(unknownCommand(name), 'ampledger --help');
  const given = readArguments(
    rest.map((word) => (word === '-h' ? '--help' : word)),
    command,
  );
  if ('problem' in given) return refuse(given, `${usage(name, command)}; ampledger ${name} --help`);
  if (given.options['help']) return answer(commandHelp(name, command));
  return command.run(given);
}

function answer(text: string): number {
  say(text);
  return 0;
}

/** A file in place of a command is the likeliest slip of all. */
function unknownCommand(name: string): Slip {
  if (name.startsWith('-')) return { problem: `${name}: the command comes first.` };
  if (/\.ya?ml$/.test(name)) return { problem: `${name} is no command. Do you mean: ampledger audit ${name}` };
  return { problem: `There is no command ${name}.`, word: name, known: Object.keys(commands) };
}

async function refuse({ problem, word, known }: Slip, hint?: string): Promise<number> {
  const { nearestSpelling } = await import('../source/nearest-spelling.js');
  const near = word !== undefined && known ? nearestSpelling(word, known) : undefined;
  complain([near ? `${problem} Do you mean ${near}?` : problem, ...(hint ? [`Usage: ${hint}`] : [])]);
  return unusable;
}
