/** Columns of cells -> channels: numbers in canonical units, no reading where a cell holds none. */
import { error, type Problem, warning } from '../../problem.ts';
import type { Unit } from '../../quantities/units.ts';
import { MISSING_MARKERS } from '../cells/cells.ts';
import { type FlagBase, flagBase, isLetteredWord, parseFlag } from '../cells/flags.ts';
import { parseNumber } from '../cells/numbers.ts';
import type { Channel, ChannelDeclaration, Inference, QuantityKind } from '../log.ts';
import type { Acknowledged } from '../report/known.ts';
import type { Reporter } from '../report/report.ts';
import type { Sheet } from '../sheet/open.ts';
import { pickColumn } from '../sheet/pick.ts';
import { type CellNumber, numberInUnit, usualSuffix } from './cell-units.ts';
import { settleUnit } from './column-unit.ts';
import { decimalDoubt, groupedDoubt } from './decimal-doubt.ts';
import { readingStep } from './resolution.ts';

export interface ReadChannel {
  /** null where an error makes the channel unusable. */
  readonly channel: Channel | null;
  readonly problems: readonly Problem[];
  readonly inferences: readonly Inference[];
}

/** Reads one declared channel over the trusted records of a sheet. */
export function readChannel(sheet: Sheet, declaration: ChannelDeclaration, kept: Int32Array, reporter: Reporter): ReadChannel {
  const field = pickColumn(sheet, declaration.column, declaration.place, `the channel ${declaration.name}`);
  if (typeof field !== 'number') return { channel: null, problems: [field], inferences: [] };
  return declaration.quantity === 'throttle_flag'
    ? readFlags(sheet, declaration, field, kept, reporter)
    : readNumbers(sheet, declaration, field, kept, reporter);
}

function readNumbers(
  sheet: Sheet,
  declaration: ChannelDeclaration,
  field: number,
  kept: Int32Array,
  reporter: Reporter,
): ReadChannel {
  const suffix = suffixOf(sheet, field, kept);
  const unitsLine = sheet.units?.[field];
  const name = sheet.names?.[field] ?? sheet.keys[field]!;
  const evidence = { quantity: declaration.quantity, name, ...(unitsLine ? { unitsLine } : {}), ...(suffix ? { suffix } : {}) };
  const settled = settleUnit(declaration, evidence);
  const { unit } = settled;
  const doubt = decimalDoubt(sheet, declaration, field);
  if (!unit || doubt) return { channel: null, problems: [...settled.problems, ...(doubt ? [doubt] : [])], inferences: [] };
  const { values, missing, decimals, coarsest, others } = convert(
    sheet,
    declaration,
    field,
    kept,
    unit.decimal ?? 0,
    suffix,
    reporter,
  );
  const grouped = decimals + (unit.decimal ?? 0) === 3 ? groupedDoubt(sheet, declaration, field, kept) : null;
  if (grouped) return { channel: null, problems: [...settled.problems, grouped], inferences: [] };
  const step =
    declaration.quantity === 'clock'
      ? lastDecimal(missing < values.length, decimals)
      : stepOf(values, decimals, BY_METERS.has(declaration.quantity) ? coarsest : null);
  const ratio = unit.decimal === undefined ? unit.factor : 1;
  if (ratio !== 1 || unit.offset !== 0)
    for (let row = 0; row < values.length; row++) values[row] = values[row]! * ratio + unit.offset;
  const channel = channelOf(declaration, values, missing, unit, settled.original, step === null ? null : step * ratio);
  return {
    channel,
    problems: [...settled.problems, ...lackOfReadings(declaration, missing, kept.length, reporter.known)],
    inferences: [...settled.inferences, ...inOtherUnits(sheet, declaration, field, others)],
  };
}

/** Meters that change their range write a unit into each cell: 980 mA, then 1.02 A. */
function inOtherUnits(
  { keys }: Sheet,
  { name }: ChannelDeclaration,
  field: number,
  others: ReadonlyMap<string, number>,
): Inference[] {
  return [...others].map(([spelling, count]) => {
    const statement = `${count === 1 ? 'One cell' : `${count} cells`} of \`${keys[field]}\` (${name}) ${count === 1 ? 'is' : 'are'} in ${spelling}, as ${count === 1 ? 'it says' : 'they say'}.`;
    return { method: 'unit-in-cell', statement };
  });
}

