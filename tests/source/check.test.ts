import { describe, expect, it } from 'vitest';
import { checkEntry, checkFrame, isEntryKind } from '../../src/source/check.js';
import { renderDiagnostic } from '../../src/source/diagnostic.js';
import { readDocument } from '../../src/source/read.js';
import { checkText } from './check-text.js';
import { marked } from './marked.js';

/** What is wrong, the project, and each problem as '[marked text] sentence' and its advice. */
const table: readonly (readonly [string, string, readonly (readonly [string, string?])[]])[] = [
  [
    'a key with a slip',
    'loads: { heartbeat: { type: led, seires: 330 Ω } }',
    [['[seires] unknown key `seires` in load `heartbeat`', 'did you mean `series`?']],
  ],
  [
    'a key of another type of load',
    'loads: { lamp: { type: led, phases-on: 2 } }',
    [
      [
        '[phases-on] unknown key `phases-on` in load `lamp`',
        '`phases-on` belongs to a `stepper`, and this is an `led`',
      ],
    ],
  ],
  [
    'a key of several other types of load',
    'loads: { lamp: { type: led, stall: 3 V } }',
    [['[stall] unknown key `stall` in load `lamp`', '`stall` belongs to `dc-motor` and `servo`, and this is an `led`']],
  ],
  [
    'a key of another type of driver',
    'loads: { a: { type: coil, driver: { type: npn, gate-resistor: 1 Ω } } }',
    [
      [
        '[gate-resistor] unknown key `gate-resistor` in `driver` of load `a`',
        '`gate-resistor` belongs to `nmos` and `pmos`, and this is an `npn`',
      ],
    ],
  ],
  [
    'a pin of a relay board',
    'loads: { v: { type: relay-board, pin: D4 } }',
    [
      [
        '[pin] unknown key `pin` in load `v`',
        'a relay board has its pins under `inputs`, by channel: inputs: { 1: D4 }',
      ],
    ],
  ],
  [
    'a key that is near to nothing',
    'interlocks: [{ at-most: 1, of: [a], banana: 3 }]',
    [['[banana] unknown key `banana` in interlock 1', 'known here: at-most, of, by, needs, excludes, for']],
  ],
  [
    'a section with a slip',
    'suplies: {}',
    [['[suplies] unknown key `suplies` at the top level', 'did you mean `supplies`?']],
  ],
  [
    'a comma in a quantity',
    'loads: { a: { type: resistor, resistance: 62 Ω, ±10 % } }',
    [
      [
        '[±10 %] `±10 %` stands in load `a` like a key',
        'a comma ends a value inside braces: write `resistance: 62 Ω ±10 %`',
      ],
    ],
  ],
  [
    'a comma before a typical value',
    'supplies: { a: { voltage: 5 V, typ 4.9 V } }',
    [
      [
        '[typ 4.9 V] `typ 4.9 V` stands in supply `a` like a key',
        'a comma ends a value inside braces: write `voltage: 5 V typ 4.9 V`',
      ],
    ],
  ],
  [
    'a comma in a text',
    'loads: { a: { type: led, note: red, and a bit dim } }',
    [
      [
        '[and a bit dim] `and a bit dim` stands in load `a` like a key',
        'a comma ends a text inside braces: put the text in quotes',
      ],
    ],
  ],
  [
    'a colon without its space',
    'loads: { a: { type: led, pin:D4 } }',
    [['[pin:D4] `pin:D4` is read as one key in load `a`', 'a space belongs after the colon: `pin: D4`']],
  ],
  [
    'a colon without its space where a mapping is due',
    'loads: { a: type:led }',
    [['[type:led] `a` in `loads` cannot be `type:led`', 'a space belongs after the colon: `type: led`']],
  ],
  [
    'a value of the wrong type',
    'loads: { a: { type: led, pin: true, count: two, series: [1] } }',
    [
      ['[true] `pin` in load `a` cannot be `true`', 'it wants a name'],
      ['[two] `count` in load `a` cannot be `two`', 'it wants a whole number'],
      ['[[1]] `series` in load `a` cannot be a list', 'it wants a quantity or { resistance, power, bypass }'],
    ],
  ],
  [
    'a value that is missing',
    'loads: { a: { type: led, pin: } }',
    [['[pin] `pin` in load `a` has no value', 'it wants a name']],
  ],
  [
    'a number where a text is due',
    'supplies: { a: { type: 5 } }',
    [['[5] `type` in supply `a` cannot be `5`', 'it wants a text: put it in quotes']],
  ],
  [
    'a word that other YAML readers take for true',
    'loads: { v: { type: relay-board, jumper: yes } }',
    [['[yes] `jumper` in load `v` cannot be `yes`', 'it is `fitted` or `removed`']],
  ],
  [
    'a word with a slip',
    'loads: { v: { type: relay-board, grounds: seperate } }',
    [['[seperate] `grounds` in load `v` cannot be `seperate`', 'did you mean `separate`?']],
  ],
  [
    'a type with a slip',
    'loads: { a: { type: colil } }',
    [['[colil] `type` in load `a` cannot be `colil`', 'did you mean `coil`?']],
  ],
  [
    'a count beyond all reason',
    'loads: { a: { type: led, count: 1000000 }, b: { type: led, count: 0 } }',
    [
      ['[1000000] `count` in load `a` cannot be `1000000`', 'at most 1000'],
      ['[0] `count` in load `b` cannot be `0`', 'at least 1'],
    ],
  ],
  [
    'an entry that does not say what it is',
    'loads: { a: {} }',
    [['[a] load `a` does not say what it is', 'it needs `part`, `type` or `like`']],
  ],
  [
    'a supply, a controller and a clamp that do not say what they are',
    'supplies: { s: { current: 1 A } }, controllers: { c: {} }, loads: { a: { type: coil, clamp: {} } }',
    [
      ['[s] supply `s` does not say what it is', 'it needs `type`, or its `voltage`'],
      ['[c] controller `c` does not say what it is', 'it needs `board` or `chip`'],
      ['[clamp] `clamp` of load `a` does not say what it is', 'it needs `part` or `type`'],
    ],
  ],
  [
    'an entry that is a list',
    'loads: { a: [1] }',
    [['[[1]] `a` in `loads` cannot be a list', 'it wants { part, type, like }']],
  ],
  ['an entry that is nothing', 'loads: { a: }', [['[a] `a` in `loads` has no value', 'it wants { part, type, like }']]],
  [
    'a name with a dot',
    'loads: { "a.b": { type: led } }',
    [['["a.b"] `a.b` cannot be a name in `loads`', 'a name has letters, digits, hyphens and underscores']],
  ],
  [
    'a name that means something to JavaScript',
    'loads: { __proto__: { type: led } }',
    [['[__proto__] `__proto__` cannot be a name in `loads`', 'a name has letters, digits, hyphens and underscores']],
  ],
  [
    'a mode with a name of ours',
    'modes: { free: { active: [] } }',
    [['[free] `free` is a name with a meaning of its own', 'choose another']],
  ],
  [
    'a channel that is no number',
    'loads: { v: { type: relay-board, inputs: { one: D4 } } }',
    [['[one] `one` is no channel in `inputs` of load `v`', 'channels are numbered: 1, 2, 3']],
  ],
  [
    'a point without its value',
    'loads: { a: { type: led, forward-voltage: [{ at: 3 mA }, 2 V] } }',
    [
      ['[{ at: 3 mA }] `value` is missing in entry 1 of `forward-voltage` of load `a`'],
      ['[2 V] entry 2 of `forward-voltage` of load `a` cannot be `2 V`', 'it wants { value, at }'],
    ],
  ],
  [
    'a limit that applies to nothing known',
    'controllers: { c: { chip: x, limits: [{ applies-to: each-pins, source: 1 A }] } }',
    [
      [
        '[each-pins] `applies-to` in entry 1 of `limits` of controller `c` cannot be `each-pins`',
        'did you mean `each-pin`?',
      ],
    ],
  ],
  [
    'an interlock of no form',
    'interlocks: [{ at-most: 1 }]',
    [
      [
        '[{ at-most: 1 }] interlock 1 is of no known form',
        '{ at-most: 1, of: [a, b] }, { needs: a, for: b } or { excludes: a, for: b }',
      ],
    ],
  ],
  ['a mode without circuits', 'modes: { a: { share: 5 % } }', [['[a] `active` is missing in mode `a`']]],
  [
    'a policy with a slip',
    'policy: { curent: 3 % }',
    [['[curent] unknown key `curent` in `policy`', 'did you mean `current`?']],
  ],
  [
    'an own part with a key of its use',
    'parts: { mine: { type: coil, pin: D4 } }',
    [['[pin] unknown key `pin` in part `mine`']],
  ],
];

