/**
 * A name as one word of a command line. A report prints commands to copy, and names come from a file that may be a
 * stranger's: `$(…)` in a load's name must not run when it is pasted.
 */
export const shellWord = (text: string): string =>
  /^[\w./:@%+,-]+$/.test(text) ? text : `'${text.replaceAll("'", `'\\''`)}'`;

/** The same for a file, which must not look like an option. */
export const fileWord = (file: string): string => shellWord(file.startsWith('-') && file !== '-' ? `./${file}` : file);

/** The command that prints the sums behind `name`, in a variant where one was audited. */
export const workingCommand = (file: string, name: string, variant?: string): string =>
  `ampledger working ${fileWord(file)} ${shellWord(name)}${variant === undefined ? '' : ` --variant ${shellWord(variant)}`}`;