interface Converted {
  /** Times the power of ten of the unit. */
  readonly values: Float64Array;
  readonly missing: number;
  /** Most decimals that a value has: those written, less the power of ten of the unit. */
  readonly decimals: number;
  /** The same of the unit that is written most coarsely, of those in a fair share of the cells. */
  readonly coarsest: number;
  /** Cells in another unit than the rest, by its spelling. */
  readonly others: ReadonlyMap<string, number>;
}

function convert(
  sheet: Sheet,
  declaration: ChannelDeclaration,
  field: number,
  kept: Int32Array,
  shift: number,
  suffix: string | undefined,
  reporter: Reporter,
): Converted {
  const { records } = sheet;
  const mark = sheet.dialect.decimal;
  const others = new Map<string, number>();
  const otherDecimals = new Map<string, number>();
  const odd = oddCellReader(sheet, declaration, field, suffix, reporter);
  const declared = declaration.missing ? new Set(declaration.missing) : null;
  const values = new Float64Array(kept.length);
  let missing = 0;
  // A declared marker may be a number: -1 is no reading where the author says so.
  const isMarker = (record: number) => declared?.has(records.cell(record, field).trim()) === true;
  let decimals = records.numbers(declared ? kept.filter((record) => !isMarker(record)) : kept, field, mark, shift, values);
  if (declared) records.numbers(kept, field, mark, shift, values);
  for (let row = 0; row < kept.length; row++) {
    const record = kept[row]!;
    if (declared && isMarker(record)) values[row] = Number.NaN;
    else if (Number.isNaN(values[row])) {
      const found = odd(record);
      if (found) {
        values[row] = parseNumber(found.text, mark, shift);
        if (found.other === undefined) decimals = Math.max(decimals, found.decimals);
        else {
          others.set(found.other, (others.get(found.other) ?? 0) + 1);
          otherDecimals.set(found.other, Math.max(otherDecimals.get(found.other) ?? found.decimals, found.decimals));
        }
      }
    }
    if (Number.isNaN(values[row])) missing++;
  }
  const readings = kept.length - missing;
  let usual = readings;
  for (const count of others.values()) usual -= count;
  const written = [
    { decimals, count: usual },
    ...[...others].map(([unit, count]) => ({ decimals: otherDecimals.get(unit)!, count })),
  ];
  const finest = Math.max(...written.map((unit) => unit.decimals));
  const often = written.filter(({ count }) => count >= readings * FAIR_SHARE).map((unit) => unit.decimals);
  const places = (each: number) => Math.min(each - shift, 15);
  return { values, missing, decimals: places(finest), coarsest: places(Math.min(finest, ...often)), others };
}

/** In fewer cells a unit is an exception, and says nothing of the range that the meter stood in. */
const FAIR_SHARE = 0.25;
/** What is measured by meters that change their range. */
const BY_METERS: ReadonlySet<QuantityKind> = new Set(['voltage', 'current', 'power', 'energy']);

/** A meter that changes its range tells readings apart no better than its coarsest range does. `coarsest`: null for what is no meter's. */
function stepOf(values: Float64Array, decimals: number, coarsest: number | null): number | null {
  const step = readingStep(values, decimals, coarsest !== null);
  return step === null || coarsest === null || coarsest === decimals ? step : Math.max(step, Number(`1e${-coarsest}`));
}

/** A clock goes in levels that are no step of whoever reads it. */
function lastDecimal(any: boolean, decimals: number): number | null {
  return any ? Number(`1e${-decimals}`) : null;
}

/** The number of a cell that is not a bare one: with the column's unit, or another of its kind; null for a marker of "no reading", and for text that is set aside. */
function oddCellReader(
  sheet: Sheet,
  declaration: ChannelDeclaration,
  field: number,
  suffix: string | undefined,
  reporter: Reporter,
): (record: number) => CellNumber | null {
  return (record) => {
    const text = sheet.records.cell(record, field).trim();
    if (MISSING_MARKERS.has(text)) return null;
    const found = suffix === undefined ? null : numberInUnit(text, suffix, sheet.dialect.decimal);
    if (found) return found;
    const told = `\`${text.slice(0, 40)}\` is not a number`;
    reporter.cell(record, field, 'cell-not-a-number', 'the reading is not a number', `channel ${declaration.name}`, told);
    return null;
  };
}

