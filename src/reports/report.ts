/**
 * The report: the one contract that every view (terminal, JSON and the others) and every outside program reads.
 * All figures are SI: volts, amperes, ohms, watts, degrees Celsius, seconds. `schemas/report.schema.json` says the same.
 */

export type Verdict = 'breach' | 'strain' | 'unproven' | 'thin' | 'note' | 'sound';
export type Grade = 'absolute' | 'operating' | 'characterised' | 'practice';
export type AccountKind =
  | 'pin'
  | 'group'
  | 'total'
  | 'rail'
  | 'regulator'
  | 'fuse'
  | 'inlet'
  | 'supply'
  | 'driver'
  | 'coil'
  | 'clamp'
  | 'contact'
  | 'input'
  | 'series'
  | 'wire'
  | 'array'
  | 'level'
  | 'battery'
  | 'measured';
export type QuantityName = 'current' | 'voltage' | 'power' | 'temperature' | 'charge' | 'energy' | 'time';
export type Direction = 'source' | 'sink' | 'at-most' | 'at-least' | 'injected';

export interface ReportPlace {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  /** Where it ends, just past its last character; absent where only its start is known. */
  readonly endLine?: number;
  readonly endColumn?: number;
}
export interface ReportCite {
  readonly document: string;
  readonly where?: string;
  readonly basis: 'document' | 'practice' | 'memory' | 'project';
}

export interface ReportLimit {
  readonly value: number;
  /** What is held against it: the draw at the corner that leaves the least of it. Absent when the draw is not known. */
  readonly draw?: number;
  /** As its source wrote it. */
  readonly stated: string;
  readonly grade: Grade;
  readonly cite?: ReportCite;
  /** The condition under which the limit holds, as stated: 'at 40 °C', 'supply 4 to 5.5 V'. */
  readonly condition?: string;
  /** An assumed limit has a range; `value` is its strict end. */
  readonly range?: { readonly min: number; readonly typ: number; readonly max: number };
}

export interface ReportEntry {
  /** A circuit, or the part that draws for itself: 'vents.2', 'main.board', 'main.regulator-5v'. */
  readonly circuit: string;
  readonly min: number;
  readonly typ: number;
  readonly max: number;
  /** The account the current comes from and the one it goes on to, where there is one. */
  readonly from?: string;
  readonly to?: string;
}

export interface ReportAccount {
  readonly id: string;
  readonly kind: AccountKind;
  /** For people: 'pin D9, source', 'fuse on USB'. */
  readonly title: string;
  readonly direction: Direction;
  readonly quantity: QuantityName;
  readonly unit: 'A' | 'V' | 'W' | '°C' | 'C' | 'J' | 's';
  readonly draw: { readonly min: number; readonly typ: number; readonly max: number } | null;
  /** Bounds that are likelier than the ends of the draw, where the report has a method for them. */
  readonly statistics?: { readonly low: number; readonly middle: number; readonly high: number };
  /** The mode the draw belongs to; 'free', 'runaway' and 'boot' are reserved. */
  readonly mode: string;
  /** The circuits that are on in the worst moment, when there are no modes or in the runaway state. */
  readonly moment?: readonly string[];
  /** The worst moment is a proven bound, not an exact one (more circuits than are searched one by one). */
  readonly bound?: true;
  readonly limits: readonly ReportLimit[];
  /** Of kind `measured`: what a meter showed, which the draw has to allow. */
  readonly measured?: { readonly of: string; readonly min: number; readonly max: number; readonly stated: string };
  /** Signed fraction of the limit that gives the verdict; null without a limit or without a figure. */
  readonly margin: number | null;
  readonly verdict: Verdict;
  readonly entries: readonly ReportEntry[];
  readonly place?: ReportPlace;
}

/** One line of working: evaluating `formula` with `with` gives `gives`. */
export interface ReportStep {
  readonly says?: string;
  readonly formula: string;
  readonly with: { readonly [symbol: string]: readonly [number, string] };
  readonly gives: readonly [number, string];
  readonly name: string;
  readonly sources?: readonly string[];
}

