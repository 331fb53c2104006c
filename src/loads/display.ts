/**
 * Displays: with a controller of their own they draw like any module; without one their digits are multiplexed, or their LEDs lie
 * between each two of their pins.
 */
import { isCharlieplexed, lowerCharlieplexed } from './charlieplexed.js';
import type { LoadType } from './lowering.js';
import { lowerModule } from './module.js';
import { isMultiplexed, lowerMultiplexed } from './multiplexed.js';

export const display: LoadType = {
  type: 'display',
  lower: (input) =>
    isCharlieplexed(input)
      ? lowerCharlieplexed(input)
      : isMultiplexed(input)
        ? lowerMultiplexed(input)
        : lowerModule(input),
};
