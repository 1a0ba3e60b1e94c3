/** `Sensor 1 .. Sensor 8`: columns that are named alike and numbered in a row, declared in one line. */

const RANGE = /^(.+?)\s+\.\.\s+(.+)$/;
/** Wider loggers than this are declared in several lines. */
const MOST_COLUMNS = 1000;

/** Whether a key is written as a range, right or wrong. */
export function isColumnRange(key: string): boolean {
  return RANGE.test(key);
}

/** The columns of a range, both ends included; null where the two names differ in more than one number, or count down. */
export function columnRange(key: string): readonly string[] | null {
  const [, first = '', last = ''] = RANGE.exec(key) ?? [];
  const [from, to] = [first.split(/(\d+)/), last.split(/(\d+)/)];
  const unlike = from.flatMap((part, k) => (part === to[k] ? [] : [k]));
  const [at] = unlike;
  if (from.length !== to.length || at === undefined || unlike.length > 1 || at % 2 === 0) return null;
  const [low, high] = [Number(from[at]), Number(to[at])];
  if (high <= low || high - low >= MOST_COLUMNS) return null;
  const digits = from[at]!.length;
  return Array.from({ length: high - low + 1 }, (_, k) => {
    const number = String(low + k).padStart(digits, '0');
    return [...from.slice(0, at), number, ...from.slice(at + 1)].join('');
  });
}
