/** The files of a run, one after the other or many at a time, told in their order. */
import { inOrder } from './in-order.js';
import { brokenOff, openPool, type TimeLimit } from './pool.js';
import { tell, type Task, type Told } from './tell.js';

/** Fewer files than this are done before a worker has started. */
export const FEW = 8;

/** Files that may be done and wait for a slow one before them, for each worker. */
const AHEAD = 16;

const usualLimit: TimeLimit = { milliseconds: 300_000, stated: '5 min' };

export interface Means {
  readonly workers: number;
  /** Where it was asked for: only a worker can be stopped. */
  readonly limit?: TimeLimit;
}

/** Audits the files of `tasks` and hands over what is told of each, in their order. @param step one more is done */
export async function auditAll(
  tasks: readonly Pick<Task, 'file' | 'whole'>[],
  { conditions, wishes }: Pick<Task, 'conditions' | 'wishes'>,
  { workers, limit }: Means,
  take: (told: Told) => Promise<void>,
  step: () => void,
): Promise<void> {
  const taskAt = (at: number): Task => ({ file: '', whole: at, ...tasks[at], at, conditions, wishes });
  const count = tasks.length;
  if (count < FEW && limit === undefined)
    return inOrder(count, 1, (at) => (count === 1 ? tell(taskAt(at)) : careful(taskAt(at))), take);
  const threads = Math.min(workers, count);
  const pool = openPool(threads, limit ?? usualLimit);
  try {
    const run = async (at: number): Promise<Told> => {
      const task = taskAt(at);
      // Only the main thread has a standard input.
      const told = await (task.file === '-' ? careful(task) : pool.run(task));
      step();
      return told;
    };
    await inOrder(count, threads * AHEAD, run, take);
  } finally {
    await pool.close();
  }
}

/** One file among others: a fault in its audit is told, and does not stop the others. */
const careful = (task: Task): Promise<Told> => tell(task).catch((fault: unknown) => brokenOff(task, fault));
