/**
 * The schema of SARIF 2.1.0 whole, as the OASIS committee's release candidate 5 had it and most tools hold logs against it. It
 * comes with a package, whose code is not used. Ajv knows drafts from 6 on: the name of draft 4 is left out, and nothing in
 * the schema is of that draft alone.
 */
import { Ajv } from 'ajv';
import whole from '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json' with { type: 'json' };

const { $schema: _draft, id: _id, ...rest } = whole;

const isUri = (text: string): boolean =>
  /^[\w\-.~!$&'()*+,;=:@/%]*$/.test(text) && !/%(?![0-9A-F]{2})/.test(text) && !/^[^/]*:[^/]/.test(text);

const valid = new Ajv({
  strict: false,
  // A pattern of the schema is none by the stricter rules.
  unicodeRegExp: false,
  formats: { 'uri-reference': isUri, uri: /^https:/, 'date-time': true },
}).compile(rest);

/** What the schema has against a log; null when it is one. */
export function sarifFaults(log: unknown): typeof valid.errors {
  valid(log);
  return valid.errors ?? null;
}
