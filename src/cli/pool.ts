/** Threads that audit files. Whatever becomes of one of them, the others go on. */
import { pool } from 'workerpool';
import { unreadable } from './open-document.js';
import { type Task, type Told, toldOf } from './tell.js';

export interface Pool {
  readonly run: (task: Task) => Promise<Told>;
  readonly close: () => Promise<void>;
}

/** How long one file may take. */
export interface TimeLimit {
  readonly milliseconds: number;
  /** As it was asked for: '5 min'. */
  readonly stated: string;
}

/**
 * Megabytes that an audit may hold in a worker: a large project needs some 300. It also keeps the engine from putting off its
 * collection of garbage, so that ten times the files need hardly more.
 */
const MEMORY = 1024;

/**
 * Megabytes of a worker's memory for what is young: an audit's figures mostly live no longer than itself, and with so much room
 * most of them are dead before anybody looks for those that are not. It takes a fifth off an audit.
 */
const YOUNG = 128;

/**
 * @param workers how many at most; they start as they are needed
 * @param script what each of them runs: this program itself, which knows when it is a worker
 * @param memory megabytes for one of them
 */
export function openPool(workers: number, limit: TimeLimit, script = __filename, memory = MEMORY): Pool {
  const threads = pool(script, {
    workerType: 'thread',
    maxWorkers: workers,
    workerTerminateTimeout: 10,
    workerThreadOpts: { resourceLimits: { maxOldGenerationSizeMb: memory, maxYoungGenerationSizeMb: YOUNG } },
  });
  return {
    run: async (task) => {
      try {
        return (await threads.exec('tell', [task]).timeout(limit.milliseconds)) as Told;
      } catch (fault) {
        // A worker that ended by itself leaves the pool waiting for its end; any task makes it look at those that wait.
        void threads.exec('methods').catch(() => {});
        return brokenOff(task, fault, { limit, memory });
      }
    },
    close: async () => void (await threads.terminate(true)),
  };
}

/** What is told of a file whose audit came to no end: that it was not read. */
export const brokenOff = (task: Task, fault: unknown, bounds?: Bounds): Promise<Told> =>
  toldOf(unreadable(task.file, why(fault, bounds)), task);

interface Bounds {
  readonly limit: TimeLimit;
  readonly memory: number;
}

function why(fault: unknown, bounds: Bounds | undefined): string {
  const { name, message } = fault instanceof Error ? fault : new Error(String(fault));
  if (bounds && name === 'TimeoutError')
    return `its audit took more than ${bounds.limit.stated} and was stopped; --time-limit gives it more`;
  if (bounds && /reaching memory limit/.test(message))
    return `its audit needed more than ${bounds.memory} MB of memory and was stopped; by itself it may have more`;
  const [first = ''] = message.replace(/^Workerpool Worker error: /, '').split('\n');
  return `its audit broke off, by a fault of ampledger itself and not of this file: ${first}`;
}
