/** What a tester should look at before trusting a column. Nothing is taken for missing here: that is the author's to say. */
import { parseNumber } from '../cells/numbers.ts';

/** Readings that stand for "no reading" in common sensors and interfaces, in their own unit. */
const SENTINELS: readonly (readonly [number, string])[] = [
  [-1, 'many loggers write -1 for "no reading"'],
  [85, 'one common 1-wire temperature sensor holds 85 °C after power-on until it has converted'],
  [-127, 'a common driver writes -127 °C for a sensor that does not answer'],
  [-999, 'a usual mark for "no reading"'],
  [-274000, 'the invalid temperature of the Linux thermal interface, in m°C'],
];

export interface ColumnNumbers {
  readonly count: number;
  readonly missing: number;
  readonly min: number;
  readonly max: number;
  readonly mean: number;
  readonly first: number;
  readonly last: number;
  /** Cells that are neither numbers nor empty. */
  readonly text: number;
}

/** Oddities of one column of readings, as sentences without a final stop. */
export function columnOddities(numbers: ColumnNumbers, values: Float64Array, unstated: boolean): string[] {
  const found: string[] = [];
  const { count, min, max } = numbers;
  if (numbers.text > 0) found.push(`${numbers.text} ${numbers.text === 1 ? 'cell is' : 'cells are'} neither a number nor empty`);
  if (count === 0) return found;
  if (min === max && max === 0) found.push('it is 0 throughout: is the sensor absent? Then leave the channel out');
  else if (min === max && count > 1) found.push(`it is ${max} throughout`);
  if (unstated && min === 0 && max === 1 && values.every((value) => Number.isNaN(value) || value === 0 || value === 1)) {
    found.push('it is only 0 and 1: if it tells of throttling, it is a `throttle_flag` and needs no unit');
  }
  for (const [sentinel, why] of SENTINELS) {
    const hits = values.reduce((sum, value) => sum + (value === sentinel ? 1 : 0), 0);
    if (hits === 0 || min === max) continue;
    // A value that a sensor passes on its way is no mark: a mark stands out from its neighbours.
    if (standsOut(values, sentinel))
      found.push(
        `${hits === 1 ? 'one reading is' : `${hits} readings are`} exactly ${sentinel} (${why}); if so, write \`missing: "${sentinel}"\``,
      );
  }
  return found;
}

function standsOut(values: Float64Array, sentinel: number): boolean {
  const others = values.filter((value) => !Number.isNaN(value) && value !== sentinel).sort();
  if (others.length === 0) return false;
  const low = others[0]!;
  const high = others[others.length - 1]!;
  const range = high - low || Math.abs(high) || 1;
  return sentinel < low - range / 4 || sentinel > high + range / 4;
}

/** Count, missing, first, last, least, greatest and mean of a column's cells. */
export function columnNumbers(
  cells: readonly string[],
  mark: '.' | ',',
  strip: (cell: string) => string,
  isMissing: (cell: string) => boolean,
): { numbers: ColumnNumbers; values: Float64Array } {
  const values = Float64Array.from(cells, (cell) => parseNumber(strip(cell), mark));
  let [count, text, sum, min, max, first, last] = [
    0,
    0,
    0,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NaN,
    Number.NaN,
  ];
  values.forEach((value, k) => {
    if (Number.isNaN(value)) {
      if (!isMissing(cells[k]!)) text++;
      return;
    }
    if (count === 0) first = value;
    last = value;
    count++;
    sum += value;
    min = Math.min(min, value);
    max = Math.max(max, value);
  });
  return { numbers: { count, missing: values.length - count - text, text, min, max, first, last, mean: sum / count }, values };
}
