/** Why intervals of some figures hold the truth more often than 95 %, for readers. */

export const EXTREME =
  'The interval makes room for what may have happened between two readings and for what noise lifts the largest of many; mostly less than that happened.';
export const COUNTED = 'The interval reaches over the whole step of the log in which a change fell, so that it seldom misses.';

export const GOVERNED =
  'Under a governor the clock steps down and then swings in cycles of minutes. Half a cycle later it is off to the other side, which would make its mean better known; the interval takes no credit for that (the sum of autocorrelations ends where it first falls to zero), so that it is wider than need be.';

export const LEFT_OVER =
  'Errors of the instruments cancel, so that the scatter of two means is left; few independent readings tell how large it is, and the interval is made wide for that.';
export const FEW_REPEATS =
  'Few repeats tell how large their scatter is, and degrees of freedom are taken on the safe side (Welch), so that the interval is a little wider than need be.';
