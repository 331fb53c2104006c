import { describe, expect, it } from 'vitest';
import { shortCite, shortDocument, shortSource } from '../../src/reports/short-cite.js';

describe('a document', () => {
  it.each([
    ['ATmega48A/PA/88A/PA/168A/PA/328/P data sheet, Atmel, 8271H, 2014', 'ATmega48A/… data sheet 8271H'],
    ['HF3FA/HF3FA-T Subminiature High Power Relay, Hongfa, HF3FA', 'HF3FA/HF3FA-T Subminiature High Power Relay'],
    [
      'Universal Serial Bus Specification, USB Implementers Forum, revision 2.0, 2000',
      'Universal Serial Bus Specification, revision 2.0',
    ],
    ['PC817 Series Photocoupler, Sharp, PC817 Series', 'PC817 Series Photocoupler, Sharp'],
    ['RP2040 Datasheet, Raspberry Pi Ltd, edition whose IO table is numbered 625', 'RP2040 Datasheet'],
    [
      'LM1117/LM1117I 800mA Low-Dropout Linear Regulator, National Semiconductor, DS100919, 2006',
      'LM1117/LM1117I 800mA Low-Dropout Linear … DS100919',
    ],
    ['Relay data', 'Relay data'],
    ['', ''],
  ])('%s reads %s', (document, text) => {
    expect(shortDocument(document)).toBe(text);
  });

  it('is cut in a single word rather than left long', () => {
    expect(shortDocument('x'.repeat(80)).length).toBeLessThan(50);
  });
});

describe('a citation', () => {
  it('says where, and on what it rests', () => {
    const where = 'Table 4';
    expect(shortCite({ document: 'Sheet, Maker, 8271H, 2014', where, basis: 'document' })).toBe('Sheet 8271H, Table 4');
    expect(shortCite({ document: 'this file', basis: 'project' })).toBe('this file');
    expect(shortCite({ document: 'common practice, no source', where: '75 %', basis: 'practice' })).toBe(
      'common practice: 75 %',
    );
    expect(shortCite({ document: 'from memory, not checked', where: 'a curve', basis: 'memory' })).toBe(
      'from memory: a curve',
    );
  });
});

describe('a source of the working', () => {
  const known = new Set(['Sheet, Maker, 8271H, 2014']);

  it.each([
    ['horn.coil: Sheet, Maker, 8271H, 2014, Table 4', 'horn.coil: Sheet 8271H, Table 4'],
    ['horn.coil: Other, Long Name of a Maker, N1, 2013, Table 5', 'horn.coil: Other, N1, Table 5'],
    ['horn.coil: common practice, no source, trade charts', 'horn.coil: common practice: trade charts'],
    ['horn.coil: from memory, not checked against a document', 'horn.coil: from memory'],
    ['Sheet, Maker, 8271H, 2014', 'Sheet 8271H'],
  ])('%s reads %s', (source, text) => {
    expect(shortSource(source, known)).toBe(text);
  });
});
