import { describe, expect, test } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { citation, documentText } from '../../src/catalogue/citation.js';

const documents = {
  sheet: { title: 'AX-1 data sheet', publisher: 'Maker', number: 'DS12', revision: '2.3', year: 2019 },
};

describe('a citation', () => {
  test('names title, publisher, number and year of the document, and the place in it', () => {
    const { documents: atmega } = builtIn.profile('atmega328p')!;
    expect(citation(['datasheet', 'Table 29-1'], atmega)).toEqual({
      document: 'ATmega48A/PA/88A/PA/168A/PA/328/P data sheet, Atmel, 8271H, 2014',
      where: 'Table 29-1',
      basis: 'document',
    });
  });

  test('announces a revision that is only a mark, and leaves one that speaks for itself', () => {
    expect(documentText(documents.sheet)).toBe('AX-1 data sheet, Maker, DS12, revision 2.3, 2019');
    expect(documentText({ title: 'A', publisher: 'B', revision: 'edition with a blue cover' })).toBe(
      'A, B, edition with a blue cover',
    );
  });

  test('says of practice and memory what they are', () => {
    expect(citation(['practice', 'usual value'], documents)).toMatchObject({ where: 'usual value', basis: 'practice' });
    expect(citation(['memory', 'a curve'], {})).toMatchObject({ where: 'a curve', basis: 'memory' });
  });

  test('is none when its document is not listed or it is no list', () => {
    for (const cite of [['missing', 'p. 1'], ['toString', 'p. 1'], 'sheet', undefined, []]) {
      expect(citation(cite, documents)).toBeUndefined();
    }
  });
});
