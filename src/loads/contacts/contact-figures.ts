/** Whose figures tell something of a contact: the relay's own, or those of the coil that a board carries. */
import type { Figures } from '../figures.js';
import type { ContactInput } from './contact.js';

export const figuresWith = ({ relay, bench }: ContactInput, key: string): Figures =>
  relay.says(key) || !relay.says('coil') ? relay : bench.behind(relay.within('coil'), 'load');
