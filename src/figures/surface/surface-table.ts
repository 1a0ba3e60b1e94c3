/** Surface readings of a run, as its table states them. */
import type { StatedNumber } from '../table-cells.ts';
import type { ImagePoint, Region } from './in-image.ts';
import type { Matrix } from './matrix.ts';
import type { Contact } from './touch-limits.ts';

/** What a cell says of the contact: a row of the limits, none (nobody touches it), longer than the table knows, or nothing at all. */
export type StatedContact = Contact | 'none' | 'beyond' | 'unstated';

export interface SurfaceReading {
  readonly line: number;
  /** Id of the spot, and its words. */
  readonly spot: string;
  readonly title: string;
  /** Empty texts where the table has no such column. */
  readonly part: { readonly id: string; readonly title: string };
  /** Empty where the table has no such column. */
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
  /** Where it lies in the thermal image; a region at its hottest pixel. */
  readonly at?: ImagePoint;
  /** Of a region: what the image shows within it. */
  readonly region?: Region;
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
  /** The thermal image that spots and regions lie in. */
  readonly image?: Matrix;
}
