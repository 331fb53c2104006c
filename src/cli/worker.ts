/** The program as a worker: it audits the files it is given, one after the other, until it is stopped. */
import { worker } from 'workerpool';
import { tell } from './tell.js';

worker({ tell });
