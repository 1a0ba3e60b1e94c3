/** The words of a page's HTML. */

/** A tag with its attributes, whose values may hold any sign. */
const TAG = /<(\/?)([a-z][a-z0-9-]*)(?:"[^"]*"|'[^']*'|[^"'>])*>/gi;

/** Drawn over a picture: the numbers of marked spots. */
const DRAWN = /<svg class="marks"[\s\S]*?<\/svg>/g;

/** Tags within a line of words; every other one parts words. */
const INLINE = new Set(['a', 'abbr', 'b', 'code', 'data', 'del', 'em', 'i', 'mark', 's', 'span', 'strong', 'sub', 'sup']);

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'", nbsp: '\u00a0' };

/** Plain words of HTML as our own printers write it, on one line. */
export function plainText(html: string): string {
  const words = html
    .replaceAll(DRAWN, ' ')
    .replaceAll(TAG, (_tag, _end, name: string) => (INLINE.has(name.toLowerCase()) ? '' : ' '));
  return words
    .replaceAll(/&(?:#x([0-9a-f]+)|#(\d+)|([a-z]+));/gi, (whole, hex?: string, decimal?: string, name?: string) => {
      if (name !== undefined) return NAMED[name.toLowerCase()] ?? whole;
      return String.fromCodePoint(hex === undefined ? Number(decimal) : Number.parseInt(hex, 16));
    })
    .replaceAll(/[ \t\n\r]+/g, ' ')
    .trim();
}
