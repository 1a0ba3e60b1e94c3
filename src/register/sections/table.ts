/** How a run, a setup or an attempts file names a small table, and what of it is said in words of ours. */
import {
  type DeclaredTest,
  ERROR_MEANINGS,
  type MappedColumn,
  type TableForm,
  type TableMapping,
} from '../../intake/table-mapping.ts';
import type { Place } from '../../problem.ts';
import type { DataFiles, Photographs } from '../register.ts';
import { dataPathOf } from '../values/data-path.ts';
import { exampleOf } from '../values/examples.ts';
import { textIn } from '../values/mapping.ts';
import { meant, oneOf } from '../values/names.ts';
import { map, optional, readShape, type ShapeOf, shape, tellEmpty, text } from '../values/shape.ts';
import type { Reference } from '../values/stated-value.ts';
import { textsOf, wordOf } from '../values/values.ts';
import type { Entry, MapNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { rowsOf } from './log.ts';
import { photographsOf } from './photographs.ts';
import { referenceOf } from './shared-keys.ts';

const LAYOUTS = ['long', 'wide'] as const;
/** The keys of a table of one kind, with examples of a column, of what holds for every row, and of a column without a unit. */
function mappingKeys({
  columns,
  everyRow,
  units,
}: {
  readonly columns: string;
  readonly everyRow: string;
  readonly units: string;
}) {
  return {
    file: optional(text, 'where the table is', { form: 'path' }),
    columns: optional(map, 'what the table calls our columns', {
      means: 'our name, then the header or a list of headers, one for each repeat',
      example: columns,
    }),
    words: optional(map, 'what its words mean, whole cells only', {
      means: 'the word of the table, then ours',
      example: 'ok: passed',
    }),
    rows: optional(map, 'the column that tells settings or runs apart, and whose rows are read', {
      means: 'one column and one of its values',
      example: 'Clock: 1900',
    }),
    layout: optional(text, 'a row for each value, or a column for each test or spot', { words: LAYOUTS, otherwise: 'long' }),
    every_row: optional(map, 'what holds for every row and stands in none', {
      means: 'our name of a column, then the cell',
      example: everyRow,
    }),
    units: optional(map, 'the units of columns that state none', {
      means: 'our name of a column, then the unit',
      example: units,
    }),
    share: optional(text, 'all of the table may go out, also rows of other runs and columns that nothing reads', {
      words: ['as it came'],
    }),
  };
}

export const SCORES = shape({
  ...mappingKeys({ columns: 'test: Benchmark', everyRow: 'unit: MB/s', units: 'clock: MHz' }),
  tests: optional(map, 'which is better for each test, and its unit where the table states none', {
    means: 'the name of a test, then `higher` or `lower`, then a unit behind a comma',
    example: 'Wide copy: higher, MB/s',
  }),
  error_is: optional(text, 'what a column `error` states: limits, the standard deviation of the mean, or a 95 % interval', {
    words: ERROR_MEANINGS,
  }),
});
export const SURFACE = shape({
  ...mappingKeys({ columns: 'spot: Place', everyRow: 'contact: held', units: 'reading: °F' }),
  image: optional(text, 'a thermal image as a table of temperatures; `at` and `within` of the readings are places in it', {
    form: 'path',
    example: 'larch-2/fast-thermal.csv',
  }),
  photographs: optional(map, 'photographs on which its spots are marked, with their temperatures, where a note shows them', {
    means: 'the path of a photograph, and below it the name of a spot and where it lies',
    example: 'larch-2/bench.jpg:\n    Lid centre: 46 % by 44 %',
  }),
  instrument: optional(text, 'what took the readings; one of `instruments`', { form: 'id', example: 'camera' }),
});
export const TABLE = shape(mappingKeys({ columns: 'outcome: Result', everyRow: 'voltage_offset: 0 mV', units: 'clock: MHz' }));

export type TableKey = 'scores' | 'surface' | 'table';

export interface StatedTable {
  readonly file?: string;
  readonly place: Place;
  /** Of surface readings: what took them. */
  readonly instrument?: Reference;
  /** Path below data/ of their thermal image. */
  readonly image?: string;
  /** Photographs on which their spots are marked. */
  readonly photographs?: Photographs;
  readonly mapping: TableMapping;
}

/** A path, or a mapping of the path and what is declared of the table. */
export function readTableKey(
  node: TextNode | MapNode | undefined,
  key: TableKey,
  form: TableForm,
  data: DataFiles,
  report: Report,
): StatedTable | undefined {
  if (!node) return undefined;
  if (node.kind === 'text') {
    const file = dataPathOf(node, key, data, report);
    return { ...(file === undefined ? {} : { file }), place: node.place, mapping: {} };
  }
  const kinds = { scores: SCORES, surface: SURFACE, table: TABLE };
  const fields: ShapeOf<typeof SCORES> & ShapeOf<typeof SURFACE> = readShape(kinds[key], node, `\`${key}\``, node.place, report);
  const file = dataPathOf(fields.file, 'file', data, report);
  const instrument = referenceOf(fields.instrument, 'instrument', report);
  const image = dataPathOf(fields.image, 'image', data, report);
  const photographs = photographsOf(fields.photographs, data, report);
  return {
    ...(file === undefined ? {} : { file }),
    place: fields.file?.place ?? node.place,
    ...(instrument ? { instrument } : {}),
    ...(image === undefined ? {} : { image }),
    ...(photographs === undefined ? {} : { photographs }),
    mapping: mappingOf(fields, form, report),
  };
}

function mappingOf(fields: ShapeOf<typeof SCORES>, form: TableForm, report: Report): TableMapping {
  const columns = fields.columns && columnsOf(fields.columns, form, report);
  const words = fields.words && textsUnder(fields.words, report);
  const layout = wordOf(fields.layout, 'layout', LAYOUTS, report);
  const everyRow = fields.every_row && ofOurs(fields.every_row, 'every_row', form, report);
  const units = fields.units && ofOurs(fields.units, 'units', form, report);
  const tests = fields.tests && testsOf(fields.tests, report);
  const errorIs = wordOf(fields.error_is, 'error_is', ERROR_MEANINGS, report);
  const share = wordOf(fields.share, 'share', ['as it came'] as const, report);
  if (layout === 'wide' && !form.wide)
    report.error('bad-table', fields.layout!.place, '`layout` is `wide`, and a table of attempts has a row an attempt', {
      remedy: 'remove this line',
    });
  return {
    ...(columns ? { columns } : {}),
    ...(words ? { words } : {}),
    ...rowsOf(fields.rows, report),
    ...(layout === undefined ? {} : { layout }),
    ...(everyRow ? { everyRow } : {}),
    ...(units ? { units } : {}),
    ...(tests ? { tests } : {}),
    ...(errorIs === undefined ? {} : { errorIs }),
    ...(share === undefined ? {} : { share }),
  };
}

/** Our names of columns -> what the table calls them, one or a list. */
function columnsOf(node: MapNode, form: TableForm, report: Report): MappedColumn[] {
  return [...node.entries.values()].flatMap((entry): MappedColumn[] => {
    if (!isOurs(entry, 'columns', form, report)) return [];
    const { value } = entry;
    if (value.kind === 'empty') tellEmpty(entry.key, entry.keyPlace, report);
    if (value.kind !== 'text' && value.kind !== 'list') return [];
    const heads = textsOf(value, entry.key, entry.keyPlace, report)?.map((each) => each.text) ?? [];
    return heads.length === 0 ? [] : [{ name: entry.key, heads, place: entry.keyPlace }];
  });
}

function isOurs({ key, keyPlace }: Entry, where: string, form: TableForm, report: Report): boolean {
  const ours = [...form.needed, ...form.optional];
  if (ours.includes(key)) return true;
  report.error('bad-table', keyPlace, `\`${where}\` names \`${key}\`, which a table of ${form.kind} does not have`, {
    expected: oneOf(ours),
    remedy: meant(key, ours).remedy ?? 'write our name first, then what the table calls it: `test: Benchmark`',
  });
  return false;
}

function ofOurs(node: MapNode, where: string, form: TableForm, report: Report): Record<string, string> {
  const entries = [...node.entries.values()].filter((entry) => isOurs(entry, where, form, report));
  return textsOfEntries(entries, report);
}

function textsUnder(node: MapNode, report: Report): Record<string, string> {
  return textsOfEntries([...node.entries.values()], report);
}

function textsOfEntries(entries: readonly Entry[], report: Report): Record<string, string> {
  const texts = entries.flatMap((entry): [string, string][] => {
    if (entry.value.kind === 'empty') tellEmpty(entry.key, entry.keyPlace, report);
    const value = entry.value.kind === 'empty' ? undefined : textIn(entry, report);
    return value === undefined ? [] : [[entry.key, value.text]];
  });
  return Object.fromEntries(texts);
}

/** `Wide copy: higher`, or with the unit behind: `Wide copy: higher, MB/s`. */
function testsOf(node: MapNode, report: Report): Record<string, DeclaredTest> {
  const texts = textsUnder(node, report);
  const tests = Object.entries(texts).flatMap(([title, said]): [string, DeclaredTest][] => {
    const [, better = '', unit] = /^(\S+?)(?:\s*,\s*(.+))?$/.exec(said) ?? [];
    if (better === 'higher' || better === 'lower') return [[title, { better, ...(unit === undefined ? {} : { unit }) }]];
    report.error('bad-table', node.entries.get(title)!.value.place, `\`${title}\` is \`${said}\``, {
      expected: '`higher` or `lower`, which is better, and where the table states no unit the unit behind a comma: `higher, MB/s`',
    });
    return [];
  });
  return Object.fromEntries(tests);
}

/** A table without a file, in itself and in its setup. */
export function tellNoFile({ place }: StatedTable, key: TableKey, report: Report): void {
  report.error('missing-key', place, `\`${key}\` names no \`file\``, {
    remedy: `write for instance \`${exampleOf(key)!.replace(/^\w+/, 'file')}\` below \`${key}:\``,
  });
}

/** What a run states of a table laid over what its setup states of it: by column, word and test; all else whole. A run that names none has none. */
export function inheritTable(setup: StatedTable | undefined, run: StatedTable | undefined): StatedTable | undefined {
  if (!setup || !run) return run;
  const [under, over] = [setup.mapping, run.mapping];
  const named = new Set((over.columns ?? []).map(({ name }) => name));
  const columns = [...(under.columns ?? []).filter(({ name }) => !named.has(name)), ...(over.columns ?? [])];
  const merged = (key: 'words' | 'everyRow' | 'units' | 'tests') =>
    under[key] || over[key] ? { [key]: { ...under[key], ...over[key] } } : {};
  return {
    ...setup,
    ...run,
    mapping: {
      ...under,
      ...over,
      ...(columns.length > 0 ? { columns } : {}),
      ...merged('words'),
      ...merged('everyRow'),
      ...merged('units'),
      ...merged('tests'),
    },
  };
}
