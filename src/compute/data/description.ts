/**
 * `datapackage.json`: what a run's files of data are, as a Data Package (Frictionless, version 1: specs.frictionlessdata.io). Its tables
 * are Tabular Data Resources. Chosen over CSVW (W3C), which has no place for a file's digest and size, and wants a description a table.
 */

import type { RunContext } from '../../figures/context.ts';
import { counted } from '../../figures/in-words.ts';
import type { TableLayout } from '../../figures/table-layout.ts';
import { NO_MAKER } from '../../register/files/devices.ts';
import type { Condition, Licence } from '../../register/register.ts';
import type { DataFile } from '../models/data-file.ts';
import type { LogSummary, RunSummary } from '../steps/runs/run-step.ts';
import type { ReadTable } from '../steps/runs/run-tables.ts';
import { encodingLabel } from './encoding.ts';
import { cleanedSchema, type TableSchema, tableSchema } from './fields.ts';
import { timeWords } from './time-words.ts';

export interface Described {
  readonly run: {
    readonly id: string;
    readonly title: string;
    readonly date: string;
    readonly specimen: string;
    readonly setting: readonly Condition[];
    readonly conditions: readonly Condition[];
  };
  readonly device: { readonly title: string; readonly maker: string; readonly invented: boolean };
  readonly licence?: Licence | undefined;
  readonly context: RunContext;
  readonly summary: RunSummary;
  readonly tables: readonly ReadTable[];
  readonly files: readonly DataFile[];
}

/** Says on whom nothing rests where everything is made up. */
const INVENTED = 'Everything in it is invented: device, maker, people and numbers.';

/** The description; null where no file is offered, here or elsewhere. Paths are those beside it. */
export function describeRun(described: Described): object | null {
  const { run, device, files } = described;
  const resources = files.flatMap((file) => resourceOf(described, file) ?? []);
  if (resources.length === 0) return null;
  return {
    profile: 'data-package',
    name: run.id,
    title: run.title,
    description: aboutRun(run, device),
    ...(device.invented ? { invented: true, keywords: ['invented data'] } : {}),
    ...licencesOf(described.licence),
    sources: files.filter(({ source }) => source !== '').map(sourceOf),
    run: run.id,
    date: run.date,
    device: device.title,
    specimen: run.specimen,
    setting: statedOf(run.setting),
    conditions: statedOf(run.conditions),
    resources,
  };
}

/** What a run's data is, in a sentence or two. */
export function aboutRun(run: Pick<Described['run'], 'specimen' | 'date'>, device: Described['device']): string {
  const about = `Readings of one run of the ${device.title}${byMaker(device.maker)}, specimen ${run.specimen}, on ${run.date}.`;
  return device.invented ? `${about} ${INVENTED}` : about;
}

/** " by Larch Works"; nothing where nobody stated the maker. */
function byMaker(maker: string): string {
  return maker.toLowerCase() === NO_MAKER ? '' : ` by ${maker}`;
}

/** Files of the author, offered or not, each with the digest by which it is known. */
function sourceOf({ source, sha256, bytes, elsewhere }: DataFile): object {
  return { title: source, hash: `sha256:${sha256}`, bytes, ...(elsewhere === undefined ? {} : { path: elsewhere }) };
}

function licencesOf(licence: Licence | undefined): object {
  if (!licence) return {};
  const { id, title, url } = licence;
  // One of `name` and `path` must be there; terms without an id or address are told in the title.
  const name = id ?? (url === undefined ? 'other' : undefined);
  return { licenses: [{ ...(name === undefined ? {} : { name }), ...(url === undefined ? {} : { path: url }), title }] };
}

function statedOf(conditions: readonly Condition[]): object {
  return Object.fromEntries(conditions.map(({ name, text }) => [name, text]));
}

