/** The tables that a run names beside its log: bytes → typed rows. */
import { readScores } from '../../../figures/scores/read-scores.ts';
import { type Matrix, readMatrix } from '../../../figures/surface/matrix.ts';
import { readSurface } from '../../../figures/surface/read-surface.ts';
import { type TableLayout, tableLayout } from '../../../figures/table-layout.ts';
import { inOneMessage } from '../../../figures/table-problems.ts';
import type { RunTables } from '../../../figures/tables.ts';
import type { TableMapping } from '../../../intake/table-mapping.ts';
import type { Place, Problem } from '../../../problem.ts';
import type { Run } from '../../../register/register.ts';
import { readData } from '../../project/read-data.ts';
import { digest } from '../../store/digest.ts';
import { changed } from '../../store/momentary-problems.ts';
import type { Store } from '../../store/store.ts';
import type { RunTask } from './run-step.ts';

export interface TablePath {
  /** Below data/. */
  readonly file: string;
  readonly place: Place;
  /** What read the values, where the run names it. */
  readonly instrument?: string;
  /** How it says what it says, where not in our words. */
  readonly mapping?: TableMapping;
}

/** In this order: a surface table takes readings from its image. */
export type TablePaths = Readonly<Partial<Record<'scores' | 'image' | 'surface', TablePath>>>;

export interface ReadTable {
  readonly kind: 'scores' | 'image' | 'surface';
  /** Below data/. */
  readonly file: string;
  /** Its bytes are in the store under it. */
  readonly sha256: string;
  readonly bytes: number;
  readonly form: TableLayout;
}

/** The paths of a run's tables. */
export function tablePaths(run: Run): TablePaths {
  const { scores, surface, surfaceImage: image, surfaceInstrument: instrument, mappings } = run;
  const mapped = (mapping: TableMapping | undefined) => (mapping ? { mapping } : {});
  return {
    ...(scores !== undefined && { scores: { file: scores, place: run.placeOf('scores'), ...mapped(mappings?.scores) } }),
    ...(image !== undefined && { image: { file: image, place: run.placeOf('surface') } }),
    ...(surface !== undefined && {
      surface: {
        file: surface,
        place: run.placeOf('surface'),
        ...(instrument !== undefined && { instrument }),
        ...mapped(mappings?.surface),
      },
    }),
  };
}

/** Reads them. One that cannot be read is a problem, and its figures are then missing. */
export function readTables(root: string, store: Store, { tables, logs, digests }: RunTask) {
  const problems: Problem[] = [];
  const read: ReadTable[] = [];
  const found: { -readonly [K in keyof RunTables]: RunTables[K] } = {};
  let image: Matrix | null = null;
  for (const [kind, path] of Object.entries(tables) as [ReadTable['kind'], TablePath][]) {
    const bytes = bytesOf(root, path, kind === 'image' ? 'thermal image' : kind, problems);
    if (bytes === undefined) continue;
    if (digest(bytes) !== digests[path.file]) {
      problems.push(changed(`data/${path.file}`, path.place));
      continue;
    }
    const file = `data/${path.file}`;
    if (kind === 'image') {
      const { matrix, problems: own } = readMatrix(bytes, file);
      image = matrix;
      problems.push(...own);
      if (matrix) read.push({ kind, file: path.file, sha256: store.keep(bytes), bytes: bytes.length, form: imageLayout(matrix) });
      continue;
    }
    // Without its image, what the table says of places in it is no fault of the table's.
    if (kind === 'surface' && tables.image && !image) continue;
    read.push({
      kind,
      file: path.file,
      sha256: store.keep(bytes),
      bytes: bytes.length,
      form: tableLayout(bytes, file, kind, path.mapping),
    });
    const { problems: own, ...table } =
      kind === 'scores'
        ? readScores(bytes, file, logs[0]?.declaration.time?.zone, path.mapping)
        : readSurface(bytes, file, path.instrument, path.mapping, image ?? undefined);
    Object.assign(found, table);
    problems.push(...inOneMessage(own, { bytes, file, kind, mapping: path.mapping }));
  }
  return { tables: found as RunTables, read, problems };
}

/** It goes out as it came where nothing but its pixels is in it. */
function imageLayout({ height, others }: Matrix): TableLayout {
  return { columns: [], rows: height, ...(others > 0 ? { partly: true } : {}), delimiter: ',', decimal: '.', encoding: 'utf-8' };
}

/** The bytes of a file that a run names; undefined, with a problem, where it cannot be read. `what` names it in words. */
export function bytesOf(root: string, { file, place }: TablePath, what: string, problems: Problem[]): Uint8Array | undefined {
  const read = readData(root, file, what, place);
  if (read instanceof Uint8Array) return read;
  problems.push(read);
  return undefined;
}
