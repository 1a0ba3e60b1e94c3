/** Labels of encodings, as the Encoding Standard (WHATWG) and RFC 2978 have them. */

/** The label for an encoding in intake's words: "UTF-8 (every byte fits)" is `utf-8`, and what is ASCII is UTF-8 too. */
export function encodingLabel(words: string): string {
  const label = /^[A-Za-z0-9-]+/.exec(words)?.[0].toLowerCase() ?? 'utf-8';
  return label === 'ascii' ? 'utf-8' : label;
}
