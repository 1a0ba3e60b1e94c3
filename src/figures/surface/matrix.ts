/** A thermal image as cameras export it: a table of temperatures, a cell a pixel. */
import { error, type Problem } from '../../problem.ts';
import { cellsOf, counts, dividerOf, isNumber, LEAST, sharesCommas, unitNamed } from './matrix-cells.ts';

export interface Matrix {
  /** Path below the project folder. */
  readonly file: string;
  readonly width: number;
  readonly height: number;
  /** °C as the camera shows them, row by row from the top. */
  readonly values: Float64Array;
  /** One unit of the last digit written, K. */
  readonly step: number;
  /** Lines above and below it that hold something else. */
  readonly others: number;
}

/** Most pixels of an image. */
const MOST = 2 ** 21;
/** A scene above this is measured in kelvins, or is no scene of a bench, °C. */
const HOTTEST = 1500;
/** No bench is so hot everywhere, °C: a room has about 295 K (common practice, no source). */
const COLDEST = 150;

/**
 * Reads an exported image: numbers divided by commas, semicolons, tabs or blanks, with decimal points or commas. Lines above and below that are no
 * row of numbers are left out, unless they name another unit. What could be read in two ways is refused. Never throws.
 */
export function readMatrix(
  bytes: Uint8Array,
  file: string,
): { readonly matrix: Matrix | null; readonly problems: readonly Problem[] } {
  const lines = textOf(bytes).split(/\r\n|\n|\r/);
  const divider = dividerOf(lines);
  const rows = lines.map((line) => cellsOf(line, divider));
  const isRow = (cells: readonly string[]) => cells.length >= LEAST && cells.every(isNumber);
  const first = rows.findIndex(isRow);
  const last = rows.findLastIndex(isRow);
  const place = (line: number) => ({ file, line: line + 1, column: 1 });
  const refuse = (line: number, found: string, expected: string, remedy = 'export the temperatures anew, as CSV') => ({
    matrix: null,
    problems: [error('bad-image', place(line), found, { expected, remedy })],
  });
  if (first < 0)
    return refuse(0, 'this file is no table of temperatures', `at least ${LEAST} rows of ${LEAST} numbers, a number a pixel`);
  const width = rows[first]!.length;
  for (let row = first; row <= last; row += 1) {
    const cells = rows[row]!;
    const wrong = cells.findIndex((cell) => !isNumber(cell));
    if (wrong >= 0) return refuse(row, `cell ${wrong + 1} of this line is no number`, 'a temperature in each cell');
    if (cells.length !== width)
      return refuse(row, `this line has ${cells.length} cells, and the first ${width}`, 'lines of one length');
  }
  const height = last - first + 1;
  if (height < LEAST || width * height > MOST)
    return refuse(
      first,
      `an image of ${width} × ${height} pixels`,
      `${LEAST} × ${LEAST} pixels or more, at most ${MOST} altogether`,
    );
  if (divider === ',' && sharesCommas(rows.slice(first, last + 1)))
    return refuse(
      first,
      'commas stand between the numbers and in them, so nobody can tell which is which',
      'decimal points, or semicolons between the numbers',
      'export it with another divider',
    );
  const column = rows.slice(first, last + 1).map(([cell = '']) => cell);
  if (counts(rows[first]!) || counts(column)) {
    const counted = counts(rows[first]!) ? 'row' : 'column';
    return refuse(first, `the first ${counted} counts the pixels`, 'temperatures alone', `take the first ${counted} out`);
  }
  const named = lines.findIndex((line, row) => (row < first || row > last) && unitNamed(line) !== null);
  if (named >= 0)
    return refuse(
      named,
      `this line names the unit ${unitNamed(lines[named]!)}`,
      'degrees Celsius',
      'export the temperatures in °C',
    );
  const cells = rows.slice(first, last + 1).flat();
  const values = Float64Array.from(cells, (cell) => Number(cell.replace(',', '.')));
  const far = values.findIndex((value) => !(value > -273.15 && value < HOTTEST));
  if (far >= 0) {
    return refuse(
      first + Math.floor(far / width),
      `a temperature of ${cells[far]} °C in cell ${(far % width) + 1}`,
      'degrees Celsius',
    );
  }
  const coldest = values.reduce((least, value) => Math.min(least, value));
  if (coldest > COLDEST)
    return refuse(
      first,
      `the coldest pixel is ${coldest}: kelvins?`,
      `degrees Celsius, ${COLDEST} at most in the coldest place`,
      'export the temperatures in °C',
    );
  const others = lines.filter((line, row) => (row < first || row > last) && line.trim() !== '').length;
  return { matrix: { file, width, height, values, step: stepOf(cells), others }, problems: [] };
}

/** A mark at the beginning says what its bytes are; without one they are ASCII, as far as numbers go. */
function textOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  return new TextDecoder('utf-8').decode(bytes);
}

function stepOf(cells: readonly string[]): number {
  const digits = cells.reduce((most, cell) => Math.max(most, /[.,](\d*)/.exec(cell)?.[1]?.length ?? 0), 0);
  return 10 ** -Math.min(digits, 6);
}
