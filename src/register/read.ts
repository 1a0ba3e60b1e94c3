/** Front door: the author's files -> the Register. */

import { compareProblems, type Problem } from '../problem.ts';
import { readAttempts, type StatedAttempts } from './files/attempts.ts';
import { aliasesOf, readComparison, type StatedComparison } from './files/comparisons.ts';
import { readDevice } from './files/devices.ts';
import { type Placed, placeFiles } from './files/folders.ts';
import { readInstrument } from './files/instruments.ts';
import { readNote, type StatedNote } from './files/notes.ts';
import { readQuoted } from './files/quoted.ts';
import { readRun, type StatedRun } from './files/runs.ts';
import { readSetup, type Setup } from './files/setups.ts';
import type { Attempts, Comparison, ContentFile, DataFiles, Device, Instrument, Quoted, Register, Run } from './register.ts';
import { checkSettings } from './resolved/check-settings.ts';
import { checkNames, type Named, resolveRun } from './resolved/resolve-run.ts';
import { tellSameLogs, tellUnusedLimits } from './resolved/suspicions.ts';
import { tellTwoTests } from './resolved/two-tests.ts';
import { checkFormer } from './sections/former-addresses.ts';
import { tellCircles } from './sections/retests.ts';
import { Index } from './values/index-of.ts';
import { readSource, type SourceFile } from './values/source-file.ts';
import { Report } from './yaml/report.ts';

interface Indexes extends Named {
  readonly runs: Index<Run>;
  readonly attempts: Index<Attempts>;
  readonly comparisons: Index<Comparison>;
  readonly quoted: Index<Quoted>;
}

/**
 * Reads all files of content/ at once:
 *
 *     ContentFile[] ─ placeFiles ─► Placed[] ─ readSource ─► SourceFile[] ─ readDevice … readNote ─► what each file states
 *                   ─ resolveRun, references ─► Register
 *
 * A file with errors is left out, and what refers to it is left out without a word: its own errors are told already.
 * Never throws; all problems come together, in the order of files, lines and columns.
 */
export function readRegister(files: readonly ContentFile[], data: DataFiles): { register: Register; problems: Problem[] } {
  const report = new Report();
  const placed = placeFiles(files, report);
  const indexes = readBasics(placed, data, report);
  readRuns(placed, indexes, data, report);
  readTables(placed, indexes, data, report);
  const notes = readNotes(placed, indexes, data, report);
  const runs = indexes.runs.whole();
  tellSameLogs(runs.values(), report);
  if (!indexes.runs.hasBroken) tellUnusedLimits(indexes.devices.whole().values(), runs.values(), report);
  const register: Register = {
    devices: indexes.devices.whole(),
    instruments: indexes.instruments.whole(),
    runs,
    attempts: indexes.attempts.whole(),
    comparisons: indexes.comparisons.whole(),
    quoted: indexes.quoted.whole(),
    notes: notes.whole(),
  };
  tellTwoTests(register, report);
  checkFormer(register, (folder) => new Set(placed.filter((each) => each.folder === folder).map(({ id }) => id)), report);
  return { register, problems: told(report.problems) };
}

/** Reads the files of one folder; `read` gets each file that can be read, its value is kept where nothing was wrong. */
function readFolder<T>(
  placed: readonly Placed[],
  folder: Placed['folder'],
  report: Report,
  read: (source: SourceFile) => T | undefined,
): [string, T | undefined][] {
  return placed
    .filter((each) => each.folder === folder)
    .map(({ id, file }) => {
      const item = report.whole(() => {
        const source = file && readSource(id, file, report);
        return source && read(source);
      });
      return [id, item];
    });
}

