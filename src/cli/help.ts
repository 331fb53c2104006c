/** What the command says about itself. Plain strings, so that asking costs nothing. */
import { type Command, commands } from './commands.js';

/** Two columns, the first as wide as its widest entry. */
function columns(rows: readonly (readonly [string, string])[]): string {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`.trimEnd() + '\n').join('');
}

export const generalHelp = (): string =>
  `Audits every current of a microcontroller project at its worst case.

Usage: ampledger COMMAND …

${columns(Object.entries(commands).map(([name, { summary }]) => [name, summary]))}
${columns([
  ['COMMAND --help', 'its options, with examples'],
  ['--version', 'which version this is'],
])}
Exit status: 0 nothing at or above the failing verdict, 1 something is,
2 the input could not be audited.
`;

const optionWords = ([name, { value, says }]: [string, Command['options'][string]]): [string, string] => [
  value ? `--${name} ${value}` : `--${name}`,
  says,
];

/** The values of an option, on as many lines as 80 columns ask for. */
function choicesOf(head: string, values: readonly string[]): string {
  const lines = [head];
  for (const [index, value] of values.entries()) {
    const word = index === values.length - 1 ? value : `${value}, `;
    const now = lines.at(-1) ?? '';
    if ((now + word).trimEnd().length <= 80) lines[lines.length - 1] = now + word;
    else lines.push(' '.repeat(head.length) + word);
  }
  return lines.map((line) => line.trimEnd() + '\n').join('');
}

export const usage = (name: string, { operands }: Command): string => `ampledger ${name} ${operands.named.join(' ')}`;

export function commandHelp(name: string, command: Command): string {
  const choices = Object.entries(command.options)
    .filter(([, { oneOf = [] }]) => oneOf.length > 2)
    .map(([, { value, oneOf = [] }]) => choicesOf(`${value}: `, oneOf))
    .join('');
  return `${command.summary.charAt(0).toUpperCase()}${command.summary.slice(1)}.

Usage: ${usage(name, command)} [options]

${columns([...Object.entries(command.options).map(optionWords), ['--help', 'this text']])}${choices && '\n' + choices}${command.status === undefined ? '' : `\n${command.status}\n`}
Examples:
${command.examples.map(([line, says]) => `  # ${says}\n  ${line}\n`).join('')}`;
}
