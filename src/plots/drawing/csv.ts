/** Tables as CSV by RFC 4180: comma, CRLF, quotes where needed. */

/** Writes rows of text and numbers; numbers in their shortest form to ten significant digits. */
export function csv(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

const DIGITS = 10;

function cell(value: string | number): string {
  return typeof value === 'number' ? numeral(value) : quoted(value);
}

function numeral(value: number): string {
  const text = String(value);
  return text.length <= DIGITS ? text : String(Number(value.toPrecision(DIGITS)));
}

function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
