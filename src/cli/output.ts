/** The two streams of the process. */
import { neutral } from '../reports/neutral.js';
import type { Page } from './print.js';

/** Text for standard output, as it is. */
export const say = (text: string): void => void process.stdout.write(text);

/** The same, done when it is on its way: what is written faster than it is read would pile up. */
export const sayInTurn = (text: string | Uint8Array): Promise<void> =>
  text.length === 0 ? Promise.resolve() : new Promise((done) => process.stdout.write(text, () => done()));

/** Lines for standard error, each made harmless: they may echo a name from a file or a command line. */
export const complain = (lines: readonly string[]): void =>
  void process.stderr.write(
    lines
      .flatMap((line) => line.split('\n'))
      .map((line) => neutral(line) + '\n')
      .join(''),
  );

/** Beyond this a line is hard to follow back to its start. */
const widest = 110;
const narrowest = 40;

/** The page that standard output is: 80 columns and plain unless it is a terminal that says otherwise. */
export function page(): Page {
  const { isTTY, columns } = process.stdout;
  const width = Math.min(widest, Math.max(narrowest, columns || 80));
  return { width, colour: wantsColour(isTTY === true) };
}

/** NO_COLOR rules, then FORCE_COLOR (as for a pager that shows colours), then what the output is. */
function wantsColour(isTerminal: boolean): boolean {
  const { NO_COLOR, FORCE_COLOR, TERM } = process.env;
  if (NO_COLOR) return false;
  if (FORCE_COLOR !== undefined) return !['0', 'false'].includes(FORCE_COLOR);
  return isTerminal && TERM !== 'dumb';
}

/** A reader that has seen enough (`| head`) is no fault: whatever else is written goes nowhere, quietly. */
export function bearClosedPipes(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
    });
  }
}
