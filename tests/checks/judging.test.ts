/** The rules of judgement that are about more than one rule of the list: each is named by its number in the format. */
import { describe, expect, it } from 'vitest';
import { LIMIT_RULES, RULE_NAMES } from '../../src/checks/rules.js';
import { VERDICTS, worstOf } from '../../src/checks/verdict.js';
import { asks } from '../../src/wording/sentences.js';
import { CASES } from './cases/all.js';
import { onBoard, onChip, onSupplies } from './cases/case.js';
import { findingsOf, judged, told } from './judged.js';

const account = (text: string, id: string, direction: string, quantity = 'current') => {
  const { accounts } = judged(text);
  const found = accounts.find(({ account: a }) => a.id === id && a.direction === direction && a.quantity === quantity);
  if (found === undefined) throw new Error(`no account ${id}, ${quantity}, ${direction}`);
  return found;
};

/** A diode, so that only the pin is in question. */
const CLAMPED = 'clamp: { part: diode-1n4148 }';

describe('a coil on a pin (rule 2)', () => {
  it.each([
    ['a bare coil', 'a: { type: coil, voltage: 5 V, resistance: 5 kΩ, pin: PB1 }'],
    [
      'a bare coil between the supply and the pin',
      'a: { type: coil, voltage: 5 V, resistance: 5 kΩ, pin: PB1, active: low }',
    ],
    [
      'a bare coil with a resistor before it',
      'a: { type: coil, voltage: 5 V, resistance: 5 kΩ, pin: PB1, series: 1 kΩ }',
    ],
    ['a bare motor', 'a: { type: dc-motor, run: 1 mA, stall: 2 mA, pin: PB1 }'],
    [
      'a relay board without transistors',
      'a: { type: relay-board, inputs: { 1: PB1 }, supply: bench, input: { active: high, coupling: none }, coil: { voltage: 5 V, resistance: 5 kΩ } }',
    ],
  ])('is never silent and, unclamped, a breach however little it takes: %s', (_, load) => {
    expect(findingsOf(onChip(load), 'coil-on-pin').map((f) => f.verdict)).toEqual(['breach']);
    expect(findingsOf(onChip(load), 'coil-no-clamp').map((f) => f.verdict)).toEqual(['breach']);
  });

  it('leaves the account of the pin alone, which may be sound', () => {
    const text = onChip('a: { type: coil, voltage: 5 V, resistance: 500 Ω, pin: PB1 }');
    expect(account(text, 'main.PB1', 'source').verdict).toBe('sound');
    expect(judged(text).verdict).toBe('breach');
  });

  it('is a strain only by the current that is promised, whatever the damage limit would bear', () => {
    const load = `a: { type: coil, voltage: 5 V, resistance: 225 Ω, pin: PB1, ${CLAMPED} }`;
    // 20 mA of 20 mA leave nothing in hand; of 25 mA they leave a fifth.
    const promised = (amps: string) => ({
      ambient: '20 °C',
      limits: `{ applies-to: each-pin, source: ${amps}, grade: characterised }`,
    });
    expect(findingsOf(onChip(load, promised('20 mA')), 'coil-on-pin')[0]?.verdict).toBe('breach');
    expect(findingsOf(onChip(load, promised('24.9 mA')), 'coil-on-pin')[0]?.verdict).toBe('breach');
    expect(findingsOf(onChip(load, promised('25 mA')), 'coil-on-pin')[0]?.verdict).toBe('strain');
  });
});

describe('findings (rule 4)', () => {
  const limitRules = new Set(LIMIT_RULES.map((r) => r.name));
  // Together: every rule with every verdict it has.
  const all = CASES.map((c) => [`${c.rule} ${c.when}`, c.text] as const);

  it.each(all)('%s', (_, text) => {
    const { accounts, findings, verdict } = judged(text);
    // They tell of every account worse than sound exactly once, by a rule about limits.
    const ofLimits = findings.filter((f) => limitRules.has(f.rule) && f.runaway === undefined);
    for (const { account: a, verdict: own } of accounts) {
      const about = ofLimits.filter((f) => f.account === a);
      expect(about.map((f) => f.verdict)).toEqual(own === 'sound' ? [] : [own]);
    }
    // What is only worth knowing until firmware runs is told of an account that holds once it does.
    const ofStart = ofLimits.filter((f) => f.verdict === 'note' && f.account?.mode === 'boot');
    const others = ofLimits.filter((f) => !ofStart.includes(f) && !accounts.some((j) => j.account === f.account));
    expect(others.map((f) => [f.rule, f.verdict, f.account?.mode])).toEqual([]);
    // They stand worst first, and the worst is the headline.
    const order = findings.map((f) => VERDICTS.indexOf(f.verdict) * RULE_NAMES.length + RULE_NAMES.indexOf(f.rule));
    expect(order).toEqual([...order].sort((x, y) => x - y));
    const worst = worstOf(findings.filter((f) => f.waiver === undefined).map((f) => f.verdict));
    expect(verdict).toBe(worst === 'note' ? 'sound' : worst);
  });

  it('are sound in the headline when there is nothing worse than notes', () => {
    const { findings, verdict } = judged(
      onBoard('a: { part: relay-board-opto-low-5v-1, inputs: { 1: D4 }, supply: main.5v, isolation: not-needed }'),
    );
    expect(findings.map((f) => f.verdict)).toEqual(['note']);
    expect(verdict).toBe('sound');
  });
});

