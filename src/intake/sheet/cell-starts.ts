/** Where the cells of a text without quotes begin. */

export interface CellStarts {
  /** Offset of every cell, and one past the end that a further cell would have. */
  readonly starts: Int32Array;
  /** Index into `starts` of each record's first cell, and one more. */
  readonly first: Int32Array;
}

const LF = 10;

/**
 * Finds every cell in one pass.
 * @param letters - codes by offset: bytes, or the units of a text.
 * @param count - number of lines, each of which is a record.
 * @param guess - how many cells there may be.
 */
export function cellStarts(
  letters: { readonly length: number; readonly at: (offset: number) => number },
  count: number,
  delimiter: number,
  guess: number,
): CellStarts {
  const { at: code } = letters;
  const length = letters.length > 0 && code(letters.length - 1) === LF ? letters.length - 1 : letters.length;
  const first = new Int32Array(count + 1);
  let starts = new Int32Array(Math.max(16, guess));
  let cells = count > 0 ? 1 : 0;
  let record = 0;
  for (let at = 0; at < length; at++) {
    const letter = code(at);
    if (letter !== delimiter && letter !== LF) continue;
    if (cells + 1 >= starts.length) starts = grown(starts);
    if (letter === LF) first[++record] = cells;
    starts[cells++] = at + 1;
  }
  if (count > 0) first[count] = cells;
  starts[cells] = length + 1;
  return { starts, first };
}

function grown(array: Int32Array): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(array.length * 2);
  larger.set(array);
  return larger;
}
