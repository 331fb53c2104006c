/** What no output may hold, by what shows it. */
import { expect } from 'vitest';
import { columns } from '../../src/source/visible.js';

/** A terminal, a log of a build server, a file that either may show. */
export function expectQuiet(text: string): void {
  expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
  expect(text).not.toMatch(/^\s*::/m);
  expect(text).not.toMatch(/##\w*\[/);
}

/** A page of a terminal besides: nothing leaves its 80 columns. */
export function expectPage(text: string): void {
  expectQuiet(text);
  expect(Math.max(...text.split('\n').map(columns))).toBeLessThanOrEqual(80);
}

/** Markdown: what is not between backticks or escaped is neither HTML of theirs, nor a link, a mention, a picture, code. */
export function expectMarkdown(text: string): void {
  expectQuiet(text);
  const inMarkup = text.replace(/\\[^]|`[^`\n]*`/g, '');
  expect(inMarkup).not.toMatch(/<(?!\/?(?:details|summary|span)>)/);
  expect(inMarkup.match(/<details>/g)?.length).toBe(inMarkup.match(/<\/details>/g)?.length);
  const prose = text
    .replace(/<details>.*/g, '')
    // A sentence of our own about what was left out.
    .replace(/^_Left out.*_$/m, '')
    .replace(/\\[^]|`[^`\n]*`/g, '')
    .replaceAll('&#8203;', '\0');
  expect(prose).not.toMatch(/[`[\]~_\\]|@(?!\0)|:\/\/|#\d|www\.|<!--|\*\*e\*\*/);
  // Nothing of theirs begins a line with what Markdown reads there; its own rows have as many cells as their heads.
  expect(prose).not.toMatch(/^(?:>|```|---|\d+\. item| {4}code|# heading|- item)/m);
  for (const table of text.match(/(?:^\|.*\n)+/gm) ?? [])
    expect(
      new Set(
        table
          .trimEnd()
          .split('\n')
          .map((row) => row.replace(/\\\|/g, '').split('|').length),
      ).size,
    ).toBe(1);
}

/** XML: tags are ours, and each is closed. */
export function expectXml(text: string): void {
  expectQuiet(text);
  expect(text).not.toContain(']]>');
  const tag = /<(\/?)([a-z-]+)((?: [a-z]+="[^"<>]*")*)(\/?)>/g;
  const body = text.replace(/^<\?xml version="1\.0" encoding="UTF-8"\?>\n/, '');
  const open: string[] = [];
  for (const [, end, name = '', , empty] of body.matchAll(tag)) {
    expect([
      'testsuites',
      'testsuite',
      'testcase',
      'failure',
      'error',
      'skipped',
      'system-out',
      'properties',
      'property',
    ]).toContain(name);
    if (end) expect(open.pop()).toBe(name);
    else if (!empty) open.push(name);
  }
  expect(open).toEqual([]);
  expect(body.replace(tag, '')).not.toMatch(/[<>]|&(?!(?:amp|lt|gt|quot|apos);)/);
}
