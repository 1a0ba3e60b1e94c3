/** The drawings of each plot: one for a wide column, one for a phone, both to be shown at 1:1 with legible type; and one for a picture that is shown at any size. */

export interface Size {
  readonly name: 'wide' | 'narrow' | 'still';
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

/** A size that pages show. */
export interface PageSize extends Size {
  readonly name: 'wide' | 'narrow';
}

export const WIDE: PageSize = {
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
export const NARROW: PageSize = {
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

/** Width of a still's drawing, px: a picture 640 px wide less its margins. */
export const STILL_WIDTH = 576;

/**
 * Drawings of stills, of which each may be `room` px high. Their smallest type is a fortieth of the picture's width: 9 px where a phone
 * shows that at 360 px (`stills/format.ts` says why that is enough).
 */
export function stillSize(room: number): Size {
  const height = room - AROUND;
  return {
    name: 'still',
    width: STILL_WIDTH,
    font: 17,
    small: 16,
    height,
    stackedHeight: height,
    timeTicks: 7,
    valueTicks: 4,
    markers: 5,
  };
}

/** What stands above and below the data area of a single panel in a still: its heading, the horizontal axis and its title, px. */
const AROUND = 81;
