/** A port that has to charge more capacitance than it is made for sags or shuts down as soon as something is plugged in. */
import { chargedFrom } from '../../project/capacitances.js';
import { formatValue } from '../../quantity/print.js';
import type { LimitRule } from '../finding.js';

export default {
  name: 'supply-capacitance',
  family: 'supplies',
  claims: (a) => a.quantity === 'charge' && a.direction === 'at-most',
  names: (account, { project }) => {
    const charged = chargedFrom(project, account.id);
    const most = (all: typeof charged): number => all.reduce((sum, c) => sum + c.farads.max, 0);
    const builtIn = charged.filter((c) => c.builtIn);
    return {
      farads: formatValue(most(charged), 'capacitance'),
      ...(builtIn.length > 0 && { builtIn: formatValue(most(builtIn), 'capacitance') }),
    };
  },
} satisfies LimitRule;
