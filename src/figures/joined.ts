/** Figures that combine measured quantities: arithmetic that must not fail, and where the result came from. */

import type { Quantity } from '../quantities/quantity.ts';
import { isRefusal, type Refusal } from '../quantities/refusal.ts';
import type { Reason } from './absent.ts';
import type { From, FromFile } from './figure.ts';

/** A refused combination as an absence: units of a rating or condition that do not fit the channel. */
export function orRefused(result: Quantity | Refusal): Quantity | Reason {
  return isRefusal(result) ? { absent: 'out-of-range', why: `The quantities do not go together: ${result.refused}.` } : result;
}

/** Columns of both, and the rows that cover both; file by file where they are of several logs. */
export function joinFrom(a: From, b: From | null): From {
  if (!b) return a;
  if (a.file !== b.file || a.others || b.others) return byFile([a, ...(a.others ?? []), b, ...(b.others ?? [])]);
  const columns = [...new Set([...a.columns, ...b.columns])];
  const rows = a.rows && b.rows ? ([Math.min(a.rows[0], b.rows[0]), Math.max(a.rows[1], b.rows[1])] as const) : (a.rows ?? b.rows);
  return { columns, rows, ...(a.file === undefined ? {} : { file: a.file }) };
}

/** What is of one file together, the run's first log first. */
export function byFile(parts: readonly From[]): From {
  const files = [...Map.groupBy(parts, ({ file }) => file)].map(([file, [first, ...more]]): From => {
    const plain = ({ columns, rows }: From): From => ({ columns, rows, ...(file === undefined ? {} : { file }) });
    return more.reduce((joined, each) => joinFrom(joined, plain(each)), plain(first!));
  });
  const first = files.find(({ file }) => file === undefined) ?? files[0]!;
  const others = files.filter((each) => each !== first) as FromFile[];
  return others.length === 0 ? first : { ...first, others };
}
