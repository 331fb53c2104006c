/** The rail that a pin's output stage stands on. */
import type { Project } from './project.js';

/** @param pin as an account id, 'main.D9' @returns undefined when nothing that is solved hangs on the pin while it is high */
export function railOfPin({ networks }: Project, pin: string | undefined): string | undefined {
  for (const n of networks)
    for (const b of [...n.on, ...n.off])
      if (b.pin !== undefined && b.pin.pin === pin && b.pin.level === 'high')
        return b.pin.outward === 1 ? b.from : b.to;
  return undefined;
}
