/** What a glance at one account tells: never that something still fails which a whole judgement would not find. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findingKey } from '../../src/checks/finding.js';
import { judgeBound, judgeable } from '../../src/checks/judge.js';
import { LIMIT_RULES } from '../../src/checks/rules.js';
import { stillFails } from '../../src/checks/still-fails.js';
import { builtIn, read } from '../../src/index.js';
import { withChanges } from '../../src/remedies/change.js';
import { attemptsAt } from '../../src/remedies/cures.js';
import { persists } from '../../src/remedies/prove.js';
import { sampleText } from '../samples/audited.js';
import { sized } from '../sizes.js';

const samples = readdirSync(new URL('../../samples/', import.meta.url))
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => name.replace('.yaml', ''));

function boundTo(data: unknown) {
  const bound = judgeable(data, 'case.yaml', { catalogue: builtIn });
  if ('problems' in bound) throw new Error(bound.problems.map((p) => p.says).join());
  return bound;
}

function sampleOf(name: string) {
  const { data } = read(sampleText(name), 'case.yaml').document!;
  const bound = boundTo(data);
  return { data, project: bound.project, judgement: judgeBound(bound) };
}

/** Accounts that the whole alone settles. */
const REST = new Set(['battery', 'measured']);

it('is that whatever is wrong with a limit is wrong in the same project again', () => {
  let seen = 0;
  for (const name of samples) {
    const { project, judgement } = sampleOf(name);
    const dead = project.modes.filter((m) => m.without.length > 0).map((m) => m.name);
    for (const f of judgement.findings) {
      if (f.verdict === 'note' || f.runaway || dead.includes(f.account?.mode ?? '')) continue;
      if (!LIMIT_RULES.some((r) => r.name === f.rule) || REST.has(f.account!.kind)) continue;
      expect(stillFails(project, f), `${name}: ${findingKey(f)}`).toBe(project.open.length === 0);
      seen++;
    }
  }
  expect(seen).toBeGreaterThan(20);
});

/** The changed projects of a sample that a glance rejects, and how many of them a whole judgement rejects as well. */
function rejectedIn(name: string): { readonly atAGlance: number; readonly asWhole: number } {
  const { data, judgement } = sampleOf(name);
  const attempts = judgement.findings.flatMap((finding) =>
    attemptsAt({ finding, judgement, data })
      .flat()
      .map(({ changes }) => ({ finding, bound: boundTo(withChanges(data, changes)) })),
  );
  const rejected = attempts.filter(({ finding, bound }) => stillFails(bound.project, finding));
  const asWhole = rejected.filter(({ finding, bound }) => persists(judgeBound(bound), finding));
  return { atAGlance: rejected.length, asWhole: asWhole.length };
}

describe('of a changed project', () => {
  it.each(sized(1, 0) === 1 ? ['roof-drier-long-cable', 'rain-barrel-shift-register'] : samples)(
    '%s, agrees with the whole judgement',
    (name) => {
      const { atAGlance, asWhole } = rejectedIn(name);
      expect(asWhole).toBe(atAGlance);
    },
    sized(60_000, 1_800_000),
  );
});
