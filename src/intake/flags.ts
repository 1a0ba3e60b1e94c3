/** Cells of a throttle flag: a word of bits in hexadecimal or decimal, `key=value`, yes and no, true and false. */

/** How digits without a prefix are read. */
export type FlagBase = 10 | 16;

const WORDS: Readonly<Record<string, number>> = { yes: 1, no: 0, true: 1, false: 0, on: 1, off: 0 };

/** The value of a flag cell; NaN for anything else. A `0x` prefix always means hexadecimal. */
export function parseFlag(cell: string, base: FlagBase): number {
  const text = cell.trim().replace(/^[A-Za-z_]\w*\s*=\s*/, '');
  const word = WORDS[text.toLowerCase()];
  if (word !== undefined) return word;
  if (/^0[xX][0-9a-fA-F]{1,12}$/.test(text)) return Number.parseInt(text.slice(2), 16);
  const digits = base === 16 ? /^[0-9a-fA-F]{1,12}$/ : /^\d{1,15}$/;
  return digits.test(text) ? Number.parseInt(text, base) : Number.NaN;
}

/** Hexadecimal where a cell without prefix can be nothing else. `50005` alone could be either: it is read as decimal, and that is said. */
export function flagBase(cells: Iterable<string>): { readonly base: FlagBase; readonly how: string } {
  let bare = false;
  for (const cell of cells) {
    const text = cell.trim().replace(/^[A-Za-z_]\w*\s*=\s*/, '');
    if (/^[0-9a-fA-F]*[a-fA-F][0-9a-fA-F]*$/.test(text) && /\d/.test(text))
      return { base: 16, how: 'hexadecimal: some words hold a to f' };
    if (/^\d{2,}$/.test(text)) bare = true;
  }
  return { base: 10, how: bare ? 'decimal: no word has a prefix 0x or a letter a to f' : 'words of bits as written' };
}
