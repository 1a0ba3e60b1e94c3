/** The text of a note with one more entry below `corrections:` in its front matter. */

/** Every other byte stays; the entry stands last, indented as those before it. Throws where there is no front matter: the register has read one. */
export function withCorrections(text: string, entry: readonly string[]): string {
  const end = text.includes('\r\n') ? '\r\n' : '\n';
  const lines = text.split(end);
  const close = lines.findIndex((line, index) => index > 0 && /^---[ \t]*$/.test(line));
  if (close < 0) throw new Error('the text has no front matter');
  const key = lines.slice(0, close).findIndex((line) => /^corrections[ \t]*:/.test(line));
  if (key < 0) return [...lines.slice(0, close), 'corrections:', ...indented(entry, '  '), ...lines.slice(close)].join(end);
  const after = lines.slice(key + 1, close).findIndex((line) => /^[^\s#-]/.test(line));
  const last = after < 0 ? close : key + 1 + after;
  const indent = /^([ \t]*)- /.exec(lines[key + 1] ?? '')?.[1] ?? '  ';
  return [...lines.slice(0, last), ...indented(entry, indent), ...lines.slice(last)].join(end);
}

function indented(lines: readonly string[], indent: string): string[] {
  return lines.map((line) => indent + line);
}
