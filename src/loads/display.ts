/** Displays: with a controller of their own they draw like any module; without one their digits are multiplexed. */
import type { LoadType } from './lowering.js';
import { lowerModule } from './module.js';
import { isMultiplexed, lowerMultiplexed } from './multiplexed.js';

export const display: LoadType = {
  type: 'display',
  lower: (input) => (isMultiplexed(input) ? lowerMultiplexed(input) : lowerModule(input)),
};
