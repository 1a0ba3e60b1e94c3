/** The two drawings of each plot: one for a wide column, one for a phone, both to be shown at 1:1 with legible type. */

export interface Size {
  readonly name: 'wide' | 'narrow';
  /** Of the whole drawing, px. */
  readonly width: number;
  /** Type of labels and headings, px. */
  readonly font: number;
  /** Type of ticks and remarks, px. */
  readonly small: number;
  /** Height of the data area, px: alone, and when panels are stacked. */
  readonly height: number;
  readonly stackedHeight: number;
  /** About how many ticks. */
  readonly timeTicks: number;
  readonly valueTicks: number;
  /** Markers on each line. */
  readonly markers: number;
}

export const WIDE: Size = {
  name: 'wide',
  width: 864,
  font: 15,
  small: 14,
  height: 268,
  stackedHeight: 176,
  timeTicks: 8,
  valueTicks: 6,
  markers: 6,
};

/** 344 px: a phone of 360 px less its margins. */
export const NARROW: Size = {
  name: 'narrow',
  width: 344,
  font: 13,
  small: 12,
  height: 230,
  stackedHeight: 150,
  timeTicks: 4,
  valueTicks: 4,
  markers: 3,
};