describe('margins (rules 5 and 6)', () => {
  const draw = (policy: string) =>
    onSupplies(
      'bench: { voltage: 5 V, current: 1 A }',
      'a: { type: constant-current, current: 700 mA, supply: bench }',
    ).replace('policy: everyday', `policy: ${policy}`);

  it.each([
    ['everyday', 'silent'],
    ['classroom', 'silent'],
    ['{ current: 30 % }', 'silent'],
    ['{ current: 31 % }', 'thin'],
    // What it does not spell out it takes from the everyday policy.
    ['{ drive: 50 % }', 'silent'],
  ])('are kept as the policy says: 30 % in hand under %s', (policy, verdict) => {
    expect(findingsOf(draw(policy), 'supply-current').map((f) => f.verdict)).toEqual(
      verdict === 'silent' ? [] : [verdict],
    );
  });

  it('take over from the everyday policy what one that is spelled out leaves open', () => {
    const text = onSupplies(
      'bench: { voltage: 5 V, current: 1 A }',
      'a: { type: constant-current, current: 810 mA, supply: bench }',
    ).replace('policy: everyday', 'policy: { drive: 50 % }');
    expect(findingsOf(text, 'supply-current').map((f) => f.verdict)).toEqual(['thin']);
  });

  it('are the share of the limit, of what is needed, or of the permitted rise', () => {
    expect(account(draw('everyday'), 'bench', 'at-most').margin).toBeCloseTo((1 - 0.7) / 1, 12);
    const coil = onSupplies(
      'cell: { voltage: 4.4 V, current: 1 A }',
      'a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: cell, pull-in: typ 3 V max 4 V, thermal-resistance: 0.001 K/W }',
      { ambient: '20 °C' },
    );
    expect(account(coil, 'a.coil', 'at-least', 'voltage').margin).toBeCloseTo((4.4 - 4) / 4, 4);
    const warm = onBoard('a: { type: constant-current, current: 50 mA, supply: main.3v3 }', {
      powered: '5v: bench',
      regulators: 'regulator-3v3: { voltage: 3.3 V, quiescent: 0 mA, thermal-resistance: 500 K/W }',
    });
    // 1.7 V x 50 mA x 500 K/W = 42.5 K of the 100 K from 25 to 125 °C.
    expect(account(warm, 'main.regulator-3v3', 'at-most', 'temperature').margin).toBeCloseTo(0.575, 9);
  });

  it('are those of the limit that gives the verdict, where there are several', () => {
    // 20.2 mA are past what is promised to 20 mA, and far below the damage limit of 40 mA.
    const pin = account(
      onChip('a: { type: resistor, resistance: 222.5 Ω, power: 5 W, pin: PB1 }'),
      'main.PB1',
      'source',
    );
    expect(pin.by?.limit.grade).toBe('characterised');
    expect(pin.margin).toBeCloseTo((20 - 5 / 0.2475) / 20, 9);
    // 41.7 mA are past both: a breach is worse than a strain, though the strain is further beyond.
    const broken = account(
      onChip('a: { type: resistor, resistance: 95 Ω, power: 5 W, pin: PB1 }'),
      'main.PB1',
      'source',
    );
    expect(broken.by?.limit.grade).toBe('absolute');
    expect(broken.margin).toBeCloseTo((40 - 5 / 0.12) / 40, 9);
  });
});

