/** Plain text inside of XML and HTML: the five characters that XML names (XML 1.0, 4.6), which also sitemaps ask for. */
const NAMED: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;' };

export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (character) => NAMED[character]!);
}
