/** Keeps the lines of a text as short as its author keeps them, where a directive makes one longer. */

/** Lines longer than this are whole paragraphs: their author breaks none. */
const UNBROKEN = 200;
/** Lines shorter than this are no measure of how wide their author writes. */
const LEAST = 60;
/** What would begin another block, were it at the start of a line. */
const BLOCK = /^(?:[-+*#>|=~`<]|\d+[.)]|:{2,})/;
/** What stands before the words of a line: quotation marks, or the mark of a list's item. */
const INDENT = /^[ \t>]*(?:(?:[-+*]|\d+[.)])[ \t]+)?/;
const NOT_PROSE = /^(?:[ \t>]*(?:#|\|)|[ \t>]*:{2,}|.*\|.*\|)/;

/** The longest line of prose below the front matter; undefined where lines are not broken. */
export function widthOf(source: string): number | undefined {
  const lines = linesOf(source)
    .slice(frontLines(source))
    .filter((line) => !NOT_PROSE.test(line));
  const longest = Math.max(LEAST, ...lines.map((line) => line.length));
  return longest > UNBROKEN || lines.every((line) => line.length < LEAST) ? undefined : longest;
}

/**
 * Breaks the lines of `text` that are longer than `width` and were not so in `source`, at blanks outside of directives, code and links; what is
 * too much for a line goes to the head of the next one of its paragraph, so that lines stay full. Front matter, headings and tables stay.
 */
export function keepShort(text: string, source: string, width: number | undefined): string {
  if (width === undefined) return text;
  const before = new Set(linesOf(source));
  const end = text.includes('\r\n') ? '\r\n' : '\n';
  const front = frontLines(text);
  const lines = linesOf(text);
  const flows = !isSentenceALine(source);
  const kept: string[] = [];
  let over = '';
  for (const [index, line] of lines.entries()) {
    const whole = over === '' ? line : withHead(line, over);
    const stays = over === '' && (index < front || before.has(line) || NOT_PROSE.test(line));
    const pieces = stays || whole.length <= width ? [whole] : broken(whole, width);
    over =
      pieces.length > 1 && flows && goesOn(line, lines[index + 1]) ? (pieces.pop() as string).trim().replace(/^(?:> ?)+/, '') : '';
    kept.push(...pieces);
  }
  return kept.join(end);
}

/** Whether an author begins a new line with each sentence: then no line takes words of another. */
function isSentenceALine(source: string): boolean {
  const lines = linesOf(source)
    .slice(frontLines(source))
    .filter((line) => line.trim() !== '' && !NOT_PROSE.test(line));
  return lines.length > 0 && lines.every((line) => /[.!?:;]["')\]*_]*\s*$/.test(line));
}

/** What stands before the words of a line that goes on a paragraph: blanks and marks of quotation. */
const AHEAD = /^[ \t>]*/;

function withHead(line: string, head: string): string {
  const ahead = AHEAD.exec(line)?.[0] ?? '';
  return `${ahead}${head} ${line.slice(ahead.length)}`;
}

/** Whether the next line goes on the paragraph of this one, which has no break of its own at its end. */
function goesOn(line: string, next: string | undefined): boolean {
  if (next === undefined || / {2}$|\\$/.test(line) || NOT_PROSE.test(next)) return false;
  const words = next.replace(AHEAD, '');
  return words !== '' && !BLOCK.test(words) && quoted(line) === quoted(next);
}

function quoted(line: string): number {
  return (AHEAD.exec(line)?.[0].match(/>/g) ?? []).length;
}

function broken(line: string, width: number): string[] {
  const indent = INDENT.exec(line)?.[0] ?? '';
  const next = indent.replace(/[^>\s]/g, ' ');
  const pieces = piecesOf(line);
  const lines: string[] = [];
  let current = '';
  for (const piece of pieces) {
    const joined = current === '' ? piece : `${current} ${piece}`;
    const fits = joined.length <= width || current.trim() === '' || current.length <= indent.length || BLOCK.test(piece);
    if (fits) current = joined;
    else {
      lines.push(current);
      current = next + piece;
    }
  }
  return [...lines, current];
}

/** The words of a line; a directive with what stands glued to it, a stretch of code and a link are one word. Blanks at its start stay. */
function piecesOf(line: string): string[] {
  const start = /^\s*/.exec(line)?.[0].length ?? 0;
  const whole = /(?::[a-z]+)?\[[^\]]*\](?:\{[^}]*\}|\([^)]*\))?|`[^`]*`/g;
  const apart = line.slice(start).replace(whole, (each) => each.replaceAll(' ', '\0'));
  const [first = '', ...rest] = apart.split(' ').map((piece) => piece.replaceAll('\0', ' '));
  return [line.slice(0, start) + first, ...rest];
}

function linesOf(text: string): string[] {
  return text.split(/\r?\n/);
}

/** How many lines the front matter takes. */
function frontLines(text: string): number {
  const lines = linesOf(text);
  if (lines[0]?.replace('\uFEFF', '') !== '---') return 0;
  return lines.indexOf('---', 1) + 1;
}
