/** Whose figures tell something of a contact: the relay's own, or those of the coil that a board carries. */
import type { Figures } from '../figures.js';
import type { ContactInput } from './contact.js';

type Relay = Pick<ContactInput, 'relay' | 'bench'>;

export const figuresWith = ({ relay, bench }: Relay, key: string): Figures =>
  relay.says(key) || !relay.says('coil') ? relay : bench.behind(relay.within('coil'), 'load');

/** The contacts that a relay has: A closes when its coil is on, B opens, C changes over. Undefined where nobody says. */
export function formOf(relay: Relay): 'A' | 'B' | 'C' | undefined {
  const said = figuresWith(relay, 'contact-form').word('contact-form');
  return said === 'A' || said === 'B' || said === 'C' ? said : undefined;
}
