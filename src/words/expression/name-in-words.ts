/** Names in words, by themselves: the reader's browser needs no more of the expressions that they stand in. */

/** A name of a channel, spot, test, phase or setting with blanks: `input_current`, `wide-copy`, `"0 mV"` without its quotes. */
export function nameInWords(name: string): string {
  return name.replaceAll('"', '').replaceAll(/_|(?<=\p{L})-(?=\p{L})/gu, ' ');
}