describe('what is taken when the file is silent (rules 8 and 9)', () => {
  const coil = (volts: string): string =>
    onSupplies(
      `cell: { voltage: ${volts}, current: 1 A }`,
      'a: { type: coil, voltage: 5 V, resistance: 100 Ω, supply: cell }',
      { ambient: '20 °C' },
    );

  it('is 55, 65, 75 % of nominal for pull-in: typical fails below the middle, the worst below the top', () => {
    expect(findingsOf(coil('3.24 V'), 'coil-pull-in').map((f) => f.verdict)).toEqual(['breach']);
    expect(findingsOf(coil('3.5 V'), 'coil-pull-in').map((f) => f.verdict)).toEqual(['strain']);
    expect(findingsOf(coil('3.74 V'), 'coil-pull-in').map((f) => f.verdict)).toEqual(['strain']);
    // 5 % more, and what the coil's own heat of up to 25 K asks for.
    expect(findingsOf(coil('4.2 V'), 'coil-pull-in')).toEqual([]);
    expect(judged(coil('4.2 V')).project.assumptions.some((a) => /pull-in/.test(a.says))).toBe(true);
  });

  it('is one and a half times a typical draw, and half a second of stall', () => {
    const text = onSupplies(
      'bench: { voltage: 5 V, current: 1 A }',
      'a: { type: module, active: typ 20 mA, supply: bench }\nb: { type: dc-motor, run: typ 100 mA, stall: 300 mA, supply: bench }',
    );
    // 1.5 x 20 mA of module, and the motor's stall as a peak.
    expect(account(text, 'bench', 'at-most').account.draw?.max).toBeCloseTo(0.33, 9);
    const says = judged(text).project.assumptions.map((a) => a.says);
    expect(says.some((s) => s.includes('0.5 s'))).toBe(true);
    expect(says.some((s) => s.includes('1.5 times'))).toBe(true);
  });

  it('is twice a radio’s typical draw', () => {
    // The nRF24L01+ receives on typically 13.5 mA.
    const text = onSupplies('bench: { voltage: 3.3 V, current: 1 A }', 'a: { part: radio-nrf24l01, supply: bench }');
    expect(account(text, 'bench', 'at-most').account.draw?.max).toBeCloseTo(0.027, 9);
    expect(judged(text).project.assumptions.some((a) => a.says.includes('2 times'))).toBe(true);
  });

  it('is the jumper off, the grounds joined and no isolation, said aloud', () => {
    const says = judged(
      onBoard('a: { part: relay-board-opto-low-5v-1, inputs: { 1: D4 }, logic-supply: main.5v, coil-supply: bench }'),
    )
      .project.assumptions.filter((a) => a.about === 'a')
      .map((a) => a.says);
    expect(says.some((s) => /jumper is removed/.test(s))).toBe(true);
    expect(says.some((s) => /grounds are joined/.test(s))).toBe(true);
  });

  it('is the jumper on where one supply is given for both sides', () => {
    const { circuits } = judged(
      onBoard('a: { part: relay-board-opto-low-5v-1, inputs: { 1: D4 }, supply: main.5v }'),
    ).project;
    expect(circuits[0]?.wiring.board?.jumper).toBe('fitted');
  });

  it.each([
    [
      'active',
      /low or a high/,
      'coupling: opto, indicator: none, series: 1 kΩ, led-drop: 1.2 V, transfer-ratio: 200 %',
    ],
    ['indicator', /indicator/, 'coupling: opto, active: low, series: 1 kΩ, led-drop: 1.2 V, transfer-ratio: 200 %'],
  ])('is never whether a board is %s: without it the board is unproven, with the question', (_, question, input) => {
    const { findings, verdict } = judged(
      onBoard(
        `a: { type: relay-board, inputs: { 1: D4 }, supply: main.5v, input: { ${input}, led-maximum-current: 50 mA }, coil: { voltage: 5 V, resistance: 70 Ω }, output: { type: npn, gain: 100, base-resistor: 1 kΩ, maximum-current: 500 mA, maximum-voltage: 30 V }, clamp: { type: diode, current: 1 A } }`,
      ),
    );
    expect(verdict).toBe('unproven');
    expect(findings.some((f) => question.test(asks(f) ?? ''))).toBe(true);
  });

  it.each(['pull-in', 'drop-out', 'maximum'])(
    'is nothing where the file calls a coil’s %s unknown: unproven, and never a usual share of it',
    (key) => {
      const text = onSupplies(
        'cell: { voltage: 5 V, current: 1 A }',
        `a: { part: relay-coil-5v-70r, supply: cell, ${key}: unknown }`,
      );
      expect(judged(text).verdict).toBe('unproven');
    },
  );

  // Not so yet: a resistor that is called unknown counts as not fitted.
  it('is no short circuit where the file calls a resistor unknown', () => {
    const text = onChip('a: { part: led-red-5mm, pin: PB1, series: unknown }');
    expect(told(judged(text)).filter((line) => !line.startsWith('unproven'))).toEqual([]);
    expect(judged(text).verdict).toBe('unproven');
  });

  it('makes as many circuits as `count` says, and takes over with `like` all but the connections', () => {
    const { circuits } = judged(
      onChip(
        `mist: { part: relay-coil-5v-70r, supply: bench, driver: { part: npn-2n2222a, pin: PB1, base-resistor: 1 kΩ }, ${CLAMPED} }\ndrip: { like: mist, pin: PB2 }\nlamps: { type: resistor, resistance: 1 kΩ, supply: bench, count: 3 }`,
      ),
    ).project;
    expect(circuits.map((c) => c.id)).toEqual(['mist', 'drip', 'lamps.1', 'lamps.2', 'lamps.3']);
    expect(circuits[1]?.wiring).toMatchObject({ by: 'driver', pin: 'main.PB2', clamp: 'fitted' });
  });
});

