/** What the catalogue knows of a thing, as its file in boards/ states it. */

export const PROFILE_KINDS = [
  'chip',
  'controller',
  'expander',
  'array',
  'load',
  'driver',
  'clamp',
  'supply',
  'supply-part',
  'wire',
  'connector',
  'policy',
] as const;
export type ProfileKind = (typeof PROFILE_KINDS)[number];

/** A mapping of a profile or project file. */
export type Fields = { readonly [key: string]: unknown };

/** A document that figures cite. */
export type SourceDocument = {
  readonly title: string;
  readonly publisher: string;
  readonly number?: string | number;
  readonly revision?: string | number;
  readonly year?: number;
};

/** One profile, everything it `extends` already taken over. Its other keys are those of its kind. */
export interface Profile {
  readonly id: string;
  readonly title: string;
  readonly kind: ProfileKind;
  /** Type within the kind: `coil`, `npn`, `diode`. */
  readonly type?: string;
  readonly documents: { readonly [key: string]: SourceDocument };
  readonly [key: string]: unknown;
}

/** A figure of a profile: the quantity as text, the condition it holds at, where it is from. */
export interface Figure extends Fields {
  readonly value: string | number;
  readonly at?: string | number;
  readonly cite?: unknown;
  readonly note?: string;
}

export const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const isFigure = (value: unknown): value is Figure =>
  isFields(value) && (typeof value['value'] === 'string' || typeof value['value'] === 'number');

/** A mapping's own key; what it merely inherits from JavaScript is not there. */
export const field = (of: unknown, key: string): unknown =>
  isFields(of) && Object.hasOwn(of, key) ? of[key] : undefined;
