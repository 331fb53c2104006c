/** A coil on a pin gets a transistor, a clamp and a supply that can feed it. */
import type { Remedy } from './cures.js';

export const driveCoil: Remedy = () => [];
