/** Coils fed from the controller get a supply of their own. */
import type { Remedy } from './cures.js';

export const feedCoilsApart: Remedy = () => [];
