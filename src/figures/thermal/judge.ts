/** Applies a criterion of steady state to a smoothed series: how much it still changed, at every time when that can be told. */
import type { Rule } from './criteria.ts';

/** How far from steady at each time: steady where `change` ≤ `most`. Times in seconds, those of the series. */
export interface Judged {
  readonly at: Float64Array;
  readonly change: Float64Array;
  readonly most: number;
  /** Seconds of series that one judgement needs. */
  readonly window: number;
}

/** Where the series is known to end: asymptote and step height, K. */
export interface End {
  readonly asymptote: number;
  readonly height: number;
}

/** Seconds that a rule looks at, for a load that lasts `load` seconds. */
export function windowOf(rule: Rule, load: number): number {
  if (rule.kind === 'within') return 0;
  if (rule.kind !== 'readings') return rule.window;
  return 2 * Math.max(rule.spacing, (rule.shareOfElapsed * load) / (1 + 2 * rule.shareOfElapsed));
}

/** Judges every time of the series; `t` counts from the start of the load. `end` is needed by `within` alone. O(n). */
export function judge(rule: Rule, t: Float64Array, y: Float64Array, end: End | null): Judged {
  switch (rule.kind) {
    case 'change':
      return { ...rangeIn(t, y, rule.window), most: rule.most, window: rule.window };
    case 'slope':
      return { ...slopeIn(t, y, rule.window), most: rule.most, window: rule.window };
    case 'readings':
      return { ...threeReadings(t, y, rule), most: rule.most, window: windowOf(rule, t[t.length - 1] ?? 0) };
    case 'within': {
      const most = rule.of === 'step' ? rule.most * Math.abs(end?.height ?? 0) : rule.most;
      return { at: t, change: y.map((value) => Math.abs(value - (end?.asymptote ?? Number.NaN))), most, window: 0 };
    }
  }
}

type Changes = Pick<Judged, 'at' | 'change'>;

/** Times compare with this slack, so that rounding of a time stamp does not cut a window short. */
const SLACK = 1e-6;

/** Largest less smallest of y over [t, t + window], by two monotonic queues. */
function rangeIn(t: Float64Array, y: Float64Array, window: number): Changes {
  const n = t.length;
  const high = new Int32Array(n);
  const low = new Int32Array(n);
  let [highHead, highTail, lowHead, lowTail, next] = [0, 0, 0, 0, 0];
  const change = new Float64Array(n);
  let i = 0;
  const end = (t[n - 1] ?? 0) + SLACK;
  for (; i < n && t[i]! + window <= end; i++) {
    for (; next < n && t[next]! <= t[i]! + window + SLACK; next++) {
      while (highTail > highHead && y[high[highTail - 1]!]! <= y[next]!) highTail--;
      high[highTail++] = next;
      while (lowTail > lowHead && y[low[lowTail - 1]!]! >= y[next]!) lowTail--;
      low[lowTail++] = next;
    }
    while (high[highHead]! < i) highHead++;
    while (low[lowHead]! < i) lowHead++;
    change[i] = y[high[highHead]!]! - y[low[lowHead]!]!;
  }
  return { at: t.subarray(0, i), change: change.subarray(0, i) };
}

/** Size of the slope of the least-squares line over [t, t + window], reported for the middle of the window; running sums. */
function slopeIn(t: Float64Array, y: Float64Array, window: number): Changes {
  const n = t.length;
  const [t0, y0] = [t[0] ?? 0, y[0] ?? 0];
  const at = new Float64Array(n);
  const change = new Float64Array(n);
  let [st, sy, stt, sty, next, i] = [0, 0, 0, 0, 0, 0];
  const end = (t[n - 1] ?? 0) + SLACK;
  for (; i < n && t[i]! + window <= end; i++) {
    for (; next < n && t[next]! <= t[i]! + window + SLACK; next++) {
      const [a, b] = [t[next]! - t0, y[next]! - y0];
      st += a;
      sy += b;
      stt += a * a;
      sty += a * b;
    }
    const m = next - i;
    const spread = stt - (st * st) / m;
    at[i] = t[i]! + window / 2;
    change[i] = spread > 0 ? Math.abs(sty - (st * sy) / m) / spread : Number.POSITIVE_INFINITY;
    const [c, d] = [t[i]! - t0, y[i]! - y0];
    st -= c;
    sy -= d;
    stt -= c * c;
    sty -= c * d;
  }
  return { at: at.subarray(0, i), change: change.subarray(0, i) };
}

/** Spread or largest increase of three readings from t on, each the last one at or before its time. */
function threeReadings(t: Float64Array, y: Float64Array, rule: Extract<Rule, { kind: 'readings' }>): Changes {
  const n = t.length;
  const change = new Float64Array(n);
  let [second, third, i] = [0, 0, 0];
  const end = (t[n - 1] ?? 0) + SLACK;
  for (; i < n; i++) {
    const spacing = Math.max(rule.spacing, rule.shareOfElapsed * t[i]!);
    if (t[i]! + 2 * spacing > end) break;
    while (second + 1 < n && t[second + 1]! <= t[i]! + spacing + SLACK) second++;
    while (third + 1 < n && t[third + 1]! <= t[i]! + 2 * spacing + SLACK) third++;
    const [a, b, c] = [y[i]!, y[second]!, y[third]!];
    change[i] = rule.judged === 'spread' ? Math.max(a, b, c) - Math.min(a, b, c) : Math.max(b - a, c - b, 0);
  }
  return { at: t.subarray(0, i), change: change.subarray(0, i) };
}

/** First index from which every judgement holds to the end; null when the last one fails or there is none. */
export function holdsFrom({ change, most }: Pick<Judged, 'change' | 'most'>): number | null {
  let first = change.length;
  while (first > 0 && change[first - 1]! <= most * (1 + 1e-9) + 1e-12) first--;
  return first < change.length ? first : null;
}
