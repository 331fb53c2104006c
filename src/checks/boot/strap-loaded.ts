/** Protects the start of a chip: what hangs on a strapping pin may keep it from the level that starts the program. */
import { wrongStraps } from '../../ledger/straps.js';
import { formatValue } from '../../quantity/print.js';
import type { WiringRule } from '../finding.js';

export default {
  name: 'strap-loaded',
  family: 'boot',
  find: ({ ledger: { project } }) =>
    wrongStraps(project).map(({ pin, strap, by, stands }) => {
      const use = project.uses.find((u) => u.pin === pin);
      return {
        rule: 'strap-loaded',
        family: 'boot' as const,
        verdict: 'note' as const,
        about: pin,
        path: use?.path ?? [],
        names: {
          pin: project.pins.find((p) => p.id === pin)?.label ?? pin,
          by: by.join(', '),
          level: strap.level,
          ...(strap.says !== undefined && { decides: strap.says }),
          ...(stands && { volts: formatValue(stands.volts, 'voltage'), needs: formatValue(stands.needs, 'voltage') }),
          ...(project.uses.some((u) => u.pin === pin && (u.as === 'driven' || u.as === 'input')) && { outside: 'yes' }),
        },
        related: [],
      };
    }),
} satisfies WiringRule;
