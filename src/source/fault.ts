import type { Path } from './place.js';

/** What a generated validator says is wrong: one object a fault, as the schema compiler makes them. */
export interface Fault {
  /** JSON pointer into the data. */
  readonly instancePath: string;
  /** JSON pointer into the schema. */
  readonly schemaPath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  /** The schema that has the keyword. Keys that are checked alike stand together in one pattern: `^(?:a|b)$`. */
  readonly parentSchema: {
    readonly properties?: Readonly<Record<string, unknown>>;
    readonly patternProperties?: Readonly<Record<string, unknown>>;
  };
}

/** The keys that the schema at fault knows. */
export function knownKeys({ parentSchema: { properties = {}, patternProperties = {} } }: Fault): string[] {
  return [
    ...Object.keys(properties),
    ...Object.keys(patternProperties).flatMap((pattern) => pattern.slice(4, -2).split('|')),
  ];
}

/** True when the data is fine; otherwise `errors` holds the faults. */
export type Validator = { (data: unknown): boolean; errors?: readonly Fault[] | null };

/** What the build makes of a schema. */
export interface Validators {
  readonly validators: Readonly<Record<string, Validator>>;
  /** Keys that each sort of entry knows, by the name of its validator. */
  readonly keys: Readonly<Record<string, readonly string[]>>;
}

/** The data that was held against a schema. */
export interface Subject {
  /** What it is: 'project', 'load', 'driver', 'profile'. */
  readonly sort: string;
  /** Its type, where the sort has types: 'led'. */
  readonly type?: string;
  readonly data: unknown;
  /** Where it stands in the document. */
  readonly path: Path;
  readonly known: Validators;
}

/** A fault with what the author of the file can see of it. */
export interface Located {
  readonly fault: Fault;
  readonly subject: Subject;
  /** Path of the value at fault in the document. */
  readonly path: Path;
  readonly value: unknown;
}

export function locate(fault: Fault, subject: Subject): Located {
  const rest = steps(fault.instancePath, subject.data);
  const path = [...subject.path, ...rest];
  return { fault, subject, path, value: valueAt(subject.data, rest) };
}

/** The steps of a JSON pointer through the data: numbers where it goes through a list. */
function steps(pointer: string, data: unknown): Path {
  const path: (string | number)[] = [];
  let value = data;
  for (const raw of pointer.split('/').slice(1)) {
    const key = raw.replaceAll('~1', '/').replaceAll('~0', '~');
    path.push(Array.isArray(value) ? Number(key) : key);
    value = valueAt(value, [key]);
  }
  return path;
}

/** The value at a path of plain data, or undefined. */
export function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined;
    value = (value as Record<string | number, unknown>)[key];
  }
  return value;
}
