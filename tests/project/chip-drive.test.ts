/** Pins of one chip that differ: in the drive they start with, and in the rows of output levels that hold for them. */
import { expect, test } from 'vitest';
import { ledgerOf } from '../../src/ledger/ledger.js';
import { projectOf } from '../properties/projects.js';

/** What a pin typically gives into 10 Ω to ground: nearly all that limits it is its own resistance. */
function typical(chip: object, pin: string): number {
  const project = projectOf({
    ampledger: 1,
    title: 'A resistor on a pin',
    supplies: { rail: { voltage: '3.3 V', current: '1 A' } },
    parts: { own: { ...chip } },
    controllers: { main: { part: 'own', supply: 'rail' } },
    loads: { short: { type: 'resistor', resistance: '10 Ω', pin } },
  });
  return ledgerOf(project).accounts.find((a) => a.id === `main.${pin}` && a.direction === 'source')!.draw!.typ;
}

test('a pin starts with the drive of its own, the others with that of the chip, unless the project chooses', () => {
  const s3 = { extends: 'esp32-s3' };
  // 0.66 V lost at 20, 10 and 40 mA: 33, 66 and 16.5 Ω.
  expect(typical(s3, 'GPIO4')).toBeCloseTo(3.3 / 43, 6);
  expect(typical(s3, 'GPIO17')).toBeCloseTo(3.3 / 76, 6);
  expect(typical(s3, 'GPIO19')).toBeCloseTo(3.3 / 26.5, 6);
  const chosen = { extends: 'esp32-s3', drive: { defaults: { GPIO17: '40 mA' } } };
  expect(typical(chosen, 'GPIO17')).toBeCloseTo(3.3 / 26.5, 6);
});

test('a row of output levels that names pins holds for them alone, and in place of the others', () => {
  const weak = { pins: ['PC13..PC15'], value: 'typ 3 V', at: '1 mA', supply: '3.3 V' };
  const rest = { value: 'typ 2.8 V', at: '10 mA', supply: '3.3 V' };
  const chip = { extends: 'stm32f103c8', 'output-high': [rest, weak] };
  expect(typical(chip, 'PC14')).toBeCloseTo(3.3 / 310, 6);
  expect(typical(chip, 'PA0')).toBeCloseTo(3.3 / 60, 6);
});
