/** The program: arguments in, exit status out. */
import { complain, bearClosedPipes } from './output.js';
import { run } from './run.js';

async function main(): Promise<void> {
  bearClosedPipes();
  try {
    process.exitCode = await run(process.argv.slice(2));
  } catch (fault) {
    // Slips of the user never come here. The status says that nothing was audited, not that something was found.
    complain([
      'This is a fault of ampledger itself, not of your file:',
      fault instanceof Error ? (fault.stack ?? fault.message) : String(fault),
    ]);
    process.exitCode = 2;
  }
}

void main();