describe('a driver that is too weak (rule 12)', () => {
  it('is booked with all that its load would take, at its lowest saturation', () => {
    const load = (gain: string) =>
      onChip(
        `a: { type: resistor, resistance: 50 Ω, power: 5 W, supply: bench, driver: { type: npn, pin: PB1, base-resistor: 2.1 kΩ, saturation: typ 0.2 V max 0.5 V, maximum-current: 1 A, maximum-voltage: 30 V, thermal-resistance: 100 K/W, gain: ${gain} } }`,
      );
    expect(judged(load('15')).verdict).toBe('breach');
    // A lowest saturation is not stated below the typical 0.2 V: (5 - 0.2) V / 50 Ω.
    for (const gain of ['15', '200'])
      expect(account(load(gain), 'a.driver', 'at-most').account.draw?.max).toBeCloseTo(0.096, 9);
  });
});

describe('grounds (rule 19)', () => {
  const board = (part: string, grounds: string) =>
    onBoard(
      `a: { part: ${part}, inputs: { 1: D4 }, ${part.includes('opto') ? 'logic-supply: main.5v, ' : ''}coil-supply: brick${grounds} }`,
      {
        supplies: 'bench: { voltage: 5 V, current: 5 A }, brick: { voltage: 5 V, current: 2 A }',
      },
    );

  it.each([
    ['relay-board-transistor-high-5v-1', ', grounds: separate', ['breach']],
    ['relay-board-transistor-high-5v-1', ', grounds: joined', []],
    ['relay-board-transistor-high-5v-1', '', []],
    ['relay-board-opto-low-5v-1', ', grounds: separate', []],
    ['relay-board-opto-low-5v-1', '', []],
  ])('join unless they are called separate, and a signal needs them: %s%s', (part, grounds, verdicts) => {
    expect(findingsOf(board(part, grounds), 'ground-missing').map((f) => f.verdict)).toEqual(verdicts);
  });
});

