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
 * @param workers how many at most; they start as they are needed
 * @param script what each of them runs: this program itself, which knows when it is a worker
 */
export function openPool(workers: number, limit: TimeLimit, script = __filename): Pool {
  const threads = pool(script, { workerType: 'thread', maxWorkers: workers, workerTerminateTimeout: 10 });
  return {
    run: async (task) => {
      try {
        return (await threads.exec('tell', [task]).timeout(limit.milliseconds)) as Told;
      } catch (fault) {
        return brokenOff(task, fault, limit);
      }
    },
    close: async () => void (await threads.terminate(true)),
  };
}

/** What is told of a file whose audit came to no end: that it was not read. */
export const brokenOff = (task: Task, fault: unknown, limit?: TimeLimit): Promise<Told> =>
  toldOf(unreadable(task.file, why(fault, limit)), task);

function why(fault: unknown, limit: TimeLimit | undefined): string {
  const { name, message } = fault instanceof Error ? fault : new Error(String(fault));
  if (limit && name === 'TimeoutError')
    return `its audit took more than ${limit.stated} and was stopped; --time-limit gives it more`;
  const [first = ''] = message.replace(/^Workerpool Worker error: /, '').split('\n');
  return `its audit broke off, by a fault of ampledger itself and not of this file: ${first}`;
}
