/** What intake makes of a run's CSV: typed columns in canonical units on one time axis, and all that was noticed on the way. */
import type { Place } from '../problem.ts';

export const QUANTITY_KINDS = [
  'temperature',
  'ambient',
  'clock',
  'current',
  'voltage',
  'power',
  'energy',
  'throttle_flag',
  'fan',
  'sound_level',
  'utilisation',
  'charge_level',
  'other',
] as const;
export type QuantityKind = (typeof QUANTITY_KINDS)[number];

/** Where an electrical channel is measured. Figures of different places are not subtracted. */
export const MEASURED_AT = ['wall', 'adapter output', 'board input', 'rail', 'battery'] as const;
export type MeasuredAt = (typeof MEASURED_AT)[number];

/** What a channel of the clock shows: what the governor asked for, or what the clock really was. */
export const CLOCK_SHOWS = ['requested', 'delivered'] as const;
export type ClockShows = (typeof CLOCK_SHOWS)[number];

export const TIME_FORMATS = ['elapsed', 'epoch', 'iso8601', 'clock'] as const;
/** elapsed: numbers with a unit since some start; epoch: numbers since 1970-01-01 UTC; iso8601: date and time; clock: HH:MM:SS without a date. */
export type TimeFormat = (typeof TIME_FORMATS)[number];

/** What the author declares of a log. Declared beats inferred. */
export interface LogDeclaration {
  /** Path below data/, as written by the author. */
  readonly file: string;
  readonly time?: {
    readonly column?: string;
    readonly format?: TimeFormat;
    /** Of an elapsed or epoch column: ms, s, min, h. */
    readonly unit?: string;
    /** Of a civil time without an offset: an IANA name or ±HH:MM. Never assumed. */
    readonly zone?: string;
    /** Of an elapsed column: the instant at which it is zero, epoch seconds. */
    readonly start?: number;
    /** Of dates that the file leaves open: whether day or month stands first. */
    readonly order?: 'dmy' | 'mdy';
    /** Of a log without any time: seconds from row to row, as the author knows them. No column is read then. */
    readonly every?: number;
  };
  /** Where rows of several devices or channels stand in one log: the column that tells them apart, and whose rows are read. */
  readonly rows?: { readonly column: string; readonly value: string; readonly place: Place };
  readonly channels: readonly ChannelDeclaration[];
  readonly repairs: readonly Repair[];
  /** The author says that the last line is whole, although no line end follows it. */
  readonly lastLine?: 'whole';
  /** What the author has looked at and said why it is so. */
  readonly known?: readonly Known[];
  /** Declared phases and when they begin, s since the first row: only to tell which of them the log never reaches. */
  readonly phaseStarts?: readonly { readonly name: string; readonly from: number; readonly place: Place }[];
  /** Where the log is named in the run's file: problems about the whole file stand there. */
  readonly place: Place;
}

export interface ChannelDeclaration {
  /** The author's name, snake_case, unique in the run. */
  readonly name: string;
  /** Its name for readers; the author gives none where its own name says it. */
  readonly label?: string;
  readonly quantity: QuantityKind;
  /** The header's text, verbatim (surrounding blanks aside). */
  readonly column: string;
  /** Unit as written by the author; without it the header must say. For a throttle flag `hex` says that digits are hexadecimal. */
  readonly unit?: string;
  /** Why `unit` differs from what the file says: without a reason that is an error. */
  readonly unitReason?: string;
  readonly at?: MeasuredAt;
  /** Id of an instrument. */
  readonly instrument?: string;
  /** Cell texts that mean "no reading" in this column, besides the usual ones. */
  readonly missing?: readonly string[];
  /** Of a throttle flag: which bits mean "now", with the reason's name. */
  readonly bits?: Readonly<Record<string, string>>;
  /** Of a throttle flag: which bits mean "has occurred since boot", with the reason's name; none of them is in `bits`. */
  readonly sticky?: Readonly<Record<string, string>>;
  /** Of a clock; undefined where the author does not say. */
  readonly shows?: ClockShows;
  /** How finely readings are told apart, in the canonical unit (K for temperatures), where the author says it. */
  readonly step?: number;
  /** Name of the log that it is a column of, in a run of several logs; without it, the one log that has such a column. */
  readonly log?: string;
  readonly place: Place;
}

/** A declared correction of the log. The file itself is never changed. */
export type Repair = ({ readonly kind: 'drop' } | { readonly kind: 'shift_time'; readonly bySeconds: number }) & {
  readonly fromLine: number;
  readonly toLine: number;
  readonly reason: string;
  readonly place: Place;
  /** The log that it is of, where the run has several and it is not the first. */
  readonly log?: string;
};

