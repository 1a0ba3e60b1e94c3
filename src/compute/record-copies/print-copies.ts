/** Each record copy printed from itself alone: the model of its own part, its plots, the files beside its page. */
import { error, type Problem } from '../../problem.ts';
import { COPIES } from '../../register/record-copies.ts';
import { drawCompared } from '../compared/compared.ts';
import type { Gathered } from '../compared/gathered.ts';
import { type ComparisonPlots, comparisonModel } from '../pages/comparison.ts';
import type { PlotResult } from '../plot-task.ts';
import { jsonText } from '../published.ts';
import type { ComparisonModel } from '../results.ts';
import { copyFile } from './copy.ts';
import type { Copies, ReadCopy } from './read-copies.ts';

/** A copy as its page prints it. */
export interface PrintedCopy extends ReadCopy {
  readonly own: ComparisonModel;
  readonly plots: readonly PlotResult[];
}

export interface PrintedCopies {
  /** Newest first. */
  readonly copies: readonly PrintedCopy[];
  readonly plots: readonly (readonly PlotResult[])[];
  readonly keys: readonly string[];
  readonly problems: readonly Problem[];
}

/** Prints all copies; draws what is not in the store yet. One that cannot be printed is a problem of its file. */
export async function printCopies(
  drawing: Parameters<typeof drawCompared>[0],
  { copies, problems }: Copies,
): Promise<PrintedCopies> {
  const keys: string[] = [];
  const faults: Problem[] = [];
  const printed = await Promise.all(
    copies.map(async (read): Promise<PrintedCopy[]> => {
      try {
        const drawn = await drawCompared(drawing, read.copy.record);
        keys.push(...drawn.keys);
        return [{ ...read, plots: drawn.plots, own: ownPart(read, drawn) }];
      } catch (thrown) {
        faults.push(unprintable(read, thrown));
        return [];
      }
    }),
  );
  const whole = printed.flat();
  return { copies: whole, plots: whole.map(({ plots }) => plots), keys, problems: [...problems, ...faults] };
}

/** Where a copy stands for ever, below the base. */
export function copyPath(id: string): string {
  return `record-copies/${id}/`;
}

/** Figures of a copy as those of its comparison are published. */
export function copyFigures({ copy: { id, record } }: ReadCopy): string {
  const { sources, figures, reference } = record;
  const runs = Object.fromEntries(record.runs.map(({ alias, run }) => [alias, run]));
  return jsonText({ format: 1, comparison: record.id, figures, record: id, reference, runs, sources });
}

/** Nothing in it hangs on what the site has besides, links included. */
function ownPart({ copy: { id, record } }: ReadCopy, drawn: ComparisonPlots): ComparisonModel {
  const gathered: Gathered = record;
  const alone = { body: '', status: 'published', notes: [], copies: [], has: () => false } as const;
  return comparisonModel(gathered, drawn, { path: copyPath(id), ...alone });
}

function unprintable({ copy: { id } }: ReadCopy, thrown: unknown): Problem {
  const found = `this record copy could not be printed: ${thrown instanceof Error ? thrown.message : String(thrown)}`;
  return error('fault', { file: copyFile(id), line: 1, column: 1 }, found, {
    remedy: `if \`${COPIES.command}\` wrote it here, this is a fault of the program: please report it; else take the file out`,
  });
}
