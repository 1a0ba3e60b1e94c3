/** A file opened: decoded, split into records, its structure found. What `read` and `inspect` both start from. */
import { hiddenIn, visible } from '../../hidden-characters.ts';
import { type Place, type Problem, warning } from '../../problem.ts';
import { columnKeys } from '../cells/names.ts';
import type { Inference } from '../log.ts';
import { type Decoded, decode } from './decode.ts';
import { chooseDialect, type Dialect } from './dialect.ts';
import { type Lines, linesOf, placeOfLine } from './lines.ts';
import { namesInCells } from './named-cells.ts';
import { type Packing, UNPACKED, unpackedText } from './packed.ts';
import { bracketedRecords, type Records, readRecords } from './records.ts';
import { findStructure, type Structure } from './structure.ts';

export interface Sheet {
  /** Project path, for places. */
  readonly file: string;
  readonly decoded: Decoded;
  readonly packing: Packing;
  readonly lines: Lines;
  readonly dialect: Dialect;
  readonly records: Records;
  readonly structure: Structure;
  /** Names and units as the header has them, hidden characters shown by their names; null without them. */
  readonly names: readonly string[] | null;
  readonly units: readonly string[] | null;
  /** One distinct key a column; `column 1` … where the file has no header. */
  readonly keys: readonly string[];
  /** True where the last line has no end: it may be cut off. */
  readonly openEnd: boolean;
  /** How cells were found, where it takes more than a delimiter. */
  readonly inferences: readonly Inference[];
  /** What decoding and splitting noticed. */
  readonly problems: readonly Problem[];
}

/** Opens a file; `choose` tells its dialect. Never throws, whatever the bytes. */
export function openSheet(bytes: Uint8Array, file: string, choose: (lines: Lines) => Dialect = chooseDialect): Sheet {
  const { plain, packing } = unpackedText(bytes);
  const decoded = decode(plain);
  const lines = linesOf(decoded);
  const dialect = choose(lines);
  const { records, structure, inferences } = recordsOf(decoded, lines, dialect);
  const names = structure.header?.map(visible) ?? null;
  const units = structure.units?.map(visible) ?? null;
  const keys = columnKeys(names ?? Array.from({ length: structure.width }, () => ''));
  return {
    file,
    decoded,
    packing,
    lines,
    dialect,
    records,
    structure,
    names,
    units,
    keys,
    openEnd: isOpen(decoded),
    inferences: packing.with === 'gzip' && packing.fault === null ? [UNPACKED, ...inferences] : inferences,
    problems: bytesProblems(decoded, lines, file),
  };
}

function isOpen(decoded: Decoded): boolean {
  const bytes = decoded.inBytes?.bytes;
  if (bytes) return bytes.length > 0 && bytes.at(-1) !== LF;
  return decoded.text !== '' && !decoded.text.endsWith('\n');
}

const LF = 10;

/** Records and structure: as the delimiter says, or with brackets kept together, or with the names that stand in the cells. */
function recordsOf(decoded: Decoded, lines: Lines, dialect: Dialect): Pick<Sheet, 'records' | 'structure' | 'inferences'> {
  const plain = readRecords(decoded, lines, dialect.delimiter);
  const keyed = namesInCells(plain);
  if (keyed) {
    const structure = { ...findStructure(keyed.records, dialect.decimal), header: keyed.names };
    const statement = 'Every cell begins with its name: the names are taken from the cells.';
    return { records: keyed.records, structure, inferences: [{ method: 'keys-in-cells', statement }] };
  }
  const structure = findStructure(plain, dialect.decimal);
  const bracketed = structure.mismatch ? bracketedRecords(lines, dialect.delimiter) : null;
  if (bracketed) {
    const again = findStructure(bracketed, dialect.decimal);
    const statement = 'What stands in brackets is one cell: so rows have as many fields as the header has names.';
    if (again.header && !again.mismatch)
      return { records: bracketed, structure: again, inferences: [{ method: 'brackets', statement }] };
  }
  return { records: plain, structure, inferences: [] };
}

/** Warns of the first name of a log's header that is shown otherwise than it stands there. */
export function hiddenNames({ file, lines, structure, records }: Sheet): Problem[] {
  const found = structure.header?.flatMap(hiddenIn)[0];
  if (!found) return [];
  const place = placeOfLine(file, lines, records.lines[structure.headerAt]!);
  const remedy = 'write the name under `column` as it is shown';
  return [hiddenCharacter(place, `the header holds a character that ${found.does} (${found.name})`, remedy)];
}

/** A warning of text of a data file that is shown otherwise than it stands there. */
export function hiddenCharacter(place: Place, found: string, remedy: string): Problem {
  return warning('hidden-character', place, `${found}; it is shown by its name`, { remedy });
}

function bytesProblems(decoded: Decoded, lines: Lines, file: string): Problem[] {
  const problems: Problem[] = [];
  const place: Place = placeOfLine(file, lines, Math.max(lines.count, 1));
  if (decoded.nulTail > 0) {
    problems.push(
      warning('nul-tail', place, `the file ends with ${decoded.nulTail} NUL bytes, as after a power cut; they are left out`, {
        remedy: 'see whether the last rows are what the logger saw',
      }),
    );
  }
  const odd = decoded.oddLines;
  if (odd.length > 0) {
    problems.push(
      warning(
        'mixed-encoding',
        placeOfLine(file, lines, odd[0]!),
        `${odd.length === 1 ? 'this line does' : `${odd.length} lines (this is the first) do`} not fit the encoding of the rest (${decoded.encoding})`,
        { remedy: 'numbers are kept; look at names and units on these lines' },
      ),
    );
  }
  return problems;
}
