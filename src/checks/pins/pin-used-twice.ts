/**
 * A pin does one thing. Several plain branches of the same active level on one output, and lines of a shared bus, are one
 * thing; every other double use is a breach.
 */
import type { PinUse } from '../../project/pin-plan.js';
import type { Finding, Judged, WiringRule } from '../finding.js';

/** Lines of a bus that several modules share by design, and what registers in a row are controlled by. */
const SHARED = new Set([
  'sda',
  'scl',
  'clock',
  'data',
  'mosi',
  'miso',
  'sck',
  'i2c-data',
  'i2c-clock',
  'latch',
  'enable',
  'clear',
]);

const together = (a: PinUse, b: PinUse): boolean => {
  const uses = new Set([a.as, b.as]);
  // That two outputs drive one pin is told by a rule of its own; what comes in on a signal's pin is that signal.
  if (uses.has('driven') && (uses.has('output') || uses.has('signal'))) return true;
  if (a.as === 'output' && b.as === 'output') return a.active === b.active;
  if (a.as !== 'output' && b.as !== 'output') return a.role === b.role && SHARED.has((a.role ?? '').toLowerCase());
  return false;
};

function find({ ledger: { project } }: Judged): Finding[] {
  return [...grouped(project.uses).values()].flatMap((uses): Finding[] => {
    const [first, ...others] = uses;
    const clash = others.find((u) => !together(first!, u));
    if (first === undefined || clash === undefined) return [];
    return [
      {
        rule: 'pin-used-twice',
        family: 'pins',
        verdict: 'breach',
        about: clash.pin,
        path: clash.path,
        names: { pin: clash.label, first: first.by, second: clash.by },
        related: [{ path: first.path, name: first.by }],
      },
    ];
  });
}

function grouped(uses: readonly PinUse[]): Map<string, PinUse[]> {
  const map = new Map<string, PinUse[]>();
  for (const u of uses) map.set(u.pin, [...(map.get(u.pin) ?? []), u]);
  return map;
}

export default { name: 'pin-used-twice', family: 'pins', find } satisfies WiringRule;
