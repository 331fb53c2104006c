/** Protects pins: two of them on the input of one array channel are two outputs that drive one net. */
import type { Finding, Judged, WiringRule } from '../finding.js';

function find({ ledger: { project } }: Judged): Finding[] {
  const first = new Map<string, (typeof project.circuits)[number]>();
  return project.circuits.flatMap((c): Finding[] =>
    (c.wiring.channels ?? []).flatMap((channel): Finding[] => {
      const other = first.get(channel);
      if (other === undefined) first.set(channel, c);
      if (other === undefined || other.wiring.pin === c.wiring.pin) return [];
      const label = (pin: string | undefined): string => project.uses.find((u) => u.pin === pin)?.label ?? String(pin);
      return [
        {
          rule: 'channel-used-twice',
          family: 'drivers',
          verdict: 'breach',
          about: c.id,
          path: [...c.path, 'driver'],
          names: { channel, first: label(other.wiring.pin), second: label(c.wiring.pin), other: other.id },
          related: [{ path: other.path, name: other.id }],
        },
      ];
    }),
  );
}

export default { name: 'channel-used-twice', family: 'drivers', find } satisfies WiringRule;
