/** When the load behind a contact is booked, on which supply, and as how much. */
import { describe, expect, test } from 'vitest';
import { judged } from '../checks/judged.js';
import { accountsOf } from './read-account.js';

const on = (contact: string, more = ''): string => `ampledger: 1
title: Contact
ambient: 20 °C
supplies: { brick: { voltage: 5 V, current: 2 A }, big: { voltage: 24 V ±10 %, current: 5 A } }
loads:
  a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: brick, switched: elsewhere, contact-rating: [ { resistive: 10 A, voltage: 30 V DC } ],
       contact: { ${contact} } }
modes:
  set: { active: [a] }
  rest: { active: [] }
${more}`;
const load = (wired: string, type = 'resistive', more = ''): string =>
  on(`wired: ${wired}, load: { type: ${type}, voltage: 24 V DC, current: 1 A, supply: big${more} }`);
const asked = (text: string, mode: string): number => accountsOf(text, mode)('big', 'at-most').draw!.max;

describe('a load on a contact', () => {
  test.each([
    ['normally-open', 1.1, 0],
    ['normally-closed', 0, 1.1],
  ])('that is %s is booked while that is closed', (wired, set, rest) => {
    // 24 Ω on 26.4 V.
    expect(asked(load(wired), 'set')).toBeCloseTo(set, 9);
    expect(asked(load(wired), 'rest')).toBeCloseTo(rest, 9);
  });

  test('takes its current for its circuit, from its own supply and not from the coil’s', () => {
    const supply = accountsOf(load('normally-open'), 'set');
    expect(supply('big', 'at-most').entries).toEqual([
      { circuit: 'a', min: expect.closeTo(0.9, 9), typ: expect.closeTo(1, 9), max: expect.closeTo(1.1, 9) },
    ]);
    expect(supply('brick', 'at-most').draw!.max).toBeCloseTo(0.05, 9);
    expect(supply('a.contact', 'at-most').draw).toEqual(supply('big', 'at-most').draw);
  });

  test('asks its supply for what it takes when it starts, and its contact for what it takes then', () => {
    const motor = accountsOf(load('normally-closed', 'motor', ', stall: 4 A'), 'rest');
    expect(motor('big', 'at-most').draw!.max).toBeCloseTo(4, 9);
    expect(motor('a.contact', 'at-most').draw!.max).toBeCloseTo(1, 9);
    // A cold lamp takes 15 times as much unless somebody says otherwise: 15 A times 1.1.
    expect(asked(load('normally-open', 'lamp'), 'set')).toBeCloseTo(15 * 1.1, 6);
    expect(asked(load('normally-open', 'lamp', ', inrush: 5 A'), 'set')).toBeCloseTo(5 * 1.1, 6);
  });

  test('is fed over the wires that lead to its relay', () => {
    const text = on(
      'wired: normally-open, load: { type: resistive, voltage: 24 V DC, current: 1 A, supply: big }',
      'wires: [ { from: big, to: a, name: lead, resistance: 1 Ω, rating: 3 A } ]',
    );
    // 26.4 V over 24 Ω and 1 Ω each way.
    const lead = accountsOf(text, 'set')('lead', 'at-most').draw!.max;
    expect(asked(text, 'set')).toBeCloseTo(lead, 9);
    expect(lead).toBeLessThan(1.1);
    expect(lead).toBeGreaterThan(1);
  });

  test('that the file gives no supply is on none of the project’s', () => {
    const { accounts, project } = judged(on('load: { type: resistive, voltage: 230 V AC, current: 2 A }'));
    const contact = accounts.find((j) => j.account.id === 'a.contact')!;
    expect(contact.account.draw!.max).toBeCloseTo(2, 9);
    expect(accounts.filter((j) => j.account.kind === 'supply').map((j) => j.account.draw!.max)).toEqual([
      expect.closeTo(0.05, 9),
      0,
    ]);
    expect(project.cautions.join('\n')).toMatch(
      /a \(230 V AC\): this voltage kills.*protective earth.*Nothing here calls/,
    );
  });

  test('that turns much into heat is warned of, unless it is known to have to stop: then of what stops it', () => {
    const cautions = (text: string) => judged(text).project.cautions.join('\n');
    const heater = on('wired: normally-open, load: { type: resistive, voltage: 24 V DC, current: 3 A }');
    expect(cautions(heater)).toMatch(/^a: what turns so much into heat.*thermal cut-out/m);
    expect(cautions(heater.replace('3 A', '2 A'))).not.toContain('heat');
    expect(cautions(heater.replace('3 A }', '3 A }, safe-when: load-stopped'))).not.toContain('turns so much');
  });

  test('behind a solid-state relay gets less than its supply gives, and keeps what leaks', () => {
    const text = `ampledger: 1
title: Solid
ambient: 20 °C
supplies: { brick: { voltage: 5 V, current: 2 A } }
loads:
  a: { type: solid-state-relay, input: { led-drop: 1.2 V, series: 300 Ω, on-current: 5 mA }, supply: brick, switched: elsewhere,
       drop: 2 V, leakage: 5 mA, thermal-resistance: 5 K/W, maximum-junction: 125 °C,
       contact-rating: [ { resistive: 10 A, voltage: 280 V AC } ], contact: { load: { type: resistive, voltage: 230 V AC, current: 2 A } } }
`;
    const of = accountsOf(text);
    // 230 V - 2 V on 115 Ω; 2 V x 1.983 A x 5 K/W over 20 °C.
    expect(of('a.contact', 'at-most').draw!.max).toBeCloseTo(228 / 115, 9);
    expect(of('a.output', 'at-most', 'temperature').draw!.max).toBeCloseTo(20 + (2 * 228 * 5) / 115, 6);
    expect(of('a.leak', 'at-most').draw!.max).toBeCloseTo(5e-3, 9);
  });
});

