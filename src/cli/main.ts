/** The program: arguments in, exit status out. */
import { setFlagsFromString } from 'node:v8';
import { isMainThread } from 'node:worker_threads';
import { complain, bearClosedPipes } from './output.js';
import { run } from './run.js';

// Node 20 has the optimising compiler at work on what runs for half a second only, which costs a third more of the processor
// than it saves; later ones wait by themselves.
if (process.versions.v8.startsWith('11.')) setFlagsFromString('--interrupt-budget=1000000');

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

// A worker runs this same file: there is no other that would have to be found.
void (isMainThread ? main() : import('./worker.js'));