/**
 * Lines of a log on which something is as it should not be, a channel with few readings, or a phase that is declared elsewhere than the log
 * shows it: known to the author, with the reason.
 */
export type Known = (
  | { readonly fromLine: number; readonly toLine: number }
  | { readonly channel: string }
  | { readonly phase: string }
) & {
  readonly reason: string;
  readonly place: Place;
  /** Of lines: the log that they are of, where the run has several and it is not the first. */
  readonly log?: string;
  /** Said of all runs of a setup: it need not be found in each. */
  readonly ofSetup?: true;
};

export interface Log {
  readonly file: string;
  /** Number of trusted rows; every array below has this length. */
  readonly rows: number;
  /** Line of the file on which each row starts, 1-based. */
  readonly lines: Int32Array;
  readonly time: TimeAxis;
  /** In declared order. */
  readonly channels: readonly Channel[];
  readonly setAside: readonly SetAside[];
  readonly repairs: readonly { readonly repair: Repair; readonly rows: number }[];
  /** What the declaration says is known, with what was found there; absent where it says nothing. */
  readonly known?: readonly (Known & { readonly found: readonly string[] })[];
  readonly inferences: readonly Inference[];
  /** Encoding used and how it was told. */
  readonly encoding: string;
  readonly delimiter: string;
  /** What the file is packed with; absent where it is plain text. */
  readonly packed?: 'gzip';
  /** Of a log with more rows than are kept each for itself: a row of the arrays is then the mean of neighbouring rows of the file. */
  readonly condensed?: Condensed;
  /** Of a run with several logs, each brought to the clock of the first; absent where there is one. */
  readonly joined?: JoinedLogs;
}

/** How a long log was shortened. */
export interface Condensed {
  /** Trusted rows of the file. */
  readonly rows: number;
  /** Most rows of the file that are one row here. */
  readonly longest: number;
}

/** Rows of several logs on one clock: each row is of one log, and a channel has readings in the rows of its own log alone. */
export interface JoinedLogs {
  /** In the author's order; the first has the run's clock. */
  readonly logs: readonly JoinedLog[];
  /** Of each row, the index of its log. */
  readonly ofRow: Uint8Array;
}

export interface JoinedLog {
  readonly name: string;
  /** Path below data/. */
  readonly file: string;
  /** Column of its time. */
  readonly column: string;
  /** Median step of its own rows, s; null with fewer than two. */
  readonly step: number | null;
}

export interface TimeAxis {
  /** Seconds since the first trusted row; never decreasing. */
  readonly seconds: Float64Array;
  readonly column: string;
  readonly format: TimeFormat;
  /** Instant of the first row in epoch seconds, or null where the log does not tell it. */
  readonly start: number | null;
  /** Median step, s; null with fewer than two rows. */
  readonly step: number | null;
  /** Steps longer than five times the median: index of the row after the gap and its length, s. */
  readonly gaps: readonly { readonly row: number; readonly length: number }[];
}

export interface Channel {
  readonly name: string;
  /** Its name for readers, where the author gives one. */
  readonly label?: string;
  readonly quantity: QuantityKind;
  readonly column: string;
  /** Canonical unit of `values`. */
  readonly unit: string;
  /** Unit as the file or author has it. */
  readonly originalUnit: string;
  /** One per row; NaN = no reading. */
  readonly values: Float64Array;
  readonly missing: number;
  /** How finely readings are told apart, in `unit`: the smallest step between distinct readings, what a few levels are all multiples of, or their last decimal; null when it cannot be told. */
  readonly step: number | null;
  readonly at?: MeasuredAt;
  readonly instrument?: string;
  readonly bits?: Readonly<Record<string, string>>;
  readonly sticky?: Readonly<Record<string, string>>;
  readonly shows?: ClockShows;
  /** Index of its log in a run that joins several. */
  readonly log?: number;
}

/** A row that cannot be trusted: kept out, never padded or shifted. With `column` only that cell is kept out, and the row counts. */
export interface SetAside {
  readonly line: number;
  /** 1-based, in UTF-16 units. */
  readonly column?: number;
  /** Without a word of the log, since pages print it of logs that are not offered. */
  readonly reason: string;
  /** The line as it stands, cut at 120 characters. */
  readonly text: string;
}

/** Something inferred by a named method, to be printed as such. */
export interface Inference {
  /** e.g. `time-column`, `unit-from-header`, `load-edge`. */
  readonly method: string;
  readonly statement: string;
}
