/**
 * Where everything of a picture stands that goes into a video or into a feed. Lengths are px of a picture 640 wide, which is drawn
 * three times as wide (1920), six times (3840) or nearly twice (1200).
 *
 * Type: nothing is smaller than a fortieth of the width. Where a phone shows the picture 360 px wide, upright, that is 9 px: at 160 px
 * an inch (a CSS pixel is 0.159 mm there) small letters are 0.7 mm high and capitals 0.9 mm. From 36 cm, at which people were found to hold phones
 * (Bababekova, Rosenfield, Hue and Huang, Optometry and Vision Science 88, 2011, from memory), capitals are then 9 minutes of arc
 * high, twice what normal sight makes out (5 minutes, the definition of normal acuity). Turned sideways the phone shows twice the
 * width, and capitals pass the 16 minutes that ISO 9241-303 asks for as the least (from memory).
 *
 * Margins: a still keeps 5 % of its width and height free at each edge, the area that EBU R 95 calls safe for graphics (from memory).
 */
import { STILL_WIDTH } from '../drawing/size.ts';
import { cut, textWidth, wrap } from '../drawing/text-width.ts';

/** The width that type is measured at, and the least it must then have, px. */
export const PHONE_WIDTH = 360;
export const LEAST_ON_PHONE = 9;

export const WIDTH = 640;
const SIDE = (WIDTH - STILL_WIDTH) / 2;

export interface Format {
  readonly height: number;
  /** Free at the left and right edge, and at the upper and lower one. */
  readonly x: number;
  readonly y: number;
}

/** For video: 16 : 9. */
export const STILL: Format = { height: 360, x: SIDE, y: 18 };

/** For links in feeds: 1200 × 630. No screen cuts its edges off. */
export const SHARE: Format = { height: 336, x: SIDE, y: 12 };

/** Type of titles, of labels, and of what stands small in a corner. */
export const TITLE_SIZE = 21;
export const TEXT_SIZE = 17;
export const SMALL_SIZE = 16;

export const TITLE_LINE = 25;
const MOST_TITLE_LINES = 3;
/** Height of the line at the foot; what is free below the title and above the foot, together. */
export const FOOT_LINE = 18;
const GAPS = 14;

/** Width of what stands between the margins. */
export const INNER_WIDTH = STILL_WIDTH;

/** A title broken into lines of about one length; what is beyond the third line goes, with a sign for it. */
export function titleLines(title: string): string[] {
  const lines = balanced(title, TITLE_SIZE, INNER_WIDTH).map((line) => cut(line, TITLE_SIZE, INNER_WIDTH));
  if (lines.length <= MOST_TITLE_LINES) return lines;
  return [...lines.slice(0, MOST_TITLE_LINES - 1), `${lines[MOST_TITLE_LINES - 1]} …`];
}

/** Height that a still has for what stands below its title. */
export function roomBelow(title: string): number {
  return STILL.height - 2 * STILL.y - titleLines(title).length * TITLE_LINE - FOOT_LINE - GAPS;
}

/** Lines no longer than they must be for their number. */
export function balanced(text: string, size: number, width: number): string[] {
  const lines = wrap(text, size, width, 'semibold');
  if (lines.length < 2) return lines;
  let best = lines;
  for (let narrower = width - 8; narrower > width / 2; narrower -= 8) {
    const tried = wrap(text, size, narrower, 'semibold');
    if (tried.length > lines.length || tried.some((line) => textWidth(line, size, 'semibold') > width)) break;
    best = tried;
  }
  return best;
}
