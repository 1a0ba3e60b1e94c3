/** Surface readings of a run, as its table states them. */
import type { StatedNumber } from '../table-cells.ts';
import type { Contact } from './touch-limits.ts';

/** What a cell says of the contact: a row of the limits, none (nobody touches it), or longer than the table knows. */
export type StatedContact = Contact | 'none' | 'beyond';

export interface SurfaceReading {
  readonly line: number;
  /** Id of the spot, and its words. */
  readonly spot: string;
  readonly title: string;
  readonly part: { readonly id: string; readonly title: string };
  readonly material: string;
  readonly contact: StatedContact;
  /** °C */
  readonly reading: StatedNumber;
  /** Null for a cell that is empty. */
  readonly emissivitySet: number | null;
  readonly emissivity: StatedNumber | null;
  /** °C */
  readonly reflected: StatedNumber | null;
  /** What was done so that a shiny surface can be read: tape, paint. */
  readonly remedy: string | null;
}

export interface Surface {
  /** Path below the project folder. */
  readonly file: string;
  /** Id of the instrument that read them; undefined where the run names none. */
  readonly instrument?: string;
  readonly readings: readonly SurfaceReading[];
  /** Columns of reading, emissivities and reflected temperature, as the header has them. */
  readonly columns: readonly string[];
  /** What was taken as stated though the table does not say it. */
  readonly inferred: readonly string[];
}
