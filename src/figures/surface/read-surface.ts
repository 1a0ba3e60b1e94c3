/** A CSV of camera or probe readings at named spots → typed rows with located problems. */
import { ID_RULE, idFromWords, isId } from '../../intake/ids.ts';
import { mapTable } from '../../intake/mapped-table.ts';
import { readTable, type TableRow } from '../../intake/table.ts';
import type { ColumnFacts, TableForm, TableMapping } from '../../intake/table-mapping.ts';
import { type Problem, warning } from '../../problem.ts';
import { nearest } from '../../quantities/nearest.ts';
import { isParseFailure, parseQuantity } from '../../quantities/parse.ts';
import { unreadProblems } from '../called-columns.ts';
import { type Cells, cellsOf, placeOfCell, quantityIn, type StatedNumber, tellCell, textOf, type Wanted } from '../table-cells.ts';
import { rangeAbout, readBox, readingAt, readPoint, regionOf } from './in-image.ts';
import type { Matrix } from './matrix.ts';
import type { StatedContact, Surface, SurfaceReading } from './surface-table.ts';
import { CONTACTS, contactOfTime } from './touch-limits.ts';

const NEEDED = ['spot', 'reading'] as const;
const OPTIONAL = [
  'part',
  'material',
  'contact',
  'emissivity_set',
  'emissivity',
  'reflected',
  'id',
  'remedy',
  'at',
  'within',
] as const;
type Name = (typeof NEEDED)[number] | (typeof OPTIONAL)[number];

