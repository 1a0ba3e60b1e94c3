/** Applies a criterion of steady state to a smoothed course: how much it still changed, at every time when that can be told. */
import type { EvenCourse } from './course.ts';
import type { Rule } from './criteria.ts';

/** How far from steady at each time: steady where the change is at most `most`. Times in seconds, those of the course. */
export interface Judged {
  readonly at: Float64Array;
  /** Of the course with straight lines across its holes. */
  readonly change: Float64Array;
  /** What was certainly seen to change; 0 where nothing was. */
  readonly least: Float64Array;
  /** What may have changed at the most: infinite where too little of the window was seen. */
  readonly greatest: Float64Array;
  readonly most: number;
  /** Seconds of course that one judgement needs. */
  readonly window: number;
}

/** Where the course is known to end: asymptote and step height, K. */
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

/** Judges every time of the course; its times count from the start of the load. `end` is needed by `within` alone. O(n). */
export function judge(rule: Rule, course: EvenCourse, end: End | null): Judged {
  const { t } = course;
  switch (rule.kind) {
    case 'change':
      return { ...threefold(course, rule.window, (upper, lower) => rangeIn(t, upper, lower, rule.window)), most: rule.most };
    case 'slope':
      return { ...slopes(course, rule.window), most: rule.most, window: rule.window };
    case 'readings': {
      const window = windowOf(rule, t[t.length - 1]!);
      return { ...threefold(course, window, (upper, lower) => threeReadings(t, upper, lower, rule)), most: rule.most };
    }
    case 'within': {
      const most = rule.of === 'step' ? rule.most * Math.abs(end?.height ?? 0) : rule.most;
      const off = (value: number) => Math.abs(value - (end?.asymptote ?? Number.NaN));
      const judged = threefold(course, 0, (upper, lower) => upper.map((value, i) => Math.max(off(value), off(lower[i]!))));
      return { ...judged, most };
    }
  }
}

/** Changes between any upper and any lower course, at the times when that can be told: fewer than the course has. */
type Changes = (upper: Float64Array, lower: Float64Array) => Float64Array;

/** A window must have been seen to this share. */
const SEEN = 0.8;

/** The change along straight lines, what was seen of it, and what the readings beside holes leave room for. */
function threefold({ t, y, seen, upper, lower, unseen }: EvenCourse, window: number, changes: Changes): Omit<Judged, 'most'> {
  const blank = (empty: number) => y.map((value, i) => (seen[i] ? value : empty));
  if (unseen === 0) {
    const change = changes(y, y);
    return { at: t.subarray(0, change.length), change, least: change, greatest: change, window };
  }
  const [none, all] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const filled = (empty: number) => y.map((value) => (Number.isNaN(value) ? empty : value));
  const positive = (values: Float64Array) => values.map((value) => (value > 0 && value < all ? value : 0));
  const change = positive(changes(filled(none), filled(all)));
  const at = t.subarray(0, change.length);
  const least = window === 0 ? change.map((value, i) => (seen[i] ? value : 0)) : positive(changes(blank(none), blank(all)));
  const told = wellSeen(t, seen, at, window);
  const greatest = changes(upper, lower).map((value, i) => (told[i] ? value : all));
  return { at, change, least, greatest, window };
}

/** Whether enough of the window from each time on was seen. */
function wellSeen(t: Float64Array, seen: Uint8Array, at: Float64Array, window: number): Uint8Array {
  const told = new Uint8Array(at.length);
  let [next, count] = [0, 0];
  for (let i = 0; i < at.length; i++) {
    for (; next < t.length && t[next]! <= at[i]! + window + SLACK; next++) count += seen[next]!;
    told[i] = count >= SEEN * (next - i) ? 1 : 0;
    count -= seen[i]!;
  }
  return told;
}

/** Times compare with this slack, so that rounding of a time stamp does not cut a window short. */
const SLACK = 1e-6;

