import { expect, it } from 'vitest';
import { print } from '../../src/cli/print.js';
import { catalogueTree, profileTree } from '../../src/reports/catalogue.js';

const page = { width: 80, colour: false };
const profile = {
  id: 'npn-of-ours',
  title: 'NPN of ours',
  kind: 'driver' as const,
  type: 'npn',
  documents: { datasheet: { title: 'NPN transistor', publisher: 'a maker', number: 'N1', year: 2013 } },
  gain: { value: 'min 75', at: '10 mA', cite: ['datasheet', 'DC current gain'], note: 'at 10 V' },
  saturation: [
    { value: 'max 0.3 V', at: '150 mA', cite: ['datasheet', 'saturation'] },
    { value: 'max 1 V', at: '500 mA', cite: ['datasheet', 'saturation'] },
  ],
  pins: { base: 1, collector: 2 },
  input: {
    active: 'low',
    cite: ['practice', 'usual'],
    series: { value: '1 kΩ', cite: ['memory', 'a board seen'] },
  },
};

it('lists a profile figure by figure, each with what it holds at and its source', () => {
  expect(print(profileTree(profile), page)).toBe(
    [
      'NPN of ours                                                   driver npn-of-ours',
      '',
      'figure        value                       from',
      '────────────  ──────────────────────────  ──────────────────────────',
      'type          npn',
      'gain          min 75, at 10 mA (at 10 V)  datasheet, DC current gain',
      'saturation    max 0.3 V, at 150 mA        datasheet, saturation',
      'saturation    max 1 V, at 500 mA          datasheet, saturation',
      'pins          base 1, collector 2',
      'input         active low                  practice, usual',
      'input series  1 kΩ                        memory, a board seen',
      '',
      'datasheet  NPN transistor, a maker, N1, 2013',
      '',
    ].join('\n'),
  );
});

it('lists everything by kind', () => {
  const others = [
    { id: 'led-of-ours', title: 'LED of ours', kind: 'load' as const },
    { id: 'fet-of-ours', title: 'FET of ours', kind: 'driver' as const },
  ];
  expect(print(catalogueTree([profile, ...others]), page)).toBe(
    ['load', 'led-of-ours  LED of ours', '', 'driver', 'npn-of-ours  NPN of ours', 'fet-of-ours  FET of ours', ''].join(
      '\n',
    ),
  );
});
