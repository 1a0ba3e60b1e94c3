/** Axes: a domain that holds the data and round ticks on it, fixed by us so that labels can be placed to the pixel. */

export interface Scale {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  /** Decimals that the ticks need. */
  readonly decimals: number;
  /** Equal distances are equal factors. */
  readonly log?: boolean;
}

/** Round steps of minutes and hours, in the unit of the axis. */
const TIME_STEPS = [1, 2, 5, 10, 15, 20, 30, 60, 120, 180, 240, 360, 720, 1440];

/** A domain from tick to tick that holds `low` to `high`, with about `count` steps of 1, 2 or 5 times a power of ten. */
export function niceScale(low: number, high: number, count: number): Scale {
  const step = niceStep((high - low || Math.abs(high) || 1) / count);
  const from = Math.floor(low / step + 1e-9) * step;
  const to = Math.max(Math.ceil(high / step - 1e-9) * step, from + step);
  return scaleOf(from, to, step);
}

/** Steps per power of ten of a logarithmic axis, from the finest. */
const LOG_STEPS = [[1, 1.5, 2, 3, 4, 5, 7], [1, 2, 3, 5], [1, 2, 5], [1]];

/**
 * A logarithmic domain that holds `low` to `high` (above zero), with about `count` ticks: at even steps where the ends are less than a
 * factor of two apart, so that 1.1, 1.2, 1.3 stand there; else at round numbers of each power of ten.
 */
export function logScale(low: number, high: number, count: number): Scale {
  if (high < 2 * low) return { ...niceScale(low, high, count), log: true };
  const powers = Array.from(
    { length: Math.ceil(Math.log10(high)) - Math.floor(Math.log10(low)) + 1 },
    (_, i) => Math.floor(Math.log10(low)) + i,
  );
  const all = LOG_STEPS.map((leads) => powers.flatMap((power) => leads.map((lead) => Number((lead * 10 ** power).toPrecision(2)))));
  const within = all.map((ticks) => ticks.filter((tick) => tick >= low && tick <= high));
  const ticks = within.find((found) => found.length <= count + 1) ?? within.at(-1)!;
  const decimals = Math.max(0, ...ticks.map((tick) => (String(tick).split('.')[1] ?? '').length));
  return { from: low, to: high, ticks, decimals, log: true };
}

/** A domain that would all but reach a tick is stretched to it by at most this share. */
const STRETCH = 0.02;

/** The domain as it is (stretched to a tick just outside it), with ticks on whole minutes (or seconds, or hours) inside it. */
export function timeScale(first: number, last: number, count: number): Scale {
  const span = last - first || 1;
  const wanted = span / count;
  const step = wanted < 1 ? niceStep(wanted) : (TIME_STEPS.find((candidate) => candidate >= wanted) ?? niceStep(wanted));
  const near = (tick: number, end: number) => (Math.abs(tick - end) <= STRETCH * span ? tick : end);
  const from = near(Math.floor(first / step) * step, first);
  const to = near(Math.ceil(last / step) * step, last === first ? first + 1 : last);
  const { ticks, decimals } = scaleOf(Math.ceil(from / step - 1e-9) * step, to, step);
  return { from, to, ticks, decimals };
}

/** Place of a value on a vertical axis of `height` px, from the top. */
export function pixelOf(value: number, scale: Scale, height: number): number {
  return height * (1 - (value - scale.from) / (scale.to - scale.from));
}

/** The step of 1, 2 or 5 times a power of ten that is nearest to `raw` on a logarithmic scale. */
function niceStep(raw: number): number {
  const power = 10 ** Math.floor(Math.log10(raw));
  const lead = raw / power;
  const factor = lead >= Math.sqrt(50) ? 10 : lead >= Math.sqrt(10) ? 5 : lead >= Math.SQRT2 ? 2 : 1;
  return Number((factor * power).toPrecision(1));
}

function scaleOf(from: number, to: number, step: number): Scale {
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const count = Math.floor((to - from) / step + 1e-6);
  const ticks = Array.from({ length: count + 1 }, (_, k) => Number((from + k * step).toFixed(decimals)) + 0);
  return { from: Number(from.toFixed(decimals)), to: Number(to.toFixed(Math.max(decimals, 6))), ticks, decimals };
}
