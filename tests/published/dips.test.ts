/** Capacitors that bridge peaks, against published sums. `toBeCloseTo(x, n)` accepts what the source prints at its precision. */
import { describe, expect, test } from 'vitest';
import { capacitorDip, sourceShare } from '../../src/circuit/dip.js';

describe('a capacitor that gives a current alone', () => {
  /** "Bulk capacitors/charge reservoir for large pulse current", question and answer (itecnotes): 300 mA, 5 s, 15 F. */
  test('of 15 F dips by 0.1 V while it gives 300 mA for 5 s', () => {
    expect(capacitorDip(0.3, 5, 15)).toBeCloseTo(0.1, 12);
  });

  /** Thread 209669 on hold-up capacitors (diybanter.com): 50 mA for 5 µs and 0.1 V want 2.5 µF. */
  test('of 2.5 µF dips by 0.1 V while it gives 50 mA for 5 µs', () => {
    expect(capacitorDip(50e-3, 5e-6, 2.5e-6)).toBeCloseTo(0.1, 12);
  });

  /**
   * P. Skopalová, "Choosing the appropriate capacitor to support the design-in of GSM modules", AVX, 2010: 2 A for 0.577 ms
   * from 6 mF is acceptable; G24-L Hardware Description, Motorola, 15 November 2008, p. 11: no more than 300 mV in a burst.
   */
  test('of 6 mF stays inside 300 mV in a burst of 2 A and 0.577 ms, and one of 1 mF does not by itself', () => {
    expect(capacitorDip(2, 0.577e-3, 6e-3)).toBeLessThan(0.3);
    expect(capacitorDip(2, 0.577e-3, 1e-3)).toBeGreaterThan(0.3);
  });
});

/** "How to pick the right capacitor for device with significant current peaks", answer (itecnotes): 4 V, 4.7 mF, 2.22 Ω, 2 ms. */
test('a capacitor of 4.7 mF at 4 V has about 3.3 V left after 2 ms on 2.22 Ω', () => {
  expect(4 * (1 - sourceShare(2e-3, 2.22, 4.7e-3))).toBeCloseTo(3.3, 1);
});
