/** Reports that a stranger's file could lead to: every text that a file decides is an attack on what shows it. */
import type { Report } from '../../src/reports/report.js';

export const attacks = [
  '\u001B[2J\u001B[1;1Hall is well',
  '\u001B]8;;https://example.invalid\u0007click\u001B]8;;\u0007',
  '\u009B31m\u0090q',
  'x\r\nSOUND  nothing to see\b\b\b\u007F',
  'pay \u202Eelbat\u202C \u2066left\u2069 \u200E',
  '\n::error::gone ::set-output name=x::y',
  '##[error]gone ##vso[task.complete]',
  'zero\u200Bwidth\u00AD\uFEFF\u2028line\u{E0041}',
  'half \uD800 a pair',
];

/** Attacks on markup: XML, HTML, Markdown, messages of SARIF. */
export const markupAttacks = [
  ']]></failure><testcase name="x"/><![CDATA[',
  '"\'><script>alert(1)</script>&amp;&#0;<!-- -->',
  '</details></pre><img src=x onerror=alert(1)>',
  '| a | b |\n|---|---|\n| `c` ``d`` |',
  '```\n# heading\n- item\n> quote\n***bold*** ~~gone~~ $x$',
  '![x](https://example.invalid/x.png) [here](javascript:alert(1)) <https://example.invalid> www.example.invalid',
  '@everyone #1 someone@example.invalid https://example.invalid/x',
  '{0} {{1}} [here](1) \\[x\\]',
  '    indented\n\n===\n---\n[x]: https://example.invalid',
];

/** Words that the views branch on; everything else that a file can decide is replaced. */
const kept = new Set([
  'verdict',
  'grade',
  'basis',
  'kind',
  'direction',
  'quantity',
  'unit',
  'mode',
  'formula',
  'stated',
  'wired',
  'safeWhen',
  'atPowerLoss',
  'active',
  'atReset',
  'better',
  'because',
]);

/** A report with every text in it replaced. @param keep names of texts to leave besides */
export const poisonedReport = (report: Report, attack: string, keep: readonly string[] = []): Report =>
  poisoned(report, attack, new Set([...kept, ...keep])) as Report;

function poisoned(value: unknown, attack: string, keep: ReadonlySet<string>, key = ''): unknown {
  if (typeof value === 'string') return keep.has(key) ? value : attack;
  if (Array.isArray(value))
    return key === 'with' || key === 'gives' ? value : value.map((each) => poisoned(each, attack, keep, key));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, each]) => [
      name,
      name === 'with' || name === 'gives' ? each : poisoned(each, attack, keep, name),
    ]),
  );
}
