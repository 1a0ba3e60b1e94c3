/** A small table as a file of data. */
import { counted } from '../../figures/in-words.ts';
import type { TableKind, TableLayout } from '../../figures/table-layout.ts';
import type { DataFile } from '../models/data-file.ts';
import { offeredName, sizeText } from './names.ts';

const TABLE_WORDS: Readonly<Record<Table['kind'], string>> = {
  image: 'thermal image as it came',
  scores: 'scores as they came',
  surface: 'surface readings as they came',
  attempts: 'attempts as they came',
};

export interface Table {
  readonly kind: TableKind | 'image';
  /** Below data/. */
  readonly file: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly form: TableLayout;
}

/** A table goes out as it came where all of its columns and rows are read. @param folder - where it stands then, ending in a slash. */
export function tableFile({ kind, file, sha256, bytes, form }: Table, folder: string): DataFile {
  const unread = form.columns.filter(({ name }) => name === null).length;
  const name = offeredName(file);
  const why = form.shared
    ? null
    : unread > 0
      ? `${counted(unread, 'column')} that nothing reads`
      : form.partly
        ? kind === 'image'
          ? 'lines that are no readings'
          : 'rows of other settings or runs'
        : null;
  return {
    role: kind,
    what: TABLE_WORDS[kind],
    name,
    path: why === null ? folder + name : null,
    sha256,
    bytes,
    size: sizeText(bytes),
    rows: form.rows,
    note: why === null ? '' : `not offered: it holds ${why}`,
    source: `data/${file}`,
  };
}