function resourceOf(described: Described, file: DataFile): object | null {
  const path = file.path === null ? file.elsewhere : file.name;
  if (path === undefined) return null;
  const common = commonOf(file, path);
  const { summary, context, tables } = described;
  const log = summary.logs.find(({ name }) => name === (file.log ?? ''));
  if (log && file.role === 'cleaned') return tabular(common, 'utf-8', ',', cleanedSchema(log.channels, context), cleanedNote(log));
  const table = tables.find(({ kind }) => kind === file.role && kind !== 'image');
  if (table) return tabular(common, encodingLabel(table.form.encoding), table.form.delimiter, tableSchema(table.form), '');
  const cleaned = described.files.some(({ role, path, log: of }) => role === 'cleaned' && path !== null && of === file.log);
  return { profile: 'data-resource', ...common, ...(log ? rawForm(file, log, cleaned) : {}) };
}

/** A resource is named by its role, and by its log where the run has several. */
export function resourceName({ role, log }: Pick<DataFile, 'role' | 'log'>): string {
  return log === undefined ? role : `${role}-${log.replaceAll('_', '-')}`;
}

function commonOf(file: DataFile, path: string) {
  const { what, bytes, sha256 } = file;
  return { name: resourceName(file), path, title: what, format: 'csv', mediatype: 'text/csv', bytes, hash: `sha256:${sha256}` };
}

/** A table of attempts, which is no run's, as a resource. */
export function describeAttempts(file: DataFile, form: TableLayout): object {
  return tabular(commonOf(file, file.name), encodingLabel(form.encoding), form.delimiter, tableSchema(form), '');
}

function tabular(
  common: { readonly [key: string]: unknown },
  encoding: string,
  delimiter: string,
  schema: TableSchema,
  note: string,
) {
  return {
    profile: 'tabular-data-resource',
    ...common,
    ...(note === '' ? {} : { description: note }),
    encoding,
    dialect: { delimiter, doubleQuote: true, header: true },
    schema,
  };
}

/** As the pattern "Compression of resources" of Data Packages has it (specs.frictionlessdata.io/patterns); the media type is of RFC 6713. */
const PACKED = { mediatype: 'application/gzip', compression: 'gz' };

/** Loggers' own forms, with lines of their own above and between: told in words, since a table schema would not hold. */
function rawForm(
  { role }: DataFile,
  { encoding, delimiter, rows, time, alignment, packed, condensed }: LogSummary,
  cleaned: boolean,
): object {
  if (role === 'redacted') return { description: `As its author redacted it; ${rows} rows of readings` };
  const placed = alignment ? ` ${alignment.statement}` : '';
  const form = `As the logger wrote it; ${condensed?.rows ?? rows} rows of readings, fields parted by ${DELIMITER_WORDS[delimiter] ?? `"${delimiter}"`}, time in column "${time.column}" (${timeWords(time.format)}).${placed}`;
  return {
    ...(packed ? PACKED : {}),
    encoding: encodingLabel(encoding),
    description: cleaned ? `${form} The cleaned readings are the same without its faults.` : form,
  };
}

const DELIMITER_WORDS: Readonly<Record<string, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  ' ': 'blanks',
  '|': 'bars',
};

function cleanedNote({ rows, setAside, repairs, condensed }: LogSummary): string {
  const lines = setAside.filter(({ column }) => column === undefined).length;
  const cells = setAside.length - lines;
  const said = [
    `${condensed ? `${rows} rows, means of up to ${condensed.longest} of the ${condensed.rows} rows of the log` : `${rows} rows, none thinned`}; times and readings in canonical units, as read and before any correction of an instrument`,
    ...(lines > 0 ? [`${counted(lines, 'line')} of the log set aside`] : []),
    ...(cells > 0 ? [`${counted(cells, 'cell')} without a reading that could be trusted`] : []),
    ...repairs.map(({ repair, rows: count }) => `${counted(count, 'row')} repaired: ${repair.reason}`),
  ];
  return `${said.join('; ')}.`;
}
