/** What a solution is asked for besides its corner: which circuits are on, and which of them are in question. */

/** Which circuits are on. */
export interface Moment {
  /** Name of the mode. */
  readonly mode: string;
  /** 1 for each circuit that is on. */
  readonly on: Uint8Array;
  /** The state is a proven bound: it may be worse than any state that can really be. */
  readonly bound?: true;
}

/** The circuits that a corner is about. */
export interface Focus {
  /** 1 for each network of theirs. */
  readonly has: Uint8Array;
  readonly networks: readonly number[];
  /** The circuits in question, where others share one of their networks: those lean like the rest. */
  readonly among?: ReadonlySet<string>;
  /** 1 for each network that is in question, where those are not the same: of a whole solution, which solves them all, or of circuits. */
  readonly leans?: Uint8Array;
  /** Networks on the control side that lean like the load. */
  readonly loads?: ReadonlySet<number>;
  /** Of a whole solution, the regulators that are not in question. */
  readonly besides?: ReadonlySet<string>;
}