describe('what a contact is held to', () => {
  const limits = (rows: string, contact: string) =>
    judged(`ampledger: 1
title: Rows
ambient: 20 °C
supplies: { brick: { voltage: 5 V, current: 2 A } }
loads:
  a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: brick, switched: elsewhere, contact-rating: [ ${rows} ], contact: { ${contact} } }
`)
      .accounts.find((j) => j.account.id === 'a.contact' && j.account.direction === 'at-most')!
      .account.limits.map(({ value, limit }) => `${Number(value.toPrecision(6))} ${limit.grade}`);

  test('is the share of practice and the resistive rating itself, where its kind has none', () => {
    const motor = 'load: { type: motor, voltage: 12 V DC, current: 1 A, stall: 4 A }';
    expect(limits('{ resistive: 10 A, voltage: 30 V DC }', motor)).toEqual([
      '2 practice',
      '10 operating',
      '2.5 practice',
    ]);
    expect(limits('{ resistive: 10 A, voltage: 30 V DC }, { motor: 3 A, voltage: 30 V DC }', motor)).toEqual([
      '3 operating',
      '2.5 practice',
    ]);
  });

  test('is the side that it hangs on, where rows tell the sides apart', () => {
    const rows =
      '{ resistive: 10 A, voltage: 250 V AC }, { resistive: 5 A, voltage: 250 V AC, wired: normally-closed }';
    const heater = 'load: { type: resistive, voltage: 230 V AC, current: 1 A }';
    expect(limits(rows, `wired: normally-open, ${heater}`)).toEqual(['10 operating']);
    expect(limits(rows, `wired: normally-closed, ${heater}`)).toEqual(['5 operating']);
  });

  test('is the resistive rating for a valve with a diode across it', () => {
    const valve = 'load: { type: inductive, voltage: 24 V DC, current: 1 A }';
    expect(limits('{ resistive: 10 A, voltage: 30 V DC }', valve)).toEqual(['4 practice', '10 operating']);
    expect(limits('{ resistive: 10 A, voltage: 30 V DC }', `${valve}, suppression: { type: diode }`)).toEqual([
      '10 operating',
    ]);
  });
});

