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
  lower: (input) => {
    if (isCharlieplexed(input)) return lowerCharlieplexed(input);
    if (isMultiplexed(input)) return lowerMultiplexed(input);
    if (input.entry['refresh'] !== undefined)
      input.figures.problem(
        'refresh',
        `\`${input.id}\` has a controller of its own, which lights it`,
        '`segment-pins` and `digit-pins` of one that has none, or no `refresh`',
      );
    return lowerModule(input);
  },
};
