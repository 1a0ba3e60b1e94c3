/** Time-weighted means of a channel over a stretch of rows, with what makes them uncertain. */
import type { Channel } from '../intake/log.ts';
import type { Part, Quantity } from '../quantities/quantity.ts';
import { kneeCourse } from '../statistics/knee-course.ts';
import { type SeriesCourse, seriesMean } from '../statistics/series-mean.ts';
import { noReadings, type Of, type Reason } from './absent.ts';
import { rangeWords } from './accurate-range.ts';
import type { From, Phase } from './figure.ts';
import { filledWords, fillGaps, gapParts, isFilled, notObserved, type Span, type Unfilled } from './gaps.ts';
import { counted, duration, samplingOf } from './in-words.ts';
import { byFile } from './joined.ts';
import { fileOf, stepIn, timeColumn } from './origin.ts';
import { type Readings, readingsOf } from './readings.ts';
import { scatterOf } from './scatter.ts';
import type { Rows, Soak } from './soak.ts';
import { errorsOf, quantityOf, samplingPart, stepOf, stepPart } from './sources.ts';

/** A value with what it came from, before it is put under a name. */
export interface Measured {
  readonly quantity: Quantity;
  readonly from: From;
  readonly of: Of;
}

/**
 * What the readings of a mean scatter about: their level (of something that should be steady, a drift counts as scatter); a straight line (the
 * mean of something that drifts, such as a room); or how a load goes: as the climb of its own temperature, or, where it changed, at two levels.
 */
export type Course = 'level' | 'line' | 'load';

/** Of a clock of which the author does not say whether it was asked for or really there. */
export const CLOCK_UNSTATED = 'not stated';

/** Squares of readings from here on overflow, so that nothing can be said of their scatter. */
const OVERFLOWS = 1e150;

/** Readings that scatter by this share of their step or more go through all of its parts: their mean hides nothing of a step. */
const DITHERED = 0.6;

export interface Scattered {
  readonly mean: number;
  readonly sampling: Part;
  /** Number of independent readings that would tell as much, and what they scatter about where that is no level. */
  readonly of: Of;
}

/**
 * Mean of the readings and the part that their scatter adds: autocorrelation counted in. Where they scatter less than their steps
 * the mean is never better than step/√12 (a rectangular distribution of one step's width, JCGM 100:2008, F.2.2.1). Needs two readings or more.
 */
export function scatterMean(soak: Soak, readings: Readings, step: number, address: string, about: Course): Scattered {
  const { y } = readings;
  const course = courseOf(soak, readings, about);
  const { mean, u, dof, effectiveCount } = seriesMean(y, readings.observed > 0 ? readings.weights : undefined, course?.course);
  const told = y.every((value) => Math.abs(value) < OVERFLOWS) ? u : Number.NaN;
  const floored = told <= step / Math.sqrt(12) && scatterOf(y).deviation < DITHERED * step;
  const freedom = Number.isFinite(dof) ? dof : null;
  const sampling = floored ? stepPart(soak.context, address, step) : samplingPart(soak.context, address, told, freedom);
  return {
    mean,
    sampling,
    of: { independent_readings: Number(effectiveCount.toPrecision(2)), ...(course ? { scatter_about: course.words } : {}) },
  };
}

interface Followed {
  readonly course: SeriesCourse;
  readonly words: string;
}

/** What the readings follow besides their level; null where nothing, as under a load whose temperature cannot be fitted. */
function courseOf({ warming }: Soak, { t, y }: Readings, about: Course): Followed | null {
  if (about === 'line') return { course: { shapes: [t], parameters: 1 }, words: 'line through them' };
  if (about === 'level' || warming === null) return null;
  if (warming !== 'load changed')
    return { course: { shapes: [t.map((time) => warming(time))], parameters: 1 }, words: 'course of the temperature' };
  const course = kneeCourse(t, y);
  return course && { course, words: 'two levels of a load that changed' };
}

/** Readings under load follow its temperature; those of other phases are of a level. */
export function courseIn(phase: string | null): Course {
  return phase === 'load' ? 'load' : 'level';
}

/**
 * Mean of a channel over rows; `address` names the figure in its sampling source, `words` the stretch in a reason. `span` is what the mean is
 * of: its gaps are filled as `fillGaps` does; where they cannot be, there is no mean. Without one, gaps are left out.
 */
