/** docs/profiles.md keeps its word: every profile on it is proved, and a project that uses them all is audited. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { builtIn } from '../../src/catalogue/built-in.js';
import { withOwn } from '../../src/catalogue/own.js';
import { audit, read, withFolders } from '../../src/index.js';

const page = readFileSync(new URL('../../docs/profiles.md', import.meta.url), 'utf8');
const files = [...page.matchAll(/```yaml\n(id: ([a-z0-9-]+)\n[^]*?)```/g)].map(([, text = '', id]) => ({
  file: `our-boards/${id}.yaml`,
  text,
}));

it('shows a coil, a transistor, a chip and a board, and each is proved clean', () => {
  const { profiles, errors } = withOwn(builtIn, files, { twins: true });
  expect(errors.map(({ file, line, says }) => `${file}:${line} ${says}`)).toEqual([]);
  expect(profiles.map(({ profile: { kind, type } }) => type ?? kind)).toEqual(['coil', 'npn', 'chip', 'controller']);
});

it('shows what a project can use', () => {
  const project = `ampledger: 1
title: Gate
catalogue: [./our-boards]
supplies: { brick: { voltage: 5 V ±4 %, current: 1 A } }
controllers: { main: { board: sprout-board, powered: { usb: { type: usb2-port } } } }
loads:
  gate: { part: gate-relay-5v, supply: brick, clamp: { part: diode-1n4148 },
          driver: { part: npn-gs3904, pin: D2, base-resistor: 560 Ω ±5 %, pull-down: 10 kΩ } }
  lamp: { part: led-red-5mm, pin: D1, series: 470 Ω ±5 % }
`;
  const { document } = read(project, 'gate.yaml');
  const { report, errors } = audit(withFolders(document!, [{ name: './our-boards', files }]), { advice: false });
  expect(errors).toEqual([]);
  expect(report?.accounts.map(({ id }) => id)).toEqual(
    expect.arrayContaining(['main.D1', 'main.low-pins', 'main.fuse-usb', 'gate.coil']),
  );
});

it('says what the pages are, and names no document of a real maker', () => {
  expect(page).toContain('**The four pages are invented**');
  for (const { text } of files) expect(text).toContain('publisher: Gatewood');
});
