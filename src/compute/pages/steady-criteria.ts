/** The chapter that lists the criteria of steady state: generated from those that the figures use. */
import { CRITERIA } from '../../figures/thermal/criteria.ts';
import { markdownTable } from './markdown-table.ts';

const INTRO = `A device is steady when its temperature no longer changes by more than a criterion allows, and stays so to the end of the load: a
criterion that was met once and broken later does not count. The first one is used unless a run names another under \`steady\`. The time that is
reported is when the first window opens from which on the criterion always holds; for a slope it is the middle of the line. Readings are smoothed
over a minute or five readings, at most a third of the window. Where the ambient is not measured it is taken as constant.`;

const UNCERTAIN = `A window may be steady, not steady, or neither: the step and the noise of a sensor can hide or feign a change, and a gap hides all
of it. The interval of the time reaches from the last window that was certainly not steady to the first from which all certainly are. Where a
sensor is too coarse for the criterion, or a gap lies in the last window, only “not before” is said. Most of the standards below are known second
hand: their rows say so.`;

const REFUSED = `The two criteria by distance from the end value need a fitted step response, and are refused where the load lasted less than
four time constants: an end value that lies further away is a guess.`;

/** In Markdown. */
export const STEADY_CHAPTER = {
  id: 'steady-state',
  title: 'Criteria of steady state',
  markdown: [
    INTRO,
    UNCERTAIN,
    markdownTable(
      ['name', 'what it demands', 'from'],
      CRITERIA.map(({ name, words, source }) => [`\`${name}\``, words, source]),
    ),
    REFUSED,
  ].join('\n\n'),
} as const;
