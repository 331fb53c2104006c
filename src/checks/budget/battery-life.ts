/** A battery has to last as long as it is wanted to; who takes most of it is the first to look at. */
import type { LimitRule } from '../finding.js';

export default {
  name: 'battery-life',
  family: 'budget',
  claims: (a) => a.kind === 'battery' && a.quantity === 'time',
  names: ({ id }, { energy, project }) => {
    const given = energy.find(({ supply }) => supply === id);
    if (given === undefined || given.watts <= 0) return {};
    const sums = new Map<string, number>();
    for (const { circuit, watts } of given.takes) {
      const owner = project.circuits.find((c) => c.id === circuit)?.owner ?? circuit;
      sums.set(owner, (sums.get(owner) ?? 0) + watts);
    }
    const [most, watts] = [...sums].reduce((a, b) => (b[1] > a[1] ? b : a));
    return { most, share: `${Math.round((100 * watts) / given.watts)} %` };
  },
} satisfies LimitRule;