export function meanOf(
  soak: Soak,
  channel: Channel,
  rows: Rows,
  address: string,
  { about = 'level', words = 'this stretch', span = null }: Stretch = {},
): Measured | Reason {
  const readings = readingsOf(soak.log, channel.values, rows);
  if (readings.y.length < 2) return noReadings(channel.name, words);
  const step = stepOf(soak.context, channel);
  const told = meanAcross(soak, readings, step, address, about, span);
  if (!isKnownMean(told)) return notObserved(told, words);
  const { mean, scatter, of } = told;
  const errors = errorsOf(soak.context, channel, mean);
  return {
    quantity: quantityOf(mean, channel.unit, [...errors.parts, ...scatter], { stated: errors.stated, step }),
    from: fromOf(soak, [channel], readings),
    of: { ...placeOf(channel), ...of, ...rangeWords(soak.context, channel, mean) },
  };
}

export interface Stretch {
  readonly about?: Course;
  readonly words?: string;
  readonly span?: Span | null;
}

/** What a mean over a phase is of. */
export function overPhase({ name, from, to }: Phase): Stretch {
  return { about: courseIn(name), words: `the ${name} phase`, span: { from, to } };
}

export interface KnownMean {
  readonly mean: number;
  readonly scatter: readonly Part[];
  readonly of: Of;
}

/** Mean over a span, its gaps filled; or the gap that cannot be. Without a span gaps are left out: the caller asked how much was read. */
export function meanAcross(
  soak: Soak,
  readings: Readings,
  step: number,
  address: string,
  about: Course,
  span: Span | null,
): KnownMean | Unfilled {
  const { mean, sampling, of } = scatterMean(soak, readings, step, address, about);
  if (!span) return { mean, scatter: [sampling], of: { ...gapsOf(readings), ...of } };
  const filled = fillGaps(readings, span);
  if (!isFilled(filled)) return filled;
  if (filled.count === 0) return { mean, scatter: [sampling], of };
  const seconds = readings.observed + filled.seconds;
  return {
    mean: (mean * readings.observed + filled.integral) / seconds,
    scatter: [sampling, ...gapParts(soak, address, filled, 1 / seconds)],
    of: { ...filledWords(filled), ...of },
  };
}

export function isKnownMean(outcome: KnownMean | Unfilled): outcome is KnownMean {
  return 'mean' in outcome;
}

/** Columns with the time column first, and the lines of the readings; file by file where the channels are of several logs. */
export function fromOf(soak: Soak, channels: readonly Column[], readings: Pick<Readings, 'lines'>): From {
  const [read] = channels;
  const logs = [...new Set(channels.map(({ log }) => log))];
  return byFile(
    (logs.length > 0 ? logs : [undefined]).map((log): From => {
      const own = channels.filter((channel) => channel.log === log).map(({ column }) => column);
      const file = fileOf(soak.log, log);
      return {
        columns: [timeColumn(soak.log, log), ...new Set(own)],
        rows: read?.log === log ? readings.lines : null,
        ...(file === undefined ? {} : { file }),
      };
    }),
  );
}

/** A column of a log. */
interface Column {
  readonly column: string;
  readonly log?: number;
}

/** Channel; where it is known, place of measurement; of a clock, whether it is the requested or the delivered one. */
export function placeOf(channel: Channel): Of {
  return { channel: channel.name, ...(channel.at ? { at: channel.at } : {}), ...clockOf(channel) };
}

/** What a channel of the clock shows; nothing of other channels. */
export function clockOf({ quantity, shows }: Channel): Of {
  return quantity === 'clock' ? { clock: shows ?? CLOCK_UNSTATED } : {};
}

/** Names the gaps that a figure leaves out; nothing without gaps. */
export function gapsOf(readings: Pick<Readings, 'gaps' | 'gapTime'>): Of {
  if (readings.gaps === 0) return {};
  return { gaps: `${counted(readings.gaps, 'gap')}, ${duration(readings.gapTime)} left out` };
}

/** How often the channel's log was written, in words. */
export function samplingWords(soak: Soak, channel: Pick<Channel, 'log'>): Of {
  const step = stepIn(soak.log, channel.log);
  if (soak.log.condensed && step !== null && !channel.log) return { sampling: `one mean in ${duration(step)}` };
  return { sampling: samplingOf(step) };
}