export interface ReportChange {
  readonly path: string;
  readonly value: unknown;
}
export interface ReportRemedy {
  readonly title: string;
  readonly changes: readonly ReportChange[];
  readonly parts: readonly string[];
  readonly steps: readonly string[];
  /** The audit with the changes applied. */
  readonly after: {
    readonly verdict: Verdict;
    readonly accounts: readonly {
      readonly id: string;
      readonly direction: Direction;
      readonly quantity: QuantityName;
      readonly max: number;
      readonly limit: number | null;
      readonly margin: number | null;
    }[];
    /** Whether the finding that asked for the remedy is gone. */
    readonly cures: boolean;
  };
}

export interface ReportFinding {
  readonly rule: string;
  readonly family: string;
  readonly verdict: Exclude<Verdict, 'sound'>;
  /** The load, circuit, pin or part it is about. */
  readonly about: string;
  readonly account?: string;
  readonly quantity?: QuantityName;
  readonly direction?: Direction;
  readonly mode?: string;
  /** One sentence with the numbers. */
  readonly says: string;
  /** For `unproven`: the question that settles it. */
  readonly asks?: string;
  readonly place: ReportPlace;
  readonly related: readonly { readonly says: string; readonly place: ReportPlace }[];
  readonly working: readonly ReportStep[];
  readonly remedies: readonly ReportRemedy[];
  /** The file sets it aside: it is told, and weighs nothing. */
  readonly waiver?: { readonly reason: string; readonly until?: string; readonly place: ReportPlace };
}

export interface ReportAssumption {
  readonly about: string;
  readonly says: string;
  readonly place?: ReportPlace;
}

/** A finding in few words. */
export interface ReportFindingName {
  /** The account whose limit it is about. */
  readonly account?: string;
  readonly rule: string;
  readonly about: string;
  readonly verdict: Exclude<Verdict, 'sound'>;
  readonly says: string;
}

/** An account on one side of a comparison. */
export interface ReportAccountSide {
  readonly verdict: Verdict;
  readonly draw: number | null;
  readonly limit: number | null;
  readonly margin: number | null;
}

/** An account whose verdict is another one in a variant; null where it is not there. */
export interface ReportAccountChange {
  readonly account: string;
  readonly title: string;
  readonly quantity: QuantityName;
  readonly direction: Direction;
  readonly before: ReportAccountSide | null;
  readonly after: ReportAccountSide | null;
}

/** The account with the worst verdict, and of these the least in hand. */
export interface ReportTightest extends ReportAccountSide {
  readonly account: string;
  readonly title: string;
  readonly quantity: QuantityName;
  readonly direction: Direction;
}

/** The file with a few keys changed, audited whole and held against the file as it stands. */
export interface ReportVariant {
  readonly name: string;
  readonly note?: string;
  /** A value of null takes a key out. */
  readonly changes: readonly ReportChange[];
  readonly verdict: Verdict;
  readonly counts: Report['counts'];
  readonly tightest: ReportTightest | null;
  readonly better: readonly ReportAccountChange[];
  readonly worse: readonly ReportAccountChange[];
  /** Findings worse than a note that the file has and the variant has not, and the other way round. */
  readonly gone: readonly ReportFindingName[];
  readonly new: readonly ReportFindingName[];
  readonly place: ReportPlace;
}

/** What a coil takes with its contact wired one way. */
export interface ReportTaken {
  /** Seconds a day that it is on. */
  readonly energised: number;
  /** Joules a day and a year. */
  readonly day: number;
  readonly year: number;
}