/** Largest of `upper` less smallest of `lower` over [t, t + window], by two monotonic queues. */
function rangeIn(t: Float64Array, upper: Float64Array, lower: Float64Array, window: number): Float64Array {
  const n = t.length;
  const high = new Int32Array(n);
  const low = new Int32Array(n);
  let [highHead, highTail, lowHead, lowTail, next] = [0, 0, 0, 0, 0];
  const change = new Float64Array(n);
  let i = 0;
  const end = (t[n - 1] ?? 0) + SLACK;
  for (; i < n && t[i]! + window <= end; i++) {
    for (; next < n && t[next]! <= t[i]! + window + SLACK; next++) {
      while (highTail > highHead && upper[high[highTail - 1]!]! <= upper[next]!) highTail--;
      high[highTail++] = next;
      while (lowTail > lowHead && lower[low[lowTail - 1]!]! >= lower[next]!) lowTail--;
      low[lowTail++] = next;
    }
    while (high[highHead]! < i) highHead++;
    while (low[lowHead]! < i) lowHead++;
    change[i] = upper[high[highHead]!]! - lower[low[lowHead]!]!;
  }
  return change.subarray(0, i);
}

/**
 * Size of the slope of the least-squares line over [t, t + window], reported for the middle of the window; running sums. A point in a
 * hole may lie anywhere between the readings beside it, which moves the slope by at most half that room times its lever.
 */
function slopes({ t, y, seen, upper, lower }: EvenCourse, window: number): Omit<Judged, 'most' | 'window'> {
  const n = t.length;
  const origin = y.find((value) => !Number.isNaN(value)) ?? 0;
  const make = () => new Float64Array(n);
  const [at, change, least, greatest] = [make(), make(), make(), make()];
  let [st, sy, stt, sty, room, count, next, i] = [0, 0, 0, 0, 0, 0, 0, 0];
  const add = (k: number, sign: 1 | -1): void => {
    if (Number.isNaN(y[k]!)) return;
    const [a, b] = [t[k]! - t[0]!, y[k]! - origin];
    st += sign * a;
    sy += sign * b;
    stt += sign * a * a;
    sty += sign * a * b;
    room += sign * (upper[k]! - lower[k]!);
    count += sign;
  };
  let unseen = 0;
  const end = (t[n - 1] ?? 0) + SLACK;
  for (; i < n && t[i]! + window <= end; i++) {
    for (; next < n && t[next]! <= t[i]! + window + SLACK; next++) {
      add(next, 1);
      unseen += 1 - seen[next]!;
    }
    const spread = stt - (st * st) / Math.max(1, count);
    at[i] = t[i]! + window / 2;
    change[i] = spread > 0 ? Math.abs(sty - (st * sy) / count) / spread : Number.POSITIVE_INFINITY;
    const told = spread > 0 && unseen <= (1 - SEEN) * (next - i);
    const within = told ? ((window / 2) * Math.max(0, room)) / 2 / spread : Number.POSITIVE_INFINITY;
    least[i] = told ? Math.max(0, change[i]! - within) : 0;
    greatest[i] = change[i]! + within;
    add(i, -1);
    unseen -= 1 - seen[i]!;
  }
  const cut = (values: Float64Array) => values.subarray(0, i);
  return { at: cut(at), change: cut(change), least: cut(least), greatest: cut(greatest) };
}

type Readings = Extract<Rule, { kind: 'readings' }>;

/** Spread or largest increase of three readings from t on, each the last one at or before its time. */
function threeReadings(t: Float64Array, upper: Float64Array, lower: Float64Array, rule: Readings): Float64Array {
  const n = t.length;
  const change = new Float64Array(n);
  let [second, third, i] = [0, 0, 0];
  const end = (t[n - 1] ?? 0) + SLACK;
  for (; i < n; i++) {
    const spacing = Math.max(rule.spacing, rule.shareOfElapsed * t[i]!);
    if (t[i]! + 2 * spacing > end) break;
    while (second + 1 < n && t[second + 1]! <= t[i]! + spacing + SLACK) second++;
    while (third + 1 < n && t[third + 1]! <= t[i]! + 2 * spacing + SLACK) third++;
    change[i] =
      rule.judged === 'spread'
        ? Math.max(upper[i]!, upper[second]!, upper[third]!) - Math.min(lower[i]!, lower[second]!, lower[third]!)
        : Math.max(upper[second]! - lower[i]!, upper[third]! - lower[second]!, 0);
  }
  return change.subarray(0, i);
}

/** First index from which every change is at most `most` to the end; null when the last one is not or there is none. */
export function holdsFrom(change: Float64Array, most: number): number | null {
  let first = change.length;
  while (first > 0 && change[first - 1]! <= most * (1 + 1e-9) + 1e-12) first--;
  return first < change.length ? first : null;
}
