/** What all means over a stretch of a log have in common, in words for readers. */

export const LEVEL =
  'Readings scatter about their level: all that departs from it counts as noise, a drift too. How many independent readings they are worth is said; fewer than six are too few for a tested interval.';

export const COURSE =
  'Readings under load scatter about the course of the temperature as it was fitted (one parameter), where the load changed about two levels and what settles between them, else about their level. All other departures count as noise. How many independent readings they are worth is said; fewer than six are too few for a tested interval.';

export const SLOW =
  'Noise that is slower than a tenth of the stretch: it cannot be told from the level itself, and shows as spread between runs.';

export const STEPS =
  'Readings that scatter by less than 0.6 of their step leave open where between two steps the mean lies: the interval then reaches over the step.';

export const GAPS =
  'What was not logged is guessed from the readings about the gap (up to 120 s, or half the gap, to each side). The same guess, made for stretches as long that were logged, says how uncertain that is. Where the level behind the gap differs from that before it by more than it does elsewhere in such a time, it changed somewhere in the gap, and the uncertainty has room for that. A load that came and went in the gap alone leaves no trace.';

export const UNOBSERVED = 'a gap is so long that the logged parts hold fewer than three stretches like it';