/** Cells that show what follows the numbers of a column. */
const SHOWING = 60;

function suffixOf(sheet: Sheet, field: number, kept: Int32Array): string | undefined {
  const step = Math.max(1, Math.floor(kept.length / SHOWING));
  const filled: string[] = [];
  for (let row = 0; row < kept.length; row += step) {
    const cell = sheet.records.cell(kept[row]!, field).trim();
    if (!MISSING_MARKERS.has(cell)) filled.push(cell);
  }
  return usualSuffix(filled, sheet.dialect.decimal);
}

function readFlags(
  sheet: Sheet,
  declaration: ChannelDeclaration,
  field: number,
  kept: Int32Array,
  reporter: Reporter,
): ReadChannel {
  const column = Array.from(kept, (record) => sheet.records.cell(record, field));
  const told: { base: FlagBase; how: string } =
    declaration.unit === 'hex' ? { base: 16, how: 'hexadecimal as declared' } : flagBase(column);
  const values = new Float64Array(kept.length);
  let missing = 0;
  for (let row = 0; row < column.length; row++) {
    values[row] = parseFlag(column[row]!, told.base);
    if (!Number.isNaN(values[row])) continue;
    missing++;
    const text = column[row]!.trim();
    if (declaration.missing?.includes(text) || MISSING_MARKERS.has(text)) continue;
    const why = notAFlag(text);
    reporter.cell(kept[row]!, field, 'cell-not-a-flag', why.reason, `channel ${declaration.name}`, why.told);
  }
  const inferences =
    declaration.unit === 'hex'
      ? []
      : [
          {
            method: 'flag-words',
            statement: `The words of \`${sheet.keys[field]}\` (${declaration.name}) are read as ${told.how}.`,
          },
        ];
  const unit: Unit = { canonical: '1', factor: 1, offset: 0 };
  return {
    channel: channelOf(declaration, values, missing, unit, declaration.unit ?? '1', null),
    problems: lackOfReadings(declaration, missing, kept.length, reporter.known),
    inferences,
  };
}

/** Why a cell is no flag: `reason` goes out, `told` is for the author alone. */
function notAFlag(text: string): { readonly reason: string; readonly told: string } {
  const shown = `\`${text.slice(0, 40)}\``;
  if (!isLetteredWord(text)) {
    const reason = 'neither a number nor yes or no';
    return { reason: `the reading is ${reason}`, told: `${shown} is ${reason}` };
  }
  const told = `${shown} is hexadecimal, and most words are not (declare \`unit: hex\` if all of the column is)`;
  return { reason: 'the reading is hexadecimal, and most are not', told };
}

function channelOf(
  declaration: ChannelDeclaration,
  values: Float64Array,
  missing: number,
  unit: Unit,
  original: string,
  step: number | null,
): Channel {
  const { name, label, quantity, column, at, instrument, bits, sticky, shows, step: declared } = declaration;
  return {
    name,
    ...(label === undefined ? {} : { label }),
    quantity,
    column,
    unit: unit.canonical,
    originalUnit: original,
    values,
    missing,
    // Declared beats inferred.
    step: declared ?? step,
    ...(at === undefined ? {} : { at }),
    ...(instrument === undefined ? {} : { instrument }),
    ...(bits === undefined ? {} : { bits }),
    ...(sticky === undefined ? {} : { sticky }),
    ...(shows === undefined ? {} : { shows }),
  };
}

/** A channel without any reading is an error, one with few a warning. */
export function lackOfReadings(declaration: ChannelDeclaration, missing: number, rows: number, known: Acknowledged): Problem[] {
  if (rows === 0 || missing === 0) return [];
  if (missing === rows) {
    return [
      error(
        'no-readings',
        declaration.place,
        `the column \`${declaration.column}\` of the channel ${declaration.name} holds no reading in ${rows} rows`,
        { expected: 'numbers', remedy: 'name another column, or leave the channel out' },
      ),
    ];
  }
  const found = `no reading in ${missing} of ${rows} rows`;
  if (missing * 5 < rows || known.takesChannel(declaration.name, found)) return [];
  const remedy = `where you know why, say so: \`known\` in the run's file takes \`channel: ${declaration.name}\` and the \`reason\``;
  return [warning('many-missing', declaration.place, `the channel ${declaration.name} has ${found}`, { remedy })];
}