/** What each column tells. */
const COLUMNS: Readonly<Record<Name, ColumnFacts>> = {
  spot: { about: 'where it was read', example: 'lid above the chip' },
  reading: { about: 'what the camera or probe showed', example: '59.3 °C' },
  part: { about: 'the part of the case that it belongs to', example: 'lid' },
  material: { about: 'what people touch there; touch limits depend on it', example: 'metal' },
  contact: { about: `how people touch it: ${CONTACTS.map((each) => `\`${each}\``).join(', ')}`, example: 'touched briefly' },
  emissivity_set: { about: 'the emissivity that the camera was set to', example: '0.95' },
  emissivity: { about: 'the emissivity of the spot', example: '0.85 ± 0.05' },
  reflected: { about: 'the reflected temperature', example: '23.0 °C' },
  id: { about: "the spot's name in addresses; else made from its words", example: 'lid' },
  at: { about: 'where it lies in the thermal image, from the left and from the top', example: '50 % by 40 %' },
  within: { about: 'a region of the thermal image, whose hottest pixel is the reading', example: '10 .. 90 % by 20 .. 80 %' },
  remedy: { about: 'what was done to the spot so that it can be read', example: 'matt tape' },
};

/** What a table of surface readings may have. */
export const SURFACE_FORM: TableForm = {
  kind: 'surface',
  needed: NEEDED,
  optional: OPTIONAL,
  columns: COLUMNS,
  wide: { head: 'spot', cell: 'reading' },
};

const TEMPERATURE: Wanted = { canonical: '°C', bareUnit: '°C', kind: 'temperature', example: '59.3 °C' };
/** A typed reading further than this from the image about its place is of another place or image, K (common practice, no source). */
const NEAR = 5;
const SHARE: Wanted = { canonical: '1', bare: true, example: '0.95 or 0.85 ± 0.05' };

/** Reads surface readings. A row with an error is left out, the others stand. Never throws. */
export function readSurface(
  bytes: Uint8Array,
  file: string,
  instrument?: string,
  mapping?: TableMapping,
  image?: Matrix,
): { surface: Surface; problems: readonly Problem[] } {
  const read = readTable(bytes, file);
  const mapped = mapTable(read, mapping, SURFACE_FORM);
  const { table, problems } = mapped;
  const cells = cellsOf<Name>(table, 'surface', NEEDED, OPTIONAL);
  cells.problems.unshift(...table.problems, ...problems, ...unreadProblems(read, mapped, mapping, 'surface'));
  const whole = NEEDED.every((name) => cells.columns.has(name));
  const readings: SurfaceReading[] = [];
  for (const row of whole ? table.rows : []) {
    const reading = readRow(cells, row, readings, image);
    if (reading) readings.push(reading);
  }
  const columns = (['reading', 'emissivity_set', 'emissivity', 'reflected'] as const).flatMap(
    (name) => cells.columns.get(name)?.head ?? [],
  );
  const surface = {
    file,
    ...(instrument === undefined ? {} : { instrument }),
    readings,
    columns,
    inferred: [...inferredUnits(cells), ...(image ? ['The numbers of the thermal image are taken as °C.'] : [])],
    ...(image ? { image } : {}),
  };
  return { surface, problems: cells.problems };
}

/** Temperatures without a unit are degrees Celsius, and that is said. */
function inferredUnits(cells: Cells<Name>): string[] {
  const bare = (['reading', 'reflected'] as const).filter(
    (name) =>
      cells.columns.get(name)?.unit === undefined &&
      cells.table.rows.some((row) => Number.isFinite(cells.table.number(textOf(cells, row, name)))),
  );
  return bare.length === 0 ? [] : [`Numbers without a unit in ${bare.map((name) => `\`${name}\``).join(' and ')} are taken as °C.`];
}

function readRow(
  cells: Cells<Name>,
  row: TableRow,
  before: readonly SurfaceReading[],
  image: Matrix | undefined,
): SurfaceReading | null {
  const problems = cells.problems.length;
  const title = wordsIn(cells, row, 'spot');
  const part = wordsIn(cells, row, 'part');
  const material = wordsIn(cells, row, 'material');
  const spot = spotId(cells, row, title, before);
  const partId = partIdOf(cells, row, part, before);
  const contact = contactIn(cells, row);
  const seen = seenIn(cells, row, image);
  const reading = seen?.reading ?? quantityIn(cells, row, 'reading', TEMPERATURE);
  const placed = textOf(cells, row, 'at') !== '' || textOf(cells, row, 'within') !== '';
  if (textOf(cells, row, 'reading') === '' && !seen?.reading && !placed)
    tellCell(cells, row, 'reading', 'a spot without a reading', { remedy: 'leave the row out, or give its reading' });
  if (image && seen?.at && !seen.reading && reading) holdAgainstImage(cells, row, reading.value, rangeAbout(image, seen.at));
  const emissivity = shareIn(cells, row, 'emissivity');
  const emissivitySet = shareIn(cells, row, 'emissivity_set');
  const reflected = quantityIn(cells, row, 'reflected', TEMPERATURE);
  if (
    cells.problems.slice(problems).some(({ severity }) => severity === 'error') ||
    reading === null ||
    spot === null ||
    contact === null
  )
    return null;
  return {
    line: row.line,
    spot,
    title,
    part: { id: partId, title: part },
    material,
    contact,
    reading,
    emissivitySet: emissivitySet?.value ?? null,
    emissivity,
    reflected,
    remedy: textOf(cells, row, 'remedy') || null,
    ...(seen?.at ? { at: seen.at } : {}),
    ...(seen?.region ? { region: seen.region } : {}),
  };
}

/** A reading of the camera that is nothing like its image. One without an emissivity that was set may be a probe's. */
function holdAgainstImage(cells: Cells<Name>, row: TableRow, reading: number, near: ReturnType<typeof rangeAbout>): void {
  if (textOf(cells, row, 'emissivity_set') === '' || (reading > near.coldest - NEAR && reading < near.hottest + NEAR)) return;
  const shown = `${near.coldest.toFixed(1)} to ${near.hottest.toFixed(1)}`;
  cells.problems.push(
    warning(
      'surface-image',
      placeOfCell(cells, row, 'reading'),
      `\`reading\` is \`${textOf(cells, row, 'reading')}\`, and the image has ${shown} °C about that place`,
      { remedy: 'check the place, the reading, and whether the image is in °C and of this run' },
    ),
  );
}

