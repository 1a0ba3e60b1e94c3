/** The cell of a Markdown table in which a number stands, with the words that name it. */

export interface CellWords {
  readonly cell: string;
  /** The head of its column, and the first cell of its row. */
  readonly head: string;
  readonly first: string;
  /** The other cells of its row. */
  readonly others: string;
  /** The row, white space trimmed: offsets in the source. */
  readonly row: { readonly start: number; readonly end: number };
}

const DELIMITERS = /^[\s>]*\|?\s*:?-+:?\s*(?:\|\s*:?-+:?\s*)*\|?\s*$/;

/** The cell at an offset; undefined where none is. */
export function cellAt(source: string, at: number): CellWords | undefined {
  const start = source.lastIndexOf('\n', at - 1) + 1;
  const line = lineFrom(source, start);
  if (!line.includes('|')) return undefined;
  const above = source.slice(0, start).split(/\r?\n/).slice(0, -1);
  const block = above.slice(above.findLastIndex((each) => /^[\s>]*$/.test(each)) + 1);
  const delimiters = block.findIndex((each) => each.includes('-') && DELIMITERS.test(each));
  if (delimiters < 1) return undefined;
  const cells = cellsOf(line);
  const index = cells.findLastIndex((cell) => start + cell.start <= at);
  const cell = cells[index];
  if (!cell) return undefined;
  const text = (each: { start: number; end: number } | undefined) => (each ? line.slice(each.start, each.end) : '');
  const headLine = block[delimiters - 1] as string;
  const head = cellsOf(headLine)[index];
  const blank = /^[\s>]*/.exec(line)?.[0].length ?? 0;
  return {
    cell: text(cell),
    head: head ? headLine.slice(head.start, head.end) : '',
    first: index === 0 ? '' : text(cells[0]),
    others: cells
      .filter((_, other) => other !== index && other !== 0)
      .map(text)
      .join(' '),
    row: { start: start + blank, end: start + line.trimEnd().length },
  };
}

function lineFrom(source: string, start: number): string {
  return /^[^\r\n]*/.exec(source.slice(start))?.[0] ?? '';
}

/** The stretches between the bars of a line; a bar behind a backslash is none. */
function cellsOf(line: string): { readonly start: number; readonly end: number }[] {
  const bars = [...line.matchAll(/(?<!\\)\|/g)].map(({ index }) => index);
  const from = /^[\s>]*\|/.test(line) ? bars.slice(0, 1).map((bar) => bar + 1) : [0];
  const starts = [...from, ...bars.slice(from[0] === 0 ? 0 : 1).map((bar) => bar + 1)];
  return starts
    .map((start, index) => ({ start, end: (starts[index + 1] ?? line.length + 1) - 1 }))
    .filter(({ start, end }) => start < line.trimEnd().length && end >= start);
}
