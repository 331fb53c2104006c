/** A load behind a driver, which a pin or several switch. */
import { clampInArray } from './clamp.js';
import type { Driver, Turn } from './drivers/driver.js';
import { backwards } from './drivers/backwards.js';
import { driverOf } from './drivers/driver.js';
import { releaseAccount } from './drivers/release.js';
import type { Hanging } from './hanging.js';
import { ROOM } from './hanging.js';
import type { Named } from './load-pins.js';
import type { Lowered } from './lowering.js';
import { NOTHING } from './lowering.js';
import type { Reading } from './account-plan.js';
import type { BranchPlan, Member } from './branch-plan.js';
import { GROUND } from './branch-plan.js';
import { currentThrough } from './reach.js';

/** @param fed the file says what feeds it @param turn which of several pins of a list its own is */
export function behindDriver(
  { input, content, circuit, supply, members, clamp, hung, base, common, own }: Hanging,
  { pins, fed, turn }: { readonly pins: readonly Named[]; readonly fed: boolean; readonly turn: Turn | undefined },
): Lowered {
  const { bench, path } = input;
  const [named] = pins;
  if (!fed) {
    bench.problem({
      path: [...path],
      on: 'key',
      says: `\`${input.id}\` hangs on a driver, but no \`supply\` says where its current comes from`,
      expected: '`supply:` with the name of a supply or rail',
    });
    return NOTHING;
  }
  if (supply === undefined) return NOTHING;
  const expected = currentThrough(members, bench.nominal(supply), 'typ', ROOM);
  const found = driverOf(input, circuit, {
    ...{ pin: named, pins, supply, load: content.part(circuit), expected, inductive: content.inductive },
    ...(turn && { turn }),
  });
  if (found === undefined) return NOTHING;
  const driver = { ...found, ...(found.leak && { leak: limited(found.leak, members, supply) }) };
  const { clampedTo, clampedBelow } = driver.wiring ?? {};
  const { winding, ...without } = hung;
  const inArray = {
    ...without,
    // Tied below its supply it keeps the winding's current going for ever.
    ...(winding && !clampedBelow && { winding }),
    ...(clampedTo && { clampedTo: clampedTo.common }),
  };
  const inSeries = driver.side === 'low' ? [...members, ...driver.members] : [...driver.members, ...members];
  const branch: BranchPlan = { from: supply, to: GROUND, members: inSeries, circuit };
  const idle = content.idle && { from: supply, to: GROUND, members: content.idle(circuit), circuit };
  const off = driver.off && {
    from: supply,
    to: driver.off.to,
    members: [...members, ...driver.off.members],
    circuit,
  };
  return {
    circuits: [
      {
        ...base,
        always: false,
        wiring: {
          ...common,
          by: driver.by,
          ...(driver.pin && { pin: driver.pin }),
          supply,
          ...(clamp?.wiring ?? { clamp: !content.inductive || driver.clamps ? 'not-needed' : 'none' }),
          unlimited: driver.unlimited,
          ...(driver.inverted && { inverted: driver.inverted }),
          ...driver.wiring,
        },
      },
    ],
    networks: [
      {
        id: circuit,
        circuits: [circuit],
        side: 'load',
        inner: [],
        hooks: [],
        on: [branch],
        off: [...(idle ? [idle] : []), ...(off ? [off] : [])],
        ...(driver.clampsTo && {
          whenDead: [
            {
              ...{ from: { node: supply }, to: driver.clampsTo.to, circuit, only: 'off' },
              members: [...members, ...driver.clampsTo.members],
            },
          ],
        }),
      },
      ...backwards(driver, members, supply),
    ],
    ends: driver.ends ?? [],
    accounts: [
      ...own(supply, driver),
      ...(clamp?.atSwitchingOff(driver.accounts) ?? driver.accounts),
      ...(content.letsGo ? [] : releaseAccount(circuit, path, expected, driver)),
      ...(clamp?.accounts ??
        (driver.clampFigures && content.inductive ? clampInArray(driver.clampFigures, inArray, path) : [])),
    ],
  };
}

/** What a driver leaks, no more than the load itself lets through. */
const limited =
  (leak: NonNullable<Driver['leak']>, members: readonly Member[], supply: string) =>
  (s: Reading): number => {
    const amps = leak(s);
    return amps === 0
      ? 0
      : Math.min(amps, currentThrough(members, s.voltage(supply), s.typical ? 'typ' : 'min', s.ambient));
  };
