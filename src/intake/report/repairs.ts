/** Declared repairs: rows dropped, times shifted, both by lines of the file. The file itself stays as it is. */
import { type Problem, warning } from '../../problem.ts';
import type { LogDeclaration, Repair } from '../log.ts';
import type { Sheet } from '../sheet/open.ts';

export interface Drops {
  /** Whether a declared drop covers the record; counts it if so. */
  readonly takes: (record: number) => boolean;
  /** Lines that each drop took so far. */
  readonly counts: ReadonlyMap<Repair, number>;
}

/** For a log that is only looked at. */
export const NO_DROPS: Drops = { takes: () => false, counts: new Map() };

/** The declared drops. They come before any judgement of a row, so that a ragged one can be dropped with the author's reason. */
export function declaredDrops(sheet: Sheet, repairs: readonly Repair[]): Drops {
  const drops = repairs.filter((repair) => repair.kind === 'drop');
  const counts = new Map<Repair, number>(drops.map((repair) => [repair, 0]));
  if (drops.length === 0) return NO_DROPS;
  const takes = (record: number) => {
    const line = sheet.records.lines[record]!;
    const repair = drops.find(({ fromLine, toLine }) => line >= fromLine && line <= toLine);
    if (repair) counts.set(repair, counts.get(repair)! + 1);
    return repair !== undefined;
  };
  return { takes, counts };
}

/** Adds declared shifts to the times in place; several that cover a row add up. */
export function shiftTimes(
  sheet: Sheet,
  records: Int32Array,
  times: Float64Array,
  repairs: readonly Repair[],
): Map<Repair, number> {
  const shifted = new Map<Repair, number>();
  for (const repair of repairs) {
    if (repair.kind !== 'shift_time') continue;
    let rows = 0;
    for (let k = 0; k < records.length; k++) {
      const line = sheet.records.lines[records[k]!]!;
      if (line < repair.fromLine || line > repair.toLine) continue;
      times[k] = times[k]! + repair.bySeconds;
      rows++;
    }
    shifted.set(repair, rows);
  }
  return shifted;
}

/** Repairs that touch no row: the file has changed, or the lines are wrong. */
export function idleRepairs(counts: ReadonlyMap<Repair, number>, declaration: LogDeclaration): Problem[] {
  return [...counts]
    .filter(([, rows]) => rows === 0)
    .map(([repair]) =>
      warning(
        'repair-idle',
        repair.place,
        `the repair of lines ${repair.fromLine} to ${repair.toLine} touches no row of ${declaration.file}`,
        {
          remedy: 'correct the lines, or remove the repair',
        },
      ),
    );
}
