/**
 * What SARIF 2.1.0 (OASIS Standard incorporating Approved Errata 01, 28 August 2023) requires of the parts of a log that we
 * write, as a schema of our own: names, required properties, values and what must be unique, section by section. It is
 * stricter than the standard in one way: a property that is not listed here is refused, so that whoever writes another one
 * looks it up first.
 */
const object = (required: readonly string[], properties: { readonly [name: string]: object }) => ({
  type: 'object',
  required,
  properties,
  additionalProperties: false,
});
const list = (items: object, more: object = {}) => ({ type: 'array', items, ...more });
const text = { type: 'string' };
const place = { type: 'integer', minimum: 1 };
/** 3.8: a property bag holds whatever its maker likes. */
const bag = { type: 'object' };

/** 3.12: a multiformat message string; 3.11: a message. */
const message = object(['text'], { text: { type: 'string', minLength: 1 } });
/** 3.4, 3.29, 3.30 */
const physicalLocation = object(['artifactLocation'], {
  artifactLocation: object(['uri'], { uri: { type: 'string', format: 'uri-reference' } }),
  region: object(['startLine'], { startLine: place, startColumn: place, endLine: place, endColumn: place }),
});
/** 3.28, 3.33 */
const location = object([], {
  id: { type: 'integer', minimum: -1 },
  physicalLocation,
  logicalLocations: list(object([], { fullyQualifiedName: text }), { uniqueItems: true }),
  message,
});
/** 3.49 */
const reportingDescriptor = object(['id'], {
  id: { type: 'string', pattern: '^[a-z-]+$' },
  shortDescription: message,
  fullDescription: message,
  help: message,
});
/** 3.58 */
const notification = object(['message'], {
  message,
  level: { enum: ['none', 'note', 'warning', 'error'] },
  locations: list(location),
});
/** 3.35 */
const suppression = object(['kind'], {
  kind: { enum: ['inSource', 'external'] },
  status: { enum: ['accepted', 'underReview', 'rejected'] },
  justification: text,
  location,
  properties: bag,
});
/** 3.27 */
const result = object(['message', 'ruleId'], {
  ruleId: text,
  ruleIndex: { type: 'integer', minimum: -1 },
  level: { enum: ['none', 'note', 'warning', 'error'] },
  message,
  locations: list(location),
  relatedLocations: list(location, { uniqueItems: true }),
  partialFingerprints: { type: 'object', additionalProperties: text },
  suppressions: list(suppression, { uniqueItems: true }),
  properties: bag,
});
/** 3.14, 3.18, 3.19, 3.20, 3.24 */
const run = object(['tool'], {
  tool: object(['driver'], {
    driver: object(['name'], { name: text, version: text, rules: list(reportingDescriptor, { uniqueItems: true }) }),
  }),
  columnKind: { enum: ['utf16CodeUnits', 'unicodeCodePoints'] },
  invocations: list(
    object(['executionSuccessful'], {
      executionSuccessful: { type: 'boolean' },
      toolExecutionNotifications: list(notification),
    }),
  ),
  artifacts: list(
    object([], {
      location: object([], { uri: { type: 'string', format: 'uri-reference' } }),
      roles: list({ enum: ['analysisTarget'] }, { uniqueItems: true }),
      properties: bag,
    }),
    { uniqueItems: true },
  ),
  results: list(result),
});

/** 3.13 */
export const sarifSchema = object(['version', 'runs'], {
  $schema: { type: 'string', format: 'uri' },
  version: { const: '2.1.0' },
  runs: list(run),
});
