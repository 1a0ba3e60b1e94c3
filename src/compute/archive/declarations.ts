/**
 * The author's files as an archive holds them. All but notes and scripts are written anew from what was read of them, so that only what
 * is read goes out: no comment, no key that a run takes from nowhere. Notes and scripts keep their lines and columns, since ledgers name them.
 */

import { mapUnder, type Plain, type PlainFile, type PlainMap, plainFile, plainText } from '../../register/portable/plain-values.ts';
import { wholeRun } from '../../register/portable/whole-run.ts';
import { withoutComments } from '../../register/portable/without-comments.ts';
import type { Instrument, Note, Run } from '../../register/register.ts';
import { withoutRemarks } from '../../words/page/without-remarks.ts';
import type { ComputedRun, SiteContents } from '../contents/site-contents.ts';
import type { ReadTable } from '../steps/runs/run-tables.ts';
import { ownLog, readingCleaned } from './cleaned-run.ts';
import type { PlacedFile } from './placed-data.ts';
import type { ArchiveScope } from './scope.ts';

/** Texts of content/ by path. */
export type Texts = ReadonlyMap<string, string>;

/** Keys of a script that name a file which the site does not offer. */
const WITHOUT = ['subtitles'];

/** The declarations that the figures of a scope need, by path: those of the last build where all that they are written from is as it was. */
export function declarations(parts: SiteContents, scope: ArchiveScope, placed: readonly PlacedFile[], texts: Texts) {
  const { devices, instruments, quoted } = scope;
  const runs = [...scope.runs.values()];
  const named = [
    ...devices.map((id) => parts.register.devices.get(id)!),
    ...instruments.map((id) => parts.register.instruments.get(id)!),
    ...quoted.map((id) => parts.register.quoted.get(id)!),
    ...[...runs.map(({ run }) => run), ...[...scope.attempts.values()].map(({ attempts }) => attempts)],
    ...scope.comparisons.map(({ comparison }) => comparison),
    ...scope.notes.map(({ note }) => note),
  ].map(({ file }) => file);
  const setups = runs.flatMap(({ run }) => (run.setup === undefined ? [] : [setupFile(run.setup)]));
  const read = [...new Set([...named, ...setups])].map((path) => [path, texts.get(path)]);
  const measured = runs.map(({ key, summary, data, tables }) => [key, summary, data, tables]);
  return parts.memo.of('declarations of an archive', [read, placed, measured, [...picturesShown(scope)]], () =>
    written(parts, scope, placed, texts),
  );
}

function setupFile(id: string): string {
  return `content/setups/${id}.md`;
}

function written({ register }: SiteContents, scope: ArchiveScope, placed: readonly PlacedFile[], texts: Texts) {
  const read = ({ file: path }: Pick<Run, 'file'>): PlainFile => plainFile({ path, text: texts.get(path) ?? '' });
  const computed = [...scope.runs.values()];
  const pictures = picturesShown(scope);
  const devices = scope.devices.map((id) => register.devices.get(id)!);
  const instruments = scope.instruments.map((id) => register.instruments.get(id)!);
  return new Map<string, string>([
    ...devices.map((device): [string, string] => [device.file, textWithWords(read(device))]),
    ...instruments.map((each): [string, string] => [each.file, textWithWords(ofInstrument(read(each), each, computed))]),
    ...computed.map((each): [string, string] => [each.run.file, textWithWords(shownAlone(ofRun(each, placed, read), pictures))]),
    ...[...scope.attempts.values()].map(({ attempts }): [string, string] => [attempts.file, keysOf(read(attempts))]),
    ...scope.comparisons.map(({ comparison }): [string, string] => [comparison.file, textWithWords(read(comparison))]),
    ...scope.quoted.map((id): [string, string] => {
      const quoted = register.quoted.get(id)!;
      return [quoted.file, keysOf(read(quoted))];
    }),
    ...scope.notes.map(({ note }): [string, string] => [note.file, ofNote(note)]),
  ]);
}

/** Its words print on its page, but for what no page prints. */
function textWithWords({ keys, body }: PlainFile): string {
  return plainText({ keys, body: withoutRemarks(body, false) });
}

/** Words that no page prints stay with their author. */
function keysOf({ keys }: PlainFile): string {
  return plainText({ keys, body: '' });
}

function ofNote({ file: path, text }: Note): string {
  return withoutRemarks(withoutComments({ path, text }, WITHOUT), true);
}