describe('the check of a project', () => {
  it.each(table)('says of %s what is wrong and what would be right', (_, body, expected) => {
    const found = checkText(body).map((each) => [marked(each).replace(/^\S+ /, ''), each.expected] as const);
    expect(found.map(([says]) => says)).toEqual(expected.map(([says]) => says));
    for (const [index, [, advice]] of expected.entries())
      if (advice !== undefined) expect(found[index]?.[1]).toBe(advice);
  });

  it.each(table)('gives no second message for %s', (_, body, expected) => {
    expect(checkText(body)).toHaveLength(expected.length);
  });

  it('says all that is wrong at once', () => {
    const all = table.map(([, body]) => body).filter((body) => body.startsWith('loads: { a:'));
    const body = `loads: { ${all.map((each, index) => each.slice('loads: { '.length, -2).replace(/^a:/, `a${index}:`)).join(', ')} }`;
    const wanted = all.reduce((sum, each) => sum + table.find(([, body_]) => body_ === each)![2].length, 0);
    expect(checkText(body).length).toBe(wanted);
  });

  it('lets the smallest projects pass', () => {
    expect(checkFrame({ ampledger: 1, title: 'x' })).toEqual([]);
    expect(checkText('')).toEqual([]);
    expect(
      checkText(`controllers: { main: { board: atmega328p-5v-board, powered: { usb: { type: usb2-port } } } },
        loads: { lamps: { part: relay-board-opto-low-5v-4, inputs: { 1: D4, 2: D5 }, supply: main.5v } }`),
    ).toEqual([]);
  });

  it('lets every kind of quantity and a name that is a number pass', () => {
    expect(
      checkText(`loads: {
        a: { type: led, pin: 13, forward-voltage: 2 },
        b: { type: led, pin: D4, forward-voltage: unknown, series: { resistance: 1 kΩ, power: 0.25 W } },
        c: { type: led, pins: [D1..D3, 7], forward-voltage: { value: 2 V, at: 10 mA, note: red } },
        d: { type: led, forward-voltage: [{ value: 2 V, at: 10 mA }, { value: 2.2 V, at: 20 mA }] } }`),
    ).toEqual([]);
  });

  it('knows format 1 only', () => {
    const says = (data: unknown) => checkFrame(data).map((problem) => problem.says);
    expect(says({ ampledger: 2, title: 'x' })).toEqual(['this version reads format 1, not `2`']);
    expect(says({ title: 'x' })).toEqual(['`ampledger` is missing at the top level']);
    expect(says({ ampledger: 1 })).toEqual(['`title` is missing at the top level']);
    expect(says({ ampledger: 1, title: ' ' })).toEqual(['`title` is empty']);
  });

  it('says of a missing key with a slip in it only the slip', () => {
    expect(checkFrame({ ampledger: 1, titel: 'x' }).map((problem) => problem.says)).toEqual([
      'unknown key `titel` at the top level',
    ]);
  });

  it('points at the key with its line and column', () => {
    const text = 'ampledger: 1\ntitle: x\nloads:\n  heartbeat:\n    type: led\n    seires: 330 Ω\n';
    const { document } = readDocument(text, 'x.yaml');
    const load = (document!.data as { loads: { heartbeat: unknown } }).loads.heartbeat;
    const [problem] = checkEntry('load:led', load, ['loads', 'heartbeat']);
    expect(renderDiagnostic(document!.diagnostic(problem!))).toBe(
      [
        'x.yaml:6:5  unknown key `seires` in load `heartbeat`',
        '   6 |     seires: 330 Ω',
        '     |     ^^^^^^ did you mean `series`?',
      ].join('\n'),
    );
  });

  it('checks an entry of unknown type against the keys of all types', () => {
    expect(checkEntry('load', { part: 'x', stall: '1 A', 'forward-voltage': '2 V' }, ['loads', 'a'])).toEqual([]);
    expect(checkEntry('load', { part: 'x', stal: '1 A' }, ['loads', 'a'])[0]?.expected).toBe('did you mean `stall`?');
  });

  it('echoes a key with an escape in it harmlessly', () => {
    const [problem] = checkEntry('load:led', { 'a\u001b[31m`b`': 1 }, ['loads', 'x']);
    expect(problem?.says).toBe("unknown key `a␛[31m'b'` in load `x`");
  });

  it('knows which sorts of entries there are', () => {
    expect(['load', 'load:led', 'driver:array', 'clamp', 'part:load:coil', 'part:chip'].every(isEntryKind)).toBe(true);
    expect(
      ['load:toaster', 'driver:toaster', 'part:policy', 'frame', 'toString', 'part:driver:array'].some(isEntryKind),
    ).toBe(false);
    expect(() => checkEntry('load:toaster', {}, [])).toThrow('load:toaster');
  });
});
