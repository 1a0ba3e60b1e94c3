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
import { notUnderstood } from '../command-line.ts';
import { applyChoices, type Choice, directive, offsetBefore } from './apply.ts';
import { choiceOf, isRefused } from './choices.ts';
import { findNote } from './find-note.ts';
import { groupsOf } from './groups.ts';
import { type ListedNumber, listNumbers, placeOf } from './numbers.ts';
import { type Options, readOptions, USAGE, type Wanted } from './options.ts';
import { choose, type Terminal } from './session.ts';
import { keepShort, widthOf } from './short-lines.ts';
import { forgetHold, type Replaced, rememberHold, undoHold } from './undo.ts';

const MARK = '\uFEFF';

/** Runs the command; the exit code: 0 when all that was asked is done. */
export async function holdNote(root: string, args: readonly string[], terminal: Terminal): Promise<0 | 1 | 2> {
  const refuse = (text: string): 1 => {
    terminal.err(`${text}\n`);
    return 1;
  };
  const options = readOptions(args);
  if (typeof options === 'string') return notUnderstood(terminal, options, USAGE);
  const found = findNote(root, options.file);
  if ('refused' in found) return refuse(found.refused);
  const read = await noteSubjects(root, found.file);
  if (!('note' in read))
    return refuse(report(root, read.problems).trimEnd() || `${found.file} cannot be read: npm run check says why`);
  const source = read.note.text.replace(MARK, '');
  if (options.undo) return undo(root, found.file, terminal);
  const numbers = listNumbers(read.note, read.subjects);
  if (options.list) {
    terminal.out(listText(found.file, numbers));
    return 0;
  }
  if (numbers.length === 0) {
    terminal.out(`${found.file}: no number was noticed that is not held.\n`);
    return 0;
  }
  const choices = await chosen({ file: found.file, numbers, options, subjects: read.subjects }, terminal);
  if (typeof choices === 'string') return refuse(choices);
  return finish({ root, file: found.file, source, numbers, choices, note: read.note, subjects: read.subjects }, terminal);
}

interface Asked {
  readonly file: string;
  readonly numbers: readonly ListedNumber[];
  readonly options: Options;
  readonly subjects: ReadonlyMap<string, Subject>;
}

async function chosen({ file, numbers, options, subjects }: Asked, terminal: Terminal): Promise<Map<number, Choice> | string> {
  if (options.sure || options.take.size > 0) return taken(numbers, options, subjects);
  const count = numbers.length === 1 ? '1 number that nothing holds' : `${numbers.length} numbers that nothing holds`;
  terminal.out(`${file}: ${count}.\n`);
  const choices = await choose(numbers, terminal, (listed, wanted) => choiceOf(listed, wanted, subjects));
  return choices ?? 'broken off: nothing is written';
}

const FIRST: Wanted = { offer: 1, as: 'stated' };

/** The choices of the command line, or what is wrong with the first that cannot be. */
function taken(
  numbers: readonly ListedNumber[],
  { take, sure }: Pick<Options, 'take' | 'sure'>,
  subjects: ReadonlyMap<string, Subject>,
): Map<number, Choice> | string {
  const choices = new Map<number, Choice>();
  const plain = sure ? numbers.filter((each) => each.sure).map(({ number }): [number, Wanted] => [number, FIRST]) : [];
  for (const [number, wanted] of new Map([...plain, ...take])) {
    const listed = numbers[number - 1];
    if (!listed)
      return `there is no number ${number}: ${numbers.length === 1 ? 'there is one' : `there are ${numbers.length}`}; nothing is written`;
    const choice = choiceOf(listed, wanted, subjects);
    if (isRefused(choice)) return `${choice.refused}; nothing is written`;
    choices.set(number, choice);
  }
  return choices;
}

/** Takes back what was written last. */
function undo(root: string, file: string, terminal: Terminal): 0 | 1 {
  const path = realpathSync(join(root, file));
  const bytes = readFileSync(path, 'utf8');
  const undone = undoHold(root, file, bytes.replace(MARK, ''));
  if (typeof undone === 'string') {
    terminal.err(`${undone}\n`);
    return 1;
  }
  writeBack(path, bytes, undone.text);
  forgetHold(root, file);
  const left = undone.left === 0 ? '' : ` ${undone.left} edited since, and left.`;
  terminal.out(`${undone.count} taken back.${left} Written to ${file}.\n`);
  return 0;
}

/** Writes a text over a file, with the mark and the rights that it had. */
function writeBack(path: string, bytes: string, text: string): void {
  const { mode } = statSync(path);
  writeWhole(path, bytes.startsWith(MARK) ? MARK + text : text);
  chmodSync(path, mode);
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
  const applied = applyChoices(source, numbers, choices);
  const text = keepShort(applied, source, widthOf(source));
  const before = errorsOf(note, subjects).length;
  const then = noteWith(root, file, applied);
  const errors = then.note ? errorsOf(then.note, subjects) : then.problems.filter(({ severity }) => severity === 'error');
  if (then.note === undefined || errors.length > before) {
    const told = errors.map(({ place, found, remedy }) => {
      const { line, column } = placeOf(source, offsetBefore(numbers, choices, offsetOf(applied, place)));
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
  writeBack(path, bytes, text);
  rememberHold(root, file, source, text, replacedBy(numbers, choices));
  terminal.out(`${summary(numbers, choices)} Written to ${file}; --undo takes it back.\n`);
  return 0;
}

function replacedBy(numbers: readonly ListedNumber[], choices: ReadonlyMap<number, Choice>): Replaced[] {
  return numbers.flatMap((listed) => {
    const choice = choices.get(listed.number);
    return choice ? [{ was: listed.words, written: directive(listed, choice) }] : [];
  });
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
  const groups = groupsOf(numbers);
  const listed = numbers.map(({ number, line, column, words, unit, before, after, offers, named, near, why, sure }) => ({
    number,
    line,
    column,
    words,
    ...(unit === undefined ? {} : { unit }),
    ...sameAs(number, groups),
    before,
    after,
    ...(named === undefined ? {} : { named }),
    ...(sure && { sure }),
    offers: offers.map((offer, index) => ({ offer: index + 1, ...offer })),
    ...(near.length > 0 ? { near } : {}),
    ...(why === undefined ? {} : { why }),
  }));
  return `${JSON.stringify({ format: 1, file, numbers: listed }, null, 2)}\n`;
}

/** The other numbers that the same answer serves. */
function sameAs(number: number, groups: readonly (readonly ListedNumber[])[]): { readonly same?: readonly number[] } {
  const group = groups.find((each) => each.some((other) => other.number === number)) ?? [];
  const same = group.map((each) => each.number).filter((other) => other !== number);
  return same.length > 0 ? { same } : {};
}
