/** Choppers for stepper motors against sums and measurements that others have published. */
import { expect, test } from 'vitest';
import { onSupplies } from '../checks/cases/case.js';
import { accountsOf, asked } from '../loads/read-account.js';

const on = (volts: string, motor: string, driver: string): string =>
  onSupplies(
    `bench: { voltage: ${volts}, current: 90 A }`,
    `a: { type: stepper, ${motor}, maximum-current: 100 A, supply: bench, driver: { type: chopper, ${driver} } }`,
    { ambient: '20 °C', policy: 'classroom' },
  );

/**
 * "Motor maths" (a builder's notes on the chopper A3977, as kept in the Nemotron-CC-Math collection): 12 V, 1 A in each of both
 * windings, motor at rest. The bridge is on for 3 of 23 µs, so that 130 mA of each winding come from the supply: measured 260 mA
 * in all. The volts that a winding and its switches keep are then 12 V · 3/23 = 1.57 V, and their resistance 1.57 Ω.
 */
test('at rest the supply gives a winding’s current for as long as the bridge is on: 260 mA of 12 V for 1 A in both', () => {
  const loop = (12 * 3) / 23;
  const motor = `winding-resistance: ${loop - 0.5} Ω, phase-current: 1 A`;
  expect(asked(on('12 V', motor, 'on-resistance: 0.5 Ω, maximum-current: 2.5 A'))).toBeCloseTo(0.26, 2);
});

/**
 * DRV8428E, Texas Instruments, SLOSE51A (December 2020), power dissipation: both bridges at 0.5 A with 0.75 Ω high and 0.75 Ω low
 * turn P_COND = 2 · 0.5² · (0.75 + 0.75) = 0.75 W to heat, and at 24 V the chip P_Q = 24 V · 3.8 mA = 0.0912 W. Its switching
 * losses, 0.096 W at 40 kHz, are not reckoned here.
 */
test('heat in both bridges and in the chip itself: 0.75 W and 0.0912 W', () => {
  const driver = 'on-resistance: 1.5 Ω, quiescent: 3.8 mA, thermal-resistance: 100 K/W, maximum-current: 1 A';
  const text = on('24 V', 'winding-resistance: 2 Ω, phase-current: 0.5 A', driver);
  const { max } = accountsOf(text)('a.driver', 'at-most', 'temperature').draw!;
  expect((max - 20) / 100).toBeCloseTo(0.75 + 0.0912, 6);
});