/** A circuit of whose purpose the file says something: how it is switched, and what that costs. */
export interface ReportChoice {
  readonly circuit: string;
  /** The contact that its load hangs on; absent: it is its own load. */
  readonly wired?: 'normally-open' | 'normally-closed';
  readonly safeWhen?: 'load-stopped' | 'load-running';
  /** Seconds a day that its load runs. */
  readonly loadTime?: number;
  /** Watts while it is on, its driver and input counted, and those in the coil; typical. */
  readonly power: number;
  readonly coilPower?: number;
  readonly now?: ReportTaken;
  /** The same with the load on the other contact. */
  readonly otherwise?: ReportTaken;
  /** A latching relay of the same coil: so many pulses a day, seconds each, joules a day. */
  readonly latching?: { readonly pulses: number; readonly pulse: number; readonly day: number };
  /** What the load does when the coil has no power, and whether that is its safe state. */
  readonly atPowerLoss: 'load-stopped' | 'load-running' | 'stays';
  readonly keepsSafe?: boolean;
  /** The pin level that switches it on, and what its load does until firmware runs; absent without a pin. */
  readonly active?: 'high' | 'low';
  readonly atReset?: 'load-stopped' | 'load-running' | 'stays' | 'pulses' | 'unsure';
  /** The contact that its safe state asks for, or else the one that takes least. */
  readonly better?: 'normally-open' | 'normally-closed';
  /** Which of the two that was; both: they agree. */
  readonly because?: 'safety' | 'energy' | 'both';
  readonly working: readonly ReportStep[];
  readonly place: ReportPlace;
}

export interface Report {
  readonly ampledger: 1;
  readonly project: string;
  readonly file: string;
  /** The variant that was audited in place of the file as it stands. */
  readonly variant?: string;
  readonly verdict: Verdict;
  readonly ambient: { readonly min: number; readonly max: number };
  /** Places with an ambient of their own, where there are any. */
  readonly places?: readonly { readonly name: string; readonly min: number; readonly max: number }[];
  readonly policy: string;
  readonly modes: readonly { readonly name: string; readonly active: readonly string[]; readonly share?: number }[];
  readonly counts: {
    readonly breach: number;
    readonly strain: number;
    readonly unproven: number;
    readonly thin: number;
    readonly note: number;
  };
  /** How likelier bounds of the accounts were found, where they were asked for; verdicts do not depend on them. */
  readonly statistics?:
    | { readonly method: 'rss' }
    | {
        readonly method: 'monte-carlo';
        readonly builds: number;
        readonly seed: number;
        /** How many per cent of the builds lie below `low`, `middle` and `high`. */
        readonly percentiles: readonly number[];
      };
  readonly accounts: readonly ReportAccount[];
  readonly findings: readonly ReportFinding[];
  readonly assumptions: readonly ReportAssumption[];
  /** Figures that accounts used and that no document backs, those from memory first. */
  readonly unsourced: {
    readonly memory: number;
    readonly practice: number;
    readonly figures: readonly {
      /** The profile and the way to the figure in it: 'led-red-5mm forward-voltage at 10 mA'. */
      readonly figure: string;
      readonly basis: 'practice' | 'memory';
      readonly where: string;
    }[];
  };
  /** What each supply gives on average over the modes' shares, typical build; empty without shares. */
  readonly averages: readonly ReportAverage[];
  /** How loads are switched whose purpose the file states; absent where it states none. */
  readonly choices?: readonly ReportChoice[];
  readonly cautions: readonly string[];
  readonly notes: readonly { readonly about: string; readonly text: string }[];
  /** The file's variants beside it, where it has any; not in the audit of one of them. */
  readonly variants?: readonly ReportVariant[];
}

/** What stands in a list of reports for a file that could not be audited. */
export interface UnreadReport {
  readonly ampledger: 1;
  readonly file: string;
  readonly verdict: 'unread';
  readonly errors: readonly {
    readonly file: string;
    readonly line: number;
    readonly column: number;
    readonly says: string;
    readonly expected?: string;
    readonly excerpt?: { readonly text: string; readonly marker: string };
  }[];
}

/** The mean of one supply: amperes, watts, and who takes these, most first. */
export interface ReportAverage {
  readonly supply: string;
  readonly current: number;
  readonly power: number;
  readonly takes: readonly { readonly circuit: string; readonly power: number }[];
}
