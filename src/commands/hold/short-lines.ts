/** Keeps the lines of a text as short as its author keeps them, where a directive makes one longer. */

/** Lines longer than this are whole paragraphs: their author breaks none. */
const UNBROKEN = 200;
const LEAST = 100;
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
  return longest > UNBROKEN || lines.every((line) => line.length <= LEAST / 2) ? undefined : longest;
}

/**
 * Breaks the lines of `text` that are longer than `width` and were not so in `source`, at blanks outside of directives, code and links.
 * Front matter, headings and tables stay on their lines.
 */
export function keepShort(text: string, source: string, width: number | undefined): string {
  if (width === undefined) return text;
  const before = new Set(linesOf(source));
  const end = text.includes('\r\n') ? '\r\n' : '\n';
  const front = frontLines(text);
  return linesOf(text)
    .map((line, index) => {
      const stays = index < front || line.length <= width || before.has(line) || NOT_PROSE.test(line);
      return stays ? line : broken(line, width).join(end);
    })
    .join(end);
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
