/** Holds the numbers of one note: lists them, takes choices from the command line, or asks. Nothing else of the file changes. */
import { chmodSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { noteSubjects, noteWith } from '../../compute/steps/notes/note-subjects.ts';
import { writeWhole } from '../../compute/store/store.ts';
import { report } from '../../print/report.ts';
import type { Place } from '../../problem.ts';
import type { Note } from '../../register/register.ts';
import { write } from '../../words/write.ts';
import type { Subject } from '../../words/written.ts';
import { applyChoices, type Choice, offsetBefore } from './apply.ts';
import { findNote } from './find-note.ts';
import { type ListedNumber, listNumbers, placeOf } from './numbers.ts';
import { type Options, readOptions, USAGE } from './options.ts';
import { choose, type Terminal } from './session.ts';

const MARK = '\uFEFF';

/** Runs the command; the exit code: 0 when all that was asked is done. */
export async function holdNote(root: string, args: readonly string[], terminal: Terminal): Promise<0 | 1> {
  const refuse = (text: string): 1 => {
    terminal.err(`${text}\n`);
    return 1;
  };
  const options = readOptions(args);
  if (typeof options === 'string') return refuse(`${options}\n${USAGE}`.trimEnd());
  const found = findNote(root, options.file);
  if ('refused' in found) return refuse(found.refused);
  const read = await noteSubjects(root, found.file);
  if (!('note' in read))
    return refuse(report(root, read.problems).trimEnd() || `${found.file} cannot be read: npm run check says why`);
  const source = read.note.text.replace(MARK, '');
  const numbers = listNumbers(read.note, read.subjects);
  if (options.list) {
    terminal.out(listText(found.file, numbers));
    return 0;
  }
  if (numbers.length === 0) {
    terminal.out(`${found.file}: every number with a unit is held. Nothing to do.\n`);
    return 0;
  }
  const choices = await chosen(found.file, numbers, options, terminal);
  if (typeof choices === 'string') return refuse(choices);
  return finish({ root, file: found.file, source, numbers, choices, note: read.note, subjects: read.subjects }, terminal);
}

async function chosen(
  file: string,
  numbers: readonly ListedNumber[],
  options: Options,
  terminal: Terminal,
): Promise<Map<number, Choice> | string> {
  if (options.take.size > 0) return taken(numbers, options.take);
  terminal.out(`${file}: ${numbers.length === 1 ? '1 number' : `${numbers.length} numbers`} with a unit that nothing holds.\n`);
  return (await choose(numbers, terminal)) ?? 'broken off: nothing is written';
}

/** The choices of the command line, or what is wrong with the first that cannot be. */
function taken(numbers: readonly ListedNumber[], take: Options['take']): Map<number, Choice> | string {
  const choices = new Map<number, Choice>();
  for (const [number, wanted] of take) {
    const listed = numbers[number - 1];
    if (!listed)
      return `there is no number ${number}: ${numbers.length === 1 ? 'there is one' : `there are ${numbers.length}`}; nothing is written`;
    if (listed.why !== undefined)
      return `number ${number} (${listed.words}) cannot be held as it stands: ${listed.why}; nothing is written`;
    if (typeof wanted !== 'number') choices.set(number, wanted);
    else {
      const offer = listed.offers[wanted - 1];
      if (!offer)
        return `number ${number} (${listed.words}) has ${listed.offers.length === 1 ? '1 that fits' : `${listed.offers.length} that fit`}, and no ${wanted}; nothing is written`;
      choices.set(number, { is: offer.is });
    }
  }
  return choices;
}

interface Chosen {
  readonly root: string;
  readonly file: string;
  readonly source: string;
  readonly numbers: readonly ListedNumber[];
  readonly choices: ReadonlyMap<number, Choice>;
  readonly note: Note;
  readonly subjects: ReadonlyMap<string, Subject>;
}

/** Checks the new text as `check` would, and writes it where the file is still what was read. */
function finish({ root, file, source, numbers, choices, note, subjects }: Chosen, terminal: Terminal): 0 | 1 {
  if (choices.size === 0) {
    terminal.out('Nothing chosen; the file is as it was.\n');
    return 0;
  }
  const text = applyChoices(source, numbers, choices);
  const before = errorsOf(note, subjects).length;
  const then = noteWith(root, file, text);
  const errors = then.note ? errorsOf(then.note, subjects) : then.problems.filter(({ severity }) => severity === 'error');
  if (then.note === undefined || errors.length > before) {
    const told = errors.map(({ place, found, remedy }) => {
      const { line, column } = placeOf(source, offsetBefore(numbers, choices, offsetOf(text, place)));
      return `${place.file}:${line}:${column}: ${found}${remedy ? `; ${remedy}` : ''}`;
    });
    terminal.err(`${told.join('\n')}\nnothing is written\n`);
    return 1;
  }
  const path = realpathSync(join(root, file));
  const bytes = readFileSync(path, 'utf8');
  if (bytes.replace(MARK, '') !== source) {
    terminal.err(`${file} was changed meanwhile: nothing is written; run hold again\n`);
    return 1;
  }
  const { mode } = statSync(path);
  writeWhole(path, bytes.startsWith(MARK) ? MARK + text : text);
  chmodSync(path, mode);
  terminal.out(`${summary(numbers, choices)} Written to ${file}.\n`);
  return 0;
}

function offsetOf(text: string, { line, column }: Place): number {
  const ends = [...text.matchAll(/\r\n|\n|\r/g)];
  const before = ends[line - 2];
  return (before ? before.index + before[0].length : 0) + column - 1;
}

function errorsOf(note: Note, subjects: ReadonlyMap<string, Subject>) {
  return write({ ...note, unheld: 'warn' }, subjects).problems.filter(({ severity }) => severity === 'error');
}

function summary(numbers: readonly ListedNumber[], choices: ReadonlyMap<number, Choice>): string {
  const free = [...choices.values()].filter((choice) => choice === 'free').length;
  const left = numbers.length - choices.size;
  return `${[`${choices.size - free} held`, free > 0 ? `${free} left free` : '', left > 0 ? `${left} as they were` : '']
    .filter((part) => part !== '')
    .join(', ')}.`;
}

/** What `--list` prints. */
function listText(file: string, numbers: readonly ListedNumber[]): string {
  const listed = numbers.map(({ number, line, column, words, before, after, offers, near, why }) => ({
    number,
    line,
    column,
    words,
    before,
    after,
    offers: offers.map((offer, index) => ({ offer: index + 1, ...offer })),
    ...(near.length > 0 ? { near: near.map(({ is, shown, title }) => ({ is, shown, title })) } : {}),
    ...(why === undefined ? {} : { why }),
  }));
  return `${JSON.stringify({ format: 1, file, numbers: listed }, null, 2)}\n`;
}