describe('states (rule 20)', () => {
  /** Two pins at 20 mA each; with the chip's 10 mA both are 50 mA on the supply pins, and one of them 30 mA. */
  const PAIR =
    'a: { type: resistor, resistance: 225 Ω, power: 5 W, pin: PB1 }\nb: { type: resistor, resistance: 225 Ω, power: 5 W, pin: PB2 }';
  const pair = (more: string, grade = 'absolute') =>
    onChip(PAIR, {
      policy: 'classroom',
      limits: `{ applies-to: supply-pins, source: 40 mA, grade: absolute }, { applies-to: [PB1, PB2], name: pair, source: ${grade === 'operating' ? '30 mA' : '1 A'}, grade: operating }`,
      more,
    });
  const atMost = (by: string) => `interlocks: [ { at-most: 1, of: [a, b], by: ${by} } ]`;

  it('without modes are the worst combination that the interlocks allow', () => {
    expect(told(judged(pair('')))).toEqual(['breach total-current main.supply-pins']);
    expect(account(pair(''), 'main.supply-pins', 'source').account.mode).toBe('free');
    expect(account(pair(atMost('wiring')), 'main.supply-pins', 'source').account.draw?.max).toBeCloseTo(0.03, 9);
  });

  it('are judged each where there are modes, the worst named', () => {
    const text = pair('modes: { one: { active: [a] }, both: { active: [a, b] }, none: { active: [] } }');
    const { account: supply, verdict } = account(text, 'main.supply-pins', 'source');
    expect([supply.mode, verdict]).toEqual(['both', 'breach']);
    expect(judged(text, 'one').verdict).toBe('sound');
  });

  it('strain where only firmware keeps an absolute limit', () => {
    const { findings, verdict } = judged(pair(atMost('firmware')));
    expect(findings.filter((f) => f.runaway).map((f) => `${f.verdict} ${f.rule}`)).toEqual(['strain total-current']);
    expect(verdict).toBe('strain');
    expect(judged(pair(atMost('wiring'))).findings).toEqual([]);
  });

  it('strain where modes promise what only firmware keeps', () => {
    const { findings } = judged(pair('modes: { a: { active: [a] }, b: { active: [b] } }'));
    expect(findings.map((f) => [f.verdict, f.rule, f.runaway])).toEqual([['strain', 'total-current', true]]);
  });

  it('are a note where firmware keeps a working limit', () => {
    const text = pair(atMost('firmware'), 'operating').replace('source: 40 mA', 'source: 60 mA');
    expect(judged(text).findings.map((f) => [f.verdict, f.rule, f.runaway])).toEqual([['note', 'group-current', true]]);
    expect(judged(text).verdict).toBe('sound');
  });

  it('strain where firmware keeps something from burning', () => {
    // One load of 30 mA: 1.7 V x 30 mA x 1000 K/W = 51 K; both 102 K, past 125 °C: for its heat it may give 58.8 mA.
    const text = onBoard(
      'a: { type: constant-current, current: 30 mA, supply: main.3v3, switched: elsewhere }\nb: { type: constant-current, current: 30 mA, supply: main.3v3, switched: elsewhere }',
      {
        policy: 'classroom',
        powered: '5v: bench',
        regulators: 'regulator-3v3: { voltage: 3.3 V, quiescent: 0 mA, thermal-resistance: 1000 K/W }',
        more: 'modes: { a: { active: [a] }, b: { active: [b] } }',
      },
    );
    const beyond = judged(text).findings.filter((f) => f.runaway);
    expect(beyond.map((f) => `${f.verdict} ${f.rule}`)).toEqual([
      'strain regulator-heat',
      'strain regulator-current',
      'note rail-current',
    ]);
  });

  it('count a circuit that no mode names as on in every mode, and say so', () => {
    const text = pair('modes: { one: { active: [a] } }');
    expect(account(text, 'main.supply-pins', 'source').account.draw?.max).toBeCloseTo(0.05, 9);
    expect(judged(text).project.assumptions.some((a) => a.about === 'b' && /every mode/.test(a.says))).toBe(true);
  });
});

describe('a pin used twice (rule 23)', () => {
  const lamp = (name: string, pin: string, more = ''): string =>
    `${name}: { part: led-red-5mm, pin: ${pin}, series: 1 kΩ${more} }`;
  const bus = (name: string, signals: string): string =>
    `${name}: { part: display-oled-128x64, supply: main.5v, signals: { ${signals} } }`;
  it.each([
    ['several lamps of one level on one pin', [lamp('a', 'D2'), lamp('b', 'D2'), lamp('c', 'D2')], []],
    ['two modules on one bus', [bus('a', 'sda: A4, scl: A5'), bus('b', 'sda: A4, scl: A5')], []],
    ['a lamp and a header name of the same pin', [lamp('a', 'D2'), lamp('b', 'PD2', ', active: low')], ['main.D2']],
    ['lamps of opposite levels', [lamp('a', 'D2'), lamp('b', 'D2', ', active: low')], ['main.D2']],
    [
      'a bus whose lines are crossed',
      [bus('a', 'sda: A4, scl: A5'), bus('b', 'sda: A5, scl: A4')],
      ['main.A4', 'main.A5'],
    ],
    ['two select lines, which nothing shares', [bus('a', 'select: D2'), bus('b', 'select: D2')], ['main.D2']],
    ['a lamp on a bus line', [bus('a', 'sda: A4, scl: A5'), lamp('b', 'A5')], ['main.A5']],
  ])('is a breach or not: %s', (_, loads, pins) => {
    const findings = findingsOf(onBoard(loads.join('\n')), 'pin-used-twice');
    expect(findings.map((f) => f.about).sort()).toEqual(pins);
    expect(findings.every((f) => f.verdict === 'breach')).toBe(true);
  });
});