/** What it measures for no run of the archive is left with what pages print of it, its accuracy. */
function ofInstrument({ keys }: PlainFile, { id }: Instrument, runs: readonly ComputedRun[]): PlainFile {
  const used = new Set(runs.flatMap((computed) => quantitiesRead(computed, id)));
  const measures = [...mapUnder(keys, 'measures')].flatMap(([quantity, stated]): [string, Plain][] => {
    if (used.has(quantity)) return [[quantity, stated]];
    const printed = ['accuracy', 'resolution'].flatMap((key): [string, Plain][] => {
      const value = (stated as PlainMap).get(key);
      return value === undefined ? [] : [[key, value]];
    });
    return printed.some(([key]) => key === 'accuracy') ? [[quantity, new Map(printed)]] : [];
  });
  const rest = [...keys].filter(([key]) => key !== 'measures');
  return { keys: new Map([...rest, ...(measures.length === 0 ? [] : [['measures', new Map(measures)] as const])]), body: '' };
}

/** What an instrument read in a run, in a log, off a display or in a table. An ambient may be read by what a thermometer states of temperatures; surfaces are temperatures. */
export function quantitiesRead({ run, summary }: Pick<ComputedRun, 'run' | 'summary'>, id: string): string[] {
  const readers = [...summary.channels, ...(run.context.readings ?? [])];
  const quantities = readers.filter(({ instrument }) => instrument === id).map(({ quantity }) => quantity);
  const temperatures = quantities.includes('ambient') || (run.surface !== undefined && (run.surfaceInstrument ?? id) === id);
  return [...quantities, ...(temperatures ? ['temperature'] : [])];
}

/** Without its setup; and where a log of it is not offered, with what stands in its place. */
function ofRun(
  { run, summary, data, tables }: ComputedRun,
  placed: readonly PlacedFile[],
  read: (of: Pick<Run, 'file'>) => PlainFile,
): PlainFile {
  const setup = run.setup === undefined ? undefined : read({ file: setupFile(run.setup) });
  const own = placed.filter(({ of }) => of === `runs/${run.id}`);
  return data.reduce(
    (whole, { name, sharedAs }, index) => {
      if (sharedAs === 'as it came') return whole;
      const ofLog = own.filter(({ file }) => (file.log ?? '') === name);
      const below = (role: string) => ofLog.find(({ file }) => file.role === role)?.path?.replace(/^data\//, '');
      const redacted = below('redacted');
      if (redacted !== undefined) return readingRedacted(whole, name, redacted);
      const cleaned = below('cleaned');
      return cleaned === undefined
        ? whole
        : readingCleaned(whole, summary.logs[index]!, cleaned, tables.some(tellsTime) || (index === 0 && othersGoOut(data)));
    },
    wholeRun(read(run), setup),
  );
}

/** Paths below data/ of the pictures that an archive holds. */
function picturesShown({ notes }: ArchiveScope): ReadonlySet<string> {
  return new Set(notes.flatMap(({ written }) => (written.pictures ?? []).map(({ path }) => path)));
}

/** Without the photographs that its archive does not hold. */
function shownAlone(run: PlainFile, pictures: ReadonlySet<string>): PlainFile {
  const surface = mapUnder(run.keys, 'surface');
  const photographs = [...mapUnder(surface, 'photographs')];
  if (photographs.every(([path]) => pictures.has(path))) return run;
  const shown = new Map(photographs.filter(([path]) => pictures.has(path)));
  const rest = [...surface].filter(([key]) => key !== 'photographs');
  const kept = new Map<string, Plain>(shown.size === 0 ? rest : [...rest, ['photographs', shown]]);
  return { ...run, keys: new Map([...run.keys, ['surface', kept]]) };
}

/** Whether a further log goes out as it is: by the first log's start it has its place. */
export function othersGoOut(data: readonly Pick<ComputedRun['data'][number], 'sharedAs' | 'redacted'>[]): boolean {
  return data.slice(1).some(({ sharedAs, redacted }) => sharedAs === 'as it came' || redacted !== null);
}

/** Whether a table says when its rows were measured. */
function tellsTime({ form }: ReadTable): boolean {
  return form.columns.some(({ name }) => name === 'start' || name === 'end');
}

function readingRedacted(run: PlainFile, name: string, path: string): PlainFile {
  const log = new Map(ownLog(run, name));
  log.set('file', path);
  log.delete('redacted');
  const entry = name === '' ? (['log', log] as const) : (['logs', new Map([...mapUnder(run.keys, 'logs'), [name, log]])] as const);
  return { ...run, keys: new Map([...run.keys, entry]) };
}
