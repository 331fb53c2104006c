import { expect, it } from 'vitest';
import { startsProject } from '../../src/source/starts-project.js';

it.each([
  'ampledger: 1\ntitle: Shed',
  '\ufeffampledger: 1',
  '# yaml-language-server: $schema=x\n\n---\r\n  # more\nampledger : 1',
  '%YAML 1.2\n--- # here\n"ampledger": 1',
  "'ampledger': 1",
  '{ ampledger: 1, title: Shed }',
  `${'# licence\n'.repeat(1000)}ampledger: 1`,
])('a project begins %j', (text) => expect(startsProject(text)).toBe(true));

it.each([
  '',
  '# ampledger: 1',
  'id: our-relay\nampledger: 1',
  'ampledgers: 1',
  'ampledger 1',
  'title: ampledger: 1',
  '---\n---\nversion: 2',
  '- ampledger: 1',
])('something else begins %j', (text) => expect(startsProject(text)).toBe(false));

it('takes no longer for a line of spaces without an end', () => {
  const from = performance.now();
  expect(startsProject(' '.repeat(1 << 16) + 'x')).toBe(false);
  expect(startsProject(' \t'.repeat(1 << 15))).toBe(false);
  expect(performance.now() - from).toBeLessThan(200);
});