describe('a contact that is rated by several rows', () => {
  const of = (rows: string, load: string, coil = '') =>
    accountsOf(
      on(`wired: normally-open, ${load}`)
        .replace('{ resistive: 10 A, voltage: 30 V DC }', rows)
        .replace('resistance: 100 Ω', `resistance: 100 Ω${coil}`),
      'set',
    );
  const plain = (amps: string) => `load: { type: resistive, voltage: 24 V DC, current: ${amps} }`;

  test('may switch what the best of those that reach its voltage allows', () => {
    const rows = '{ resistive: 5 A, voltage: 28 V DC, operations: 300000 }, { resistive: 10 A, voltage: 30 V DC }';
    expect(of(rows, plain('7 A'))('a.contact', 'at-most').limits[0]!.value).toBe(10);
  });

  test('lasts as long as the best of those that bear its load: 300 000 of 10 a day, 100 000 of 10 a day', () => {
    const rows =
      '{ resistive: 10 A, voltage: 30 V DC, operations: 100000 }, { resistive: 5 A, voltage: 30 V DC, operations: 300000 }';
    const days = (amps: string) =>
      of(rows, plain(amps), ', operations: 20 /day')('a.contact', 'at-least', 'time').draw!.min / 86_400;
    expect(days('4 A')).toBeCloseTo(30_000, 6);
    expect(days('6 A')).toBeCloseTo(10_000, 6);
  });

  test('wants the least that any row asks for which its voltage reaches', () => {
    const rows =
      '{ resistive: 10 A, voltage: 30 V DC }, { minimum: 100 mA, voltage: 5 V }, { minimum: 5 mA, voltage: 20 V }';
    expect(of(rows, plain('1 A'))('a.contact', 'at-least').limits[0]!.value).toBe(0.005);
  });
});

test('a load for 12 V on a supply of 24 V takes twice its current, and its contact breaks 24 V', () => {
  const text = load('normally-open').replace('24 V DC', '12 V DC').replace('voltage: 30 V DC', 'voltage: 15 V DC');
  const { accounts } = judged(text);
  const told = accounts.filter((j) => /^a.(contact|load)$/.test(j.account.id));
  expect(told.map((j) => [j.account.id, j.account.draw!.max, j.verdict])).toEqual([
    ['a.contact', expect.closeTo(2.2, 9), 'unproven'],
    ['a.load', 26.4, 'breach'],
  ]);
});

describe('both sides of a changeover', () => {
  const both = on(
    'wired: normally-open, load: { type: resistive, voltage: 24 V DC, current: 1 A, supply: big }, other-side: { load: { type: resistive, voltage: 24 V DC, current: 0.5 A, supply: big } }',
  );

  test('take turns on their supply: 26.4 V over 24 Ω while the coil is on, over 48 Ω while it is off', () => {
    expect(asked(both, 'set')).toBeCloseTo(1.1, 9);
    expect(asked(both, 'rest')).toBeCloseTo(0.55, 9);
  });

  test('are judged each by itself, whichever is the one that is named first', () => {
    const at = (text: string, id: string): number => accountsOf(text, 'rest')(id, 'at-most').draw!.max;
    expect(at(both, 'a.other-contact')).toBeCloseTo(0.55, 9);
    const turned = both.replace('wired: normally-open', 'wired: normally-closed');
    expect(asked(turned, 'set')).toBeCloseTo(0.55, 9);
    expect(asked(turned, 'rest')).toBeCloseTo(1.1, 9);
  });

  test.each([
    ['A', 'its contacts are of form A'],
    ['B', 'its contacts are of form B'],
  ])('are not those of a relay of form %s', (form, says) => {
    const wired = form === 'B' ? both.replace('wired: normally-open', 'wired: normally-closed') : both;
    expect(() => judged(wired.replace('resistance: 100 Ω', `resistance: 100 Ω, contact-form: ${form}`))).toThrow(says);
  });
});

