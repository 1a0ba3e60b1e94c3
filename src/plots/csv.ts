/** Tables as CSV by RFC 4180: comma, CRLF, quotes where needed. */

/** Writes rows of text and numbers; numbers in their shortest form to ten significant digits. */
export function csv(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number): string {
  const text = typeof value === 'number' ? String(Number(value.toPrecision(10))) : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