function readBasics(placed: readonly Placed[], data: DataFiles, report: Report): Indexes {
  const indexes: Indexes = {
    devices: new Index<Device>('device', 'unknown-device', 'devices'),
    instruments: new Index<Instrument>('instrument', 'unknown-instrument', 'instruments'),
    setups: new Index<Setup>('setup', 'unknown-setup', 'setups'),
    runs: new Index<Run>('run', 'unknown-run', 'runs'),
    attempts: new Index<Attempts>('attempts file', 'unknown-attempts', 'attempts'),
    comparisons: new Index<Comparison>('comparison', 'unknown-comparison', 'comparisons'),
    quoted: new Index<Quoted>('quoted file', 'unknown-quoted', 'quoted'),
  };
  for (const [id, device] of readFolder(placed, 'devices', report, (source) => readDevice(source, report)))
    indexes.devices.add(id, device);
  for (const [id, instrument] of readFolder(placed, 'instruments', report, (source) => readInstrument(source, report))) {
    indexes.instruments.add(id, instrument);
  }
  const setups = readFolder(placed, 'setups', report, (source) => {
    const setup = readSetup(source, data, report);
    checkNames(setup.shared, indexes, report);
    return setup;
  });
  for (const [id, setup] of setups) indexes.setups.add(id, setup);
  return indexes;
}

function readRuns(placed: readonly Placed[], indexes: Indexes, data: DataFiles, report: Report): void {
  const stated: [string, StatedRun | undefined][] = readFolder(placed, 'runs', report, (source) => {
    const run = readRun(source, data, report);
    checkNames(run.shared, indexes, report);
    if (run.setup) indexes.setups.find(run.setup, report);
    return run;
  });
  for (const [id, run] of stated) indexes.runs.add(id, run && resolveRun(run, indexes, report));
  for (const [, run] of stated) if (run?.follows) indexes.runs.find(run.follows, report);
  tellCircles(
    stated.map(([id, run]) => [id, run?.follows] as const),
    report,
  );
}

function readTables(placed: readonly Placed[], indexes: Indexes, data: DataFiles, report: Report): void {
  const attempts = readFolder<StatedAttempts>(placed, 'attempts', report, (source) => {
    const stated = readAttempts(source, data, report);
    const known = stated.device && indexes.devices.find(stated.device, report);
    return known && stated;
  });
  for (const [id, quoted] of readFolder(placed, 'quoted', report, (source) => readQuoted(source, report)))
    indexes.quoted.add(id, quoted);
  for (const [id, stated] of attempts) indexes.attempts.add(id, stated?.attempts);
  const comparisons = readFolder<StatedComparison>(placed, 'comparisons', report, (source) => {
    const stated = readComparison(source, report);
    if (!named(aliasesOf(stated), indexes.runs, report)) return undefined;
    if (stated.quoted.map((to) => indexes.quoted.find(to, report)).includes(undefined)) return undefined;
    const runs = indexes.runs.whole();
    checkSettings(stated, (id) => runs.get(id), report);
    return stated;
  });
  for (const [id, stated] of comparisons) indexes.comparisons.add(id, stated?.comparison);
}

function readNotes(placed: readonly Placed[], indexes: Indexes, data: DataFiles, report: Report): Index<StatedNote['note']> {
  const notes = new Index<StatedNote['note']>('note', 'unknown-note', 'notes');
  const spokenFor = new Index<StatedNote['note']>('note', 'unknown-note', 'notes');
  for (const [folder, kind] of [
    ['notes', 'note'],
    ['scripts', 'script'],
  ] as const) {
    const read = readFolder<StatedNote>(placed, folder, report, (source) => {
      const stated = readNote(source, kind, data, report);
      const found = [
        named(stated.runs, indexes.runs, report),
        named(stated.comparisons, indexes.comparisons, report),
        named(stated.attempts, indexes.attempts, report),
        named(stated.quoted, indexes.quoted, report),
        stated.speaksFor === undefined || spokenFor.find(stated.speaksFor, report) !== undefined,
      ];
      return found.includes(false) ? undefined : stated;
    });
    for (const [id, stated] of read) {
      notes.add(`${folder}/${id}`, stated?.note);
      if (kind === 'note') spokenFor.add(id, stated?.note);
    }
  }
  return notes;
}

/** Looks all aliases up; false where one names nothing, or a file with errors. */
function named<T>(aliases: StatedNote['runs'], index: Index<T>, report: Report): boolean {
  return [...aliases.values()].map(({ to }) => index.find(to, report)).every((item) => item !== undefined);
}

/** In one order, and each once: what runs share is looked at for each of them. */
function told(problems: readonly Problem[]): Problem[] {
  const sorted = [...problems].sort(compareProblems);
  return sorted.filter((problem, index) => index === 0 || compareProblems(problem, sorted[index - 1]!) !== 0);
}
