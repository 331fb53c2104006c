/** A comparison as SARIF 2.1.0: the findings of both versions, each with its state relative to the former one (3.27.24). */
import { FAMILY_OF } from '../checks/rules.js';
import type { ComparedFinding, ComparisonReport, FileComparison } from './compare-report.js';
import { toJson } from './json.js';
import { neutral } from './neutral.js';
import {
  FINGERPRINT,
  head,
  identityOf,
  LEVELS,
  numberedIdentity,
  physical,
  RULES,
  SCHEMA,
  suppressionOf,
} from './sarif.js';
import { located, message } from './sarif-text.js';

const STATES = {
  new: 'new',
  worse: 'updated',
  better: 'updated',
  'set-aside': 'updated',
  same: 'unchanged',
  gone: 'absent',
} as const satisfies { readonly [change in ComparedFinding['change']]: string };

/**
 * Findings of all files that were compared, and what could not be read.
 *
 * @param version of this tool @param folder that files are named from, below the root of the repository
 */
export const comparisonSarif = ({ files, change }: ComparisonReport, version: string, folder = ''): string =>
  toJson({
    $schema: SCHEMA,
    version: '2.1.0',
    runs: [
      {
        ...head(version),
        invocations: [
          {
            executionSuccessful: change !== 'unread',
            toolExecutionNotifications: files.flatMap((file) => notifications(file, folder)),
          },
        ],
        artifacts: files.map(({ file, state, verdict }) => ({
          location: located(file, folder),
          roles: ['analysisTarget'],
          properties: { state, verdict },
        })),
        results: files.flatMap((file) => resultsOf(file, folder)),
      },
    ],
  });

const notifications = ({ unread }: FileComparison, folder: string) =>
  unread.flatMap(({ side, errors }) =>
    errors.map(({ says, expected, ...place }) => ({
      level: 'error',
      message: { text: message(`${side}: ${says}${expected === undefined ? '' : `: ${expected}`}`) },
      locations: [physical(place, folder)],
    })),
  );

function resultsOf({ file, findings }: FileComparison, folder: string) {
  const seen = new Map<string, number>();
  return findings.map((finding) => {
    const { rule, change, about, was, before, after, says, place, waiver } = finding;
    const identity = numberedIdentity(identityOf(finding), seen);
    return {
      ruleId: rule,
      ruleIndex: RULES.indexOf(rule),
      level: LEVELS[(after ?? before)!],
      message: { text: message(says) },
      // What is gone has no place in the later version but its file.
      locations: [
        {
          ...(place ? physical(place, folder) : { physicalLocation: { artifactLocation: located(file, folder) } }),
          logicalLocations: [{ fullyQualifiedName: neutral(about) }],
        },
      ],
      partialFingerprints: { [FINGERPRINT]: identity },
      // What only became one that counts, or no longer does, is there in both versions.
      baselineState:
        before !== null && change === 'new' ? 'updated' : before === null && after !== null ? 'new' : STATES[change],
      suppressions: waiver?.in === 'after' ? [suppressionOf(waiver, folder)] : [],
      properties: {
        verdict: { before, after },
        change,
        family: FAMILY_OF.get(rule),
        about: neutral(about),
        ...(was !== undefined && { was: neutral(was) }),
      },
    };
  });
}
