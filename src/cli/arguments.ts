/** The command line of one command, read and checked. A slip is returned, not thrown. */
import { parseArgs } from 'node:util';
import type { Command } from './commands.js';

export interface Arguments {
  readonly operands: readonly string[];
  /** By name without dashes: a text, or true for a switch. */
  readonly options: { readonly [name: string]: string | true };
  /** Every value of the options that may be given more than once, in the order of the command line. */
  readonly repeated?: { readonly [name: string]: readonly string[] };
}

export interface Slip {
  readonly problem: string;
  /** What was written, and what it may have been meant to be one of. */
  readonly word?: string;
  readonly known?: readonly string[];
}

/** Reads `argv`, the words after the command's name. */
export function readArguments(argv: readonly string[], command: Command): Arguments | Slip {
  const names = [...Object.keys(command.options), 'help'];
  const { tokens } = parseArgs({
    args: [...argv],
    // Not strict: its errors speak of the parser, ours of the command.
    strict: false,
    allowPositionals: true,
    tokens: true,
    options: Object.fromEntries(
      names.map((name) => [name, { type: command.options[name]?.value ? 'string' : 'boolean' } as const]),
    ),
  });
  const operands: string[] = [];
  const options: { [name: string]: string | true } = {};
  const repeated: { [name: string]: string[] } = {};
  for (const token of tokens) {
    if (token.kind === 'positional') operands.push(token.value);
    if (token.kind !== 'option') continue;
    const slip = optionSlip(token.name, token.value, token.rawName, command);
    if (slip) return slip;
    options[token.name] = token.value ?? true;
    if (command.options[token.name]?.repeats) (repeated[token.name] ??= []).push(token.value ?? '');
  }
  const read = { operands, options, ...(Object.keys(repeated).length > 0 && { repeated }) };
  return options['help'] ? read : (operandSlip(operands, command) ?? read);
}

function optionSlip(name: string, value: string | undefined, raw: string, command: Command): Slip | undefined {
  const known = ['help', ...Object.keys(command.options)];
  if (!known.includes(name)) {
    return { problem: `There is no option ${raw}.`, word: raw, known: known.map((each) => `--${each}`) };
  }
  const option = command.options[name];
  if (!option?.value) return value === undefined ? undefined : { problem: `${raw} takes no value.` };
  if (value === undefined || value === '') return { problem: `${raw} needs a value: ${raw} ${option.value}.` };
  if (!option.oneOf || option.oneOf.includes(value)) return undefined;
  return { problem: `${raw} is one of ${option.oneOf.join(', ')}; not ${value}.`, word: value, known: option.oneOf };
}

function operandSlip(operands: readonly string[], { operands: { named, least, most } }: Command): Slip | undefined {
  if (operands.length < least) return { problem: `${named[operands.length] ?? 'FILE'} is missing.` };
  if (operands.length > most) return { problem: `${operands[most]} is one word too many; quote names with spaces.` };
  return undefined;
}