/** What the thermal image says of a row: where it lies, and its reading where the table leaves that to the image. Null for a row that names no place. */
function seenIn(
  cells: Cells<Name>,
  row: TableRow,
  image: Matrix | undefined,
): (Pick<SurfaceReading, 'at' | 'region'> & { readonly reading?: StatedNumber }) | null {
  const [at, within, own] = (['at', 'within', 'reading'] as const).map((name) => textOf(cells, row, name)) as [
    string,
    string,
    string,
  ];
  if (at === '' && within === '') return null;
  const name = within === '' ? 'at' : 'within';
  if (!image) {
    return tellCell(cells, row, name, `\`${name}\` of a run without a thermal image`, {
      remedy: 'name the image at `surface.image` of the run, or leave the cell empty',
    });
  }
  const reading = (value: number): StatedNumber => ({ value, u: null, step: image.step });
  if (within === '') {
    const point = readPoint(at);
    if (point) return { at: point, ...(own === '' ? { reading: reading(readingAt(image, point)) } : {}) };
    return tellCell(cells, row, 'at', `\`at\` is \`${at}\``, {
      expected: 'a place such as `50 % by 40 %`: from the left, from the top',
    });
  }
  if (at !== '' || own !== '') {
    return tellCell(cells, row, 'within', `a region with \`${at === '' ? 'reading' : 'at'}\` beside it`, {
      expected: 'a region alone: its hottest pixel is the reading',
      remedy: 'leave the other cell empty',
    });
  }
  const box = readBox(within);
  const region = box && regionOf(image, box);
  if (region) return { at: region.hottest, region, reading: reading(region.values.reduce((most, value) => Math.max(most, value))) };
  return tellCell(cells, row, 'within', `\`within\` is \`${within}\``, {
    expected: 'a region of a pixel or more such as `10 .. 90 % by 20 .. 80 %`: from left to right, from top to bottom',
  });
}

function wordsIn(cells: Cells<Name>, row: TableRow, name: 'spot' | 'part' | 'material'): string {
  const text = textOf(cells, row, name);
  if (text === '' && cells.columns.has(name)) tellCell(cells, row, name, `no \`${name}\``, { expected: 'words' });
  return text;
}

/** The spot's id: the table's own, else made of its words. Two spots of one id would have one address. */
function spotId(cells: Cells<Name>, row: TableRow, title: string, before: readonly SurfaceReading[]): string | null {
  const own = textOf(cells, row, 'id');
  const name = own === '' ? 'spot' : 'id';
  const id = own === '' ? idFromWords(title) : own;
  if (title === '') return null;
  if (!isId(id))
    return tellCell(cells, row, name, `\`${own || title}\` gives no id`, { expected: ID_RULE, remedy: 'give the row an `id`' });
  const first = before.find(({ spot }) => spot === id);
  if (!first) return id;
  return tellCell(cells, row, name, `the spot \`${title}\` has the id \`${id}\`, as \`${first.title}\` in line ${first.line} has`, {
    remedy:
      'where the table holds several settings or runs, say under `rows` which are meant; else give one spot another name or an `id`',
  });
}

/** The part's id from its words. Other words of the same id would be another part under one address. */
function partIdOf(cells: Cells<Name>, row: TableRow, part: string, before: readonly SurfaceReading[]): string {
  const id = idFromWords(part);
  if (part === '') return '';
  if (!isId(id)) tellCell(cells, row, 'part', `\`${part}\` gives no id`, { expected: ID_RULE });
  const other = before.find((reading) => reading.part.id === id && reading.part.title !== part);
  if (other)
    tellCell(cells, row, 'part', `the part is \`${part}\`, and \`${other.part.title}\` in line ${other.line}`, {
      remedy: 'spell it in one way',
    });
  return id;
}

function contactIn(cells: Cells<Name>, row: TableRow): StatedContact | null {
  if (!cells.columns.has('contact')) return 'unstated';
  const text = textOf(cells, row, 'contact');
  const words = [...CONTACTS, 'none'] as const;
  const known = words.find((word) => word === text);
  if (known) return known;
  const time = parseQuantity(text, { id: 'table', title: '', dof: null });
  if (!isParseFailure(time) && time.unit === 's' && time.value > 0) return contactOfTime(time.value) ?? 'beyond';
  const near = nearest(text, words);
  return tellCell(cells, row, 'contact', text === '' ? 'no `contact`' : `\`contact\` is \`${text}\``, {
    expected: `${words.map((word) => `\`${word}\``).join(', ')}, or a time such as 5 s`,
    ...(near === undefined ? {} : { remedy: `did you mean \`${near}\`?` }),
  });
}

function shareIn(cells: Cells<Name>, row: TableRow, name: 'emissivity' | 'emissivity_set'): StatedNumber | null {
  const share = quantityIn(cells, row, name, SHARE);
  if (share === null || (share.value > 0 && share.value <= 1)) return share;
  return tellCell(cells, row, name, `\`${name}\` is \`${textOf(cells, row, name)}\``, { expected: 'a number above 0, at most 1' });
}
