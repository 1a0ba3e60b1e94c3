/** A packed file: what comes out of it, or what stands in the way. */
import { error, type Problem } from '../../problem.ts';
import type { Inference } from '../log.ts';
import { placeOfLine } from './lines.ts';
import type { Sheet } from './open.ts';
import { packedWith, UnpackFault, unpackWhole } from './unpack.ts';

export interface Packing {
  /** null for text. What gzip has packed is read. */
  readonly with: 'gzip' | 'zip' | null;
  /** Why nothing comes out; null where it does. */
  readonly fault: UnpackFault['kind'] | null;
}

/** Most bytes of text that are read at once: text is one string, and the longest string has 2²⁹ − 24 units. */
const MOST_TEXT = 2 ** 29 - 24;

/** What is told of a log that was unpacked. */
export const UNPACKED: Inference = {
  method: 'gzip',
  statement: 'The file is packed with gzip; its lines are those of the text in it.',
};

/** The bytes of the text in a file; none where nothing comes out. */
export function unpackedText(bytes: Uint8Array): { readonly plain: Uint8Array; readonly packing: Packing } {
  const how = packedWith(bytes);
  if (how !== 'gzip') return { plain: bytes, packing: { with: how, fault: null } };
  try {
    return { plain: unpackWhole(bytes, MOST_TEXT), packing: { with: how, fault: null } };
  } catch (thrown) {
    if (!(thrown instanceof UnpackFault)) throw thrown;
    return { plain: new Uint8Array(0), packing: { with: how, fault: thrown.kind } };
  }
}

/** What is wrong with a packed file, and what its author can do. */
const FAULTS: Readonly<Record<UnpackFault['kind'], (file: string) => { readonly found: string; readonly remedy: string }>> = {
  damaged: (file) => ({
    found: 'the packed file (gzip) is cut off or damaged',
    remedy: `copy it again from the test bench; where it is so there too, \`gzip -dc ${file}\` writes what can still be read: keep that beside it and name it`,
  }),
  'too-large': () => ({
    found: 'what the packed file (gzip) holds is too large to be read',
    remedy: 'see whether it is the log; if it is, log less often, or split it into several runs',
  }),
};

const EXPECTED = 'the text of a log or table, plain or packed with gzip';

/** The problem of a packed file out of which nothing comes. */
export function faultProblem(file: string, fault: UnpackFault['kind']): Problem {
  const { found, remedy } = FAULTS[fault](file);
  return error('packed-unreadable', { file, line: 1, column: 1, endLine: 1, endColumn: 1 }, found, { expected: EXPECTED, remedy });
}

/** The problem of a file that is packed and yields no text; null for any other. */
export function packedProblem({ file, lines, packing }: Pick<Sheet, 'file' | 'lines' | 'packing'>): Problem | null {
  if (packing.fault !== null) return faultProblem(file, packing.fault);
  if (packing.with !== 'zip') return null;
  const found = 'the file is packed (zip, such as an archive or the workbook of a spreadsheet)';
  const remedy = 'unpack it, or have the spreadsheet write a CSV, and name what comes out';
  return error('not-a-log', placeOfLine(file, lines, 1), found, { expected: EXPECTED, remedy });
}
