/** Step response: the measured rise under load with the fitted curve, one time constant marked, and what the fit leaves over. */
import { isPresent } from '../../figures/figure.ts';
import type { LoadSeries } from '../../figures/thermal/load-series.ts';
import type { Channel } from '../../intake/log.ts';
import { error, type Problem } from '../../problem.ts';
import type { PlotRequest } from '../../register/requests.ts';
import { plainName, runName } from '../data/figure-text.ts';
import { slotsOf } from '../data/requested-channels.ts';
import { statedBase } from '../data/rise-over-ambient.ts';
import type { PlotSubject } from '../drawing/drawn.ts';
import { type TimeUnit, timeUnit } from '../drawing/lines/align.ts';
import { type Mean, scatterMeans, spanOfMeans } from '../drawing/lines/means.ts';
import { type Segment, segments } from '../drawing/lines/segments.ts';
import type { Plan, Planned } from '../drawing/plan.ts';
import { stylesOf } from '../drawing/styles.ts';
import { extent } from '../drawing/value-scale.ts';
import { decimalsOf } from '../drawing/wording.ts';
import { courseOf, type Fit, fitOf } from './fit.ts';
import { layOutResponse } from './layout.ts';
import { responseAlt, responseCsv, responseMethod, responseTable, responseTitle } from './words.ts';

/** One run's response. Times in the unit of the axis since the load began. */
export interface Course {
  readonly alias: string;
  /** The run in words. */
  readonly run: string;
  /** The alias, else the channel. */
  readonly name: string;
  readonly label: string;
  /** Style of its run, from 0. */
  readonly k: number;
  readonly x: Float64Array;
  /** Rise over ambient, K, or temperature, °C. */
  readonly y: Float64Array;
  readonly segments: readonly Segment[];
  readonly decimals: number;
  /** Null where there is no fit; `why` then says so. */
  readonly fit: FittedCourse | null;
  readonly why: string;
  /** Means over readings that scatter, drawn where there is no fit. */
  readonly means: readonly Mean[] | null;
}

export interface FittedCourse {
  /** Time constant in the unit of the axis. */
  readonly tau: number;
  readonly figures: Pick<Fit, 'timeConstant' | 'asymptote'>;
  /** Of x in the unit of the axis. */
  readonly at: (x: number) => number;
  /** Means of measured less fitted, K. */
  readonly residuals: readonly Mean[];
}

export interface StepResponse {
  /** Its name for readers. */
  readonly channel: string;
  /** True: rise over ambient in K; false: temperature in °C. */
  readonly rise: boolean;
  readonly time: TimeUnit;
  readonly to: number;
  readonly meanSpan: number;
  readonly courses: readonly Course[];
}

/** Plans the step response of one temperature channel in all runs. */
export function planStepResponse(request: PlotRequest, subjects: readonly PlotSubject[]): Planned {
  const { slots, problems } = slotsOf(request, subjects);
  const [slot, ...others] = slots;
  if (problems.length > 0 || !slot) return problems;
  if (others.length > 0 || slot.channels[0]!.quantity !== 'temperature') return [notOne(request)];
  const bases = subjects.map(statedBase);
  if (bases.some((base) => base === null) && bases.some((base) => base !== null)) return [mixedAmbient(request, subjects, bases)];
  const series = subjects.map((subject, k) => courseOf(subject, slot.channels[k]!));
  const missing = series.flatMap((each, k) => ('why' in each ? [noCourse(request, subjects[k]!, each.why)] : []));
  if (missing.length > 0) return missing;
  const response = responseOf(
    slot.channels[0]!.label ?? plainName(slot.name),
    slot.channels,
    series as LoadSeries[],
    subjects,
    bases,
    stylesOf(request),
  );
  return {
    title: request.title ?? responseTitle(response),
    alt: responseAlt(response),
    method: responseMethod(response),
    csv: responseCsv(response),
    table: responseTable(response),
    layOut: (size) => layOutResponse(response, size),
    shown: response.courses.map(({ name, k }) => ({ name, k })),
  } satisfies Plan;
}

