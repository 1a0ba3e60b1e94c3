/** Axes: a domain that holds the data and round ticks on it, fixed by us so that labels can be placed to the pixel. */

export interface Scale {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  /** Decimals that the ticks need. */
  readonly decimals: number;
  /** Each tick has the decimals that it needs itself: 0.1, 1, 10. */
  readonly ragged?: boolean;
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

/** Round numbers of a power of ten, from the most. */
const LEADS = [[1, 1.5, 2, 3, 5, 7], [1, 2, 3, 5], [1, 2, 5], [1, 3], [1]];
/** Ends of a logarithmic axis by less than this factor apart have ticks at even steps. */
const EVEN = 4;

/**
 * The logarithmic domain from `low` to `high` (above zero) as it is, with at most about `count` ticks: at even steps where the ends are
 * near each other (0.9, 1, 1.1), else at round numbers of the powers of ten.
 */
export function logScale(low: number, high: number, count: number): Scale {
  if (high < EVEN * low) {
    const step = niceStep((high - low) / count);
    const { ticks, decimals } = scaleOf(Math.ceil(low / step - 1e-9) * step, high, step);
    return { from: low, to: high, ticks, decimals, log: true };
  }
  const [first, last] = [Math.floor(Math.log10(low)), Math.ceil(Math.log10(high))];
  const powers = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  const found = LEADS.map((leads) =>
    powers.flatMap((power) => leads.map((lead) => Number(`${lead}e${power}`))).filter((tick) => tick >= low && tick <= high),
  );
  const ticks = found.find((each) => each.length <= count + 1) ?? sparse(found.at(-1)!, count);
  return { from: low, to: high, ticks, decimals: 0, ragged: true, log: true };
}

/** Every second, third, … of too many, 1 among them. */
function sparse(powers: readonly number[], count: number): number[] {
  const each = Math.ceil(powers.length / count);
  const one = Math.max(0, powers.indexOf(1));
  return powers.filter((_, i) => (i - one) % each === 0);
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
