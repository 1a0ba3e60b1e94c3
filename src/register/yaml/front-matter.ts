/** Takes a file of content/ apart: front matter between two lines `---` at the very start, and the body below. */
import { type HiddenCharacter, hiddenIn } from '../../hidden-characters.ts';
import type { Place } from '../../problem.ts';
import type { ContentFile } from '../register.ts';
import type { Report } from './report.ts';

export interface SplitFile {
  /** Text between the two lines. It begins on line 2. */
  readonly yaml: string;
  readonly body: string;
  /** 1-based line of the file on which the body begins. */
  readonly bodyLine: number;
  /** The whole file, less a byte order mark. */
  readonly text: string;
}

const REMEDY = 'begin the file with a line `---`, the keys below it, and another line `---`';

/** Splits a file; undefined, with a problem, where it has no front matter or is not text. */
export function splitFrontMatter(file: ContentFile, report: Report): SplitFile | undefined {
  const text = file.text.startsWith('\uFEFF') ? file.text.slice(1) : file.text;
  if (!isText(file.path, text, report) || tellHidden(file.path, text, report)) return undefined;
  const opening = /^---[ \t]*(?:\r?\n|$)/.exec(text);
  if (!opening) {
    report.error('no-front-matter', at(file.path, text, 0), foundInstead(text), { expected: 'front matter', remedy: REMEDY });
    return undefined;
  }
  const start = opening[0].length;
  const closing = /^---[ \t]*(?:\r?\n|$)/m.exec(text.slice(start));
  if (!closing) {
    report.error('no-front-matter', at(file.path, text, 0), 'the front matter that begins here is never closed', {
      expected: 'a second line `---`',
    });
    return undefined;
  }
  const bodyStart = start + closing.index + closing[0].length;
  const body = text.slice(bodyStart);
  return {
    yaml: text.slice(start, start + closing.index),
    body: body.trim() === '' ? '' : body,
    bodyLine: at('', text, bodyStart).line,
    text,
  };
}

function foundInstead(text: string): string {
  if (text.trim() === '') return 'the file is empty';
  if (/^\s+---/.test(text)) return 'something stands before the first `---`';
  return 'the file does not begin with a line `---`';
}

/** Control characters and replacement characters tell of another encoding or of a file that is not text. */
function isText(file: string, text: string, report: Report): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  const alien = /[\uFFFD\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F]|\r(?!\n)/.exec(text);
  if (!alien) return true;
  const place = at(file, text, alien.index);
  if (alien[0] === '\r') {
    report.error('line-ends', place, 'there is a carriage return without a line feed', {
      expected: 'lines that end with LF or CR LF',
      remedy: 'save the file with LF line ends',
    });
  } else {
    const found =
      alien[0] === '\uFFFD' ? 'a character here is not valid UTF-8' : `a control character (U+${hex(alien[0])}) stands here`;
    report.error('not-text', place, found, { expected: 'UTF-8 text', remedy: 'save the file as UTF-8' });
  }
  return false;
}

/** Says of each line that holds characters which nobody sees and which change what is seen. */
function tellHidden(file: string, text: string, report: Report): boolean {
  const places = new Map(hiddenIn(text).map((found) => [at(file, text, found.index).line, found]));
  for (const found of places.values()) tellHiddenCharacter(found, at(file, text, found.index), report);
  return places.size > 0;
}

/** The problem of one such character. */
export function tellHiddenCharacter({ name, does }: Pick<HiddenCharacter, 'name' | 'does'>, place: Place, report: Report): void {
  report.error('hidden-character', place, `a character that ${does} (${name})`, {
    expected: 'characters that a reader can see',
    remedy: 'remove it',
  });
}

function hex(character: string): string {
  return character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0');
}

/** Place of an offset of a text. */
function at(file: string, text: string, offset: number): Place {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf('\n') + 1;
  return { file, line: before.split('\n').length, column: offset - lineStart + 1 };
}