describe('what a closed contact keeps', () => {
  const text = load('normally-open', 'motor', ', stall: 2 A, supply-voltage: 20 to 27 V').replace(
    'resistance: 100 Ω',
    'resistance: 100 Ω, contact-resistance: 50 to 100 mΩ',
  );
  const at = (id: string, direction: string, quantity: string) =>
    accountsOf(text, 'set')(id, direction, quantity).draw!;

  test('is its resistance times the load’s current, and heats it', () => {
    const { min, max } = at('a.contact-resistance', 'at-most', 'voltage');
    expect(min).toBeCloseTo(0.05, 9);
    expect(max).toBeCloseTo(0.1, 9);
    expect(at('a.contact-resistance', 'at-most', 'power').max).toBeCloseTo(0.1, 9);
  });

  test('is missing at the load', () => {
    expect(at('a.load', 'at-least', 'voltage').min).toBeCloseTo(21.6 - 0.1, 9);
    expect(at('a.load', 'at-most', 'voltage').max).toBeCloseTo(26.4 - 0.05, 9);
  });
});

describe('what takes a load’s current over', () => {
  const across = (suppression: string, of = 'voltage: 230 V AC, current: 1 A') =>
    on(`wired: normally-open, load: { type: inductive, ${of} }, suppression: { ${suppression} }`);
  const energy = (text: string): number => accountsOf(text, 'set')('a.suppression', 'at-most', 'energy').draw!.max;

  test('gets what a load of a power factor of 0.4 stores where nobody states its inductance: 230 W · 0.917 / 314 /s', () => {
    expect(energy(across('type: varistor, working-voltage: 275 V AC, energy: 10 J'))).toBeCloseTo(0.67098, 4);
  });

  test('gets that of an electromagnet on direct voltage: 24 W rise within 144 ms, L/R is a third of that', () => {
    const text = across('type: tvs, zener-voltage: 33 V, energy: 1 J', 'voltage: 24 V DC, current: 1 A');
    expect(energy(text)).toBeCloseTo((0.5 * 0.144 * 24) / 3, 9);
  });

  test('keeps a load going behind a diode: 240 mH / 24 Ω · ln 10 are 23 ms to a tenth of its current', () => {
    const text = across('type: diode', 'voltage: 24 V DC, current: 1 A, inductance: 240 mH');
    const steps = accountsOf(text, 'set')('a.suppression', 'at-most').steps();
    expect(1000 * steps.find((s) => s.name === 't_load')!.gives[0]).toBeCloseTo(10 * Math.log(10), 6);
  });

  test('bears the mains a tenth above its nominal voltage, a suppressor its peak', () => {
    const volts = (suppression: string): number =>
      accountsOf(across(suppression), 'set')('a.suppression', 'at-most', 'voltage').draw!.max;
    expect(volts('type: varistor, working-voltage: 275 V AC')).toBeCloseTo(253, 9);
    expect(volts('type: tvs, working-voltage: 400 V')).toBeCloseTo(253 * Math.SQRT2, 9);
  });
});

test('a relay of 12 V whose driver bears 25 V is told of a zener of 9.1 V, since 12 V and a diode on top of its supply are too much', () => {
  const told = (maximum: string) =>
    judged(`ampledger: 1
title: Slow
ambient: 20 °C
supplies: { five: { voltage: 5 V, current: 1 A }, brick: { voltage: 12 V, current: 1 A } }
controllers: { main: { chip: atmega328p, supply: five } }
loads:
  a: { type: coil, voltage: 12 V, resistance: 300 Ω, inductance: 300 mH, supply: brick, clamp: { type: diode, current: 1 A },
       driver: { type: nmos, pin: PB1, pull-down: 100 kΩ, on-resistance: { value: 0.1 Ω, at: 4.5 V }, maximum-current: 1 A, maximum-voltage: ${maximum}, thermal-resistance: 200 K/W },
       contact-rating: [ { lamp: 1 A, voltage: 30 V DC } ], contact: { wired: normally-open, load: { type: lamp, voltage: 24 V DC, current: 500 mA } } }
`).findings.find((f) => f.rule === 'contact-slow')?.names['zener'];
  expect([told('60 V'), told('25 V'), told('19 V')]).toEqual(['24 V', '9.1 V', undefined]);
});

test('a load on a normally closed contact runs while the supply of its coil is dead, whatever the firmware wants', () => {
  const text = load('normally-closed').replace('rest: { active: [] }', 'dark: { active: [a], without: [brick] }');
  expect(asked(text, 'set')).toBeCloseTo(0, 9);
  expect(asked(text, 'dark')).toBeCloseTo(1.1, 9);
});
