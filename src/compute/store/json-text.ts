/** Ledgers and series as other programs read them (design section 7). */
import canonicalize from 'canonicalize';
import type { RunSeries } from '../../plots/data/series.ts';
import type { Written } from '../../words/written.ts';

/** Every number of a note in reading order, highlights last. */
export function publishLedger(written: Written): object {
  const entries = written.entries.map(({ id, file, line, column, kind, text, expression, value, unit, u, shown, verdict }) => {
    return { id, file, line, column, kind, text, expression, value, unit, u, shown, verdict };
  });
  return { format: 1, entries };
}

/** JSON as it is published: two blanks of indentation and a final newline. */
export function jsonText(value: object): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}

/** `runs/<id>/series.json`: `format` first, the rest as canonical JSON (RFC 8785) in one line, since it is many numbers. */
export function seriesText({ format, ...rest }: RunSeries): string {
  return `{"format":${format},${canonicalize(rest)!.slice(1)}\n`;
}
