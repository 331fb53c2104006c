/** Loaded before a program: tells at its end, on channel 3, the most memory that it held, in kilobytes. */
import { writeSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';

if (isMainThread) process.on('exit', () => writeSync(3, String(process.resourceUsage().maxRSS)));
