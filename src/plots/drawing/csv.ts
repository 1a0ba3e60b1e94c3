/** Tables as CSV by RFC 4180: comma, CRLF, quotes where needed; text that a spreadsheet would run is guarded by an apostrophe. */

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
  const guarded = runsInSpreadsheet(text) ? `'${text}` : text;
  return /[",\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/**
 * Whether a spreadsheet would take a text for a formula: one that begins with `=`, `+`, `-` or `@`, in their full-width forms too, or with a
 * tab or carriage return, and is no number. Source: OWASP, "CSV Injection" (owasp.org/www-community/attacks/CSV_Injection), from memory.
 */
function runsInSpreadsheet(text: string): boolean {
  return /^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r]/.test(text) && !/^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/.test(text);
}

/** A sentence for readers of a CSV that guards cells; '' for any other. */
export function guardNote(csv: string): string {
  return /(?:^|[,\n])"?'\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20\t\r]/.test(csv)
    ? ' In the CSV, an apostrophe stands before text that a spreadsheet would run as a formula.'
    : '';
}
