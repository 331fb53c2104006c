/** A comparison as SARIF 2.1.0: the findings of both versions, each with its state relative to the former one (3.27.24). */
import { FAMILY_OF } from '../checks/rules.js';
import type { ComparedFinding, ComparisonReport, FileComparison } from './compare-report.js';
import { toJson } from './json.js';
import { neutral } from './neutral.js';
import { head, identityOf, LEVELS, physical, RULES, SCHEMA } from './sarif.js';
import { message, uriOf } from './sarif-text.js';

const STATES = {
  new: 'new',
  worse: 'updated',
  better: 'updated',
  same: 'unchanged',
  gone: 'absent',
} as const satisfies { readonly [change in ComparedFinding['change']]: string };

/** Findings of all files that were compared, and what could not be read. @param version of this tool */
export const comparisonSarif = ({ files, change }: ComparisonReport, version: string): string =>
  toJson({
    $schema: SCHEMA,
    version: '2.1.0',
    runs: [
      {
        ...head(version),
        invocations: [
          { executionSuccessful: change !== 'unread', toolExecutionNotifications: files.flatMap(notifications) },
        ],
        artifacts: files.map(({ file, state, verdict }) => ({
          location: { uri: uriOf(file) },
          roles: ['analysisTarget'],
          properties: { state, verdict },
        })),
        results: files.flatMap((file) => file.findings.map((finding) => resultOf(finding, file))),
      },
    ],
  });

const notifications = ({ unread }: FileComparison) =>
  unread.flatMap(({ side, errors }) =>
    errors.map(({ says, expected, ...place }) => ({
      level: 'error',
      message: { text: message(`${side}: ${says}${expected === undefined ? '' : `: ${expected}`}`) },
      locations: [physical(place)],
    })),
  );

function resultOf(finding: ComparedFinding, { file }: FileComparison) {
  const { rule, change, about, was, before, after, says, place, setAside } = finding;
  return {
    ruleId: rule,
    ruleIndex: RULES.indexOf(rule),
    level: LEVELS[(after ?? before)!],
    message: { text: message(says) },
    // What is gone has no place in the later version but its file.
    locations: [
      {
        ...(place ? physical(place) : { physicalLocation: { artifactLocation: { uri: uriOf(file) } } }),
        logicalLocations: [{ fullyQualifiedName: neutral(about) }],
      },
    ],
    partialFingerprints: { 'ampledgerFinding/v1': identityOf(finding) },
    // What one version sets aside is there in both.
    baselineState: setAside ? 'updated' : STATES[change],
    suppressions: setAside && change === 'gone' ? [{ kind: 'inSource', status: 'accepted' }] : [],
    properties: {
      verdict: { before, after },
      family: FAMILY_OF.get(rule),
      about: neutral(about),
      ...(was !== undefined && { was: neutral(was) }),
      ...(setAside && { setAside }),
    },
  };
}