function responseOf(
  channel: string,
  channels: readonly Channel[],
  series: readonly LoadSeries[],
  subjects: readonly PlotSubject[],
  bases: readonly (number | null)[],
  styles: readonly number[],
): StepResponse {
  const longest = Math.max(...series.map(({ lasted }) => lasted));
  const time = timeUnit(longest);
  const meanSpan = spanOfMeans(longest);
  const courses = series.map((each, k) => courseFrom(subjects[k]!, channels[k]!, each, styles[k]!, bases[k] ?? 0, time, meanSpan));
  return { channel, rise: bases.every((base) => base !== null), time, to: longest / time.seconds, meanSpan, courses };
}

function courseFrom(
  subject: PlotSubject,
  channel: Channel,
  series: LoadSeries,
  k: number,
  base: number,
  time: TimeUnit,
  meanSpan: number,
): Course {
  const fit = fitOf(subject, channel, series);
  // The readings as they were fitted: over the room as the device felt it.
  const drawn = 'why' in fit ? series : fit.series;
  const x = drawn.t.map((seconds) => seconds / time.seconds);
  const y = drawn.readings.y.map((value) => value - base);
  const parts = segments(x);
  const width = meanSpan / time.seconds;
  const [low, high] = extent([{ y }]);
  return {
    alias: subject.alias,
    run: runName(subject),
    name: subject.alias || (channel.label ?? plainName(channel.name)),
    label: `${subject.alias || (channel.label ?? plainName(channel.name))}${'why' in fit ? ', no fit' : ''}`,
    k,
    x,
    y,
    segments: parts,
    decimals: decimalsOf(channel.step ?? 0.01),
    means: scatterMeans(x, y, parts, width, high - low),
    ...('why' in fit ? { fit: null, why: fit.why } : { fit: fitted(fit, x, y, parts, { base, time, width }), why: '' }),
  };
}

function fitted(
  fit: Fit,
  x: Float64Array,
  y: Float64Array,
  parts: readonly Segment[],
  { base, time, width }: { readonly base: number; readonly time: TimeUnit; readonly width: number },
): FittedCourse {
  const at = (value: number) => fit.at(value * time.seconds) - base;
  const residuals = y.map((value, i) => value - at(x[i]!));
  const means = scatterMeans(x, residuals, parts, width, 0) ?? pointsOf(x, residuals, parts);
  const tau = isPresent(fit.timeConstant) ? fit.timeConstant.quantity.value / time.seconds : Number.NaN;
  return { tau, figures: fit, at, residuals: means };
}

/** Readings too sparse for means stand for themselves. */
function pointsOf(x: Float64Array, y: Float64Array, parts: readonly Segment[]): Mean[] {
  return parts.flatMap(({ start, end }, segment) =>
    Array.from({ length: end - start }, (_, i) => ({ x: x[start + i]!, y: y[start + i]!, segment })),
  );
}

function notOne(request: PlotRequest): Problem {
  return error('wrong-channels', request.place, `a step response cannot be drawn of ${request.channels.join(', ')}`, {
    expected: 'one channel, of quantity temperature',
    remedy: 'name one temperature channel, or draw a trace',
  });
}

function mixedAmbient(request: PlotRequest, subjects: readonly PlotSubject[], bases: readonly (number | null)[]): Problem {
  const lacking = subjects.filter((_, k) => bases[k] === null).map(runName);
  return error(
    'no-ambient',
    request.place,
    `some runs have an ambient and ${lacking.join(', ')} has none, so rise and temperature would mix`,
    {
      expected: 'an ambient in every run, or in none',
      remedy: 'state the ambient under conditions',
    },
  );
}

function noCourse(request: PlotRequest, subject: PlotSubject, why: string): Problem {
  return error(
    'no-load',
    request.place,
    `the run ${runName(subject)} has no load to draw the response to: ${why.replace(/\.$/, '')}`,
    {
      expected: 'a load phase with readings',
    },
  );
}
