/** A citation in one line of text. */
import { listed } from '../../figures/in-words.ts';
import { type Name, namesOf, type Reference } from './reference.ts';

/** `Rowan Alder (2026): Title. Bench notes, 2026-03-21. https://… (ledger SHA-256 0123456789ab).` */
export function plainCitation(reference: Reference): string {
  const { title, publisher, date, url, version } = reference;
  const names = listed(namesOf(reference).map(written));
  const year = date.slice(0, 4);
  const first = names === '' ? `${closed(title)} (${year})` : `${names} (${year}): ${closed(title)}`;
  // Where the publication stands for its authors it is named already.
  const where = publisher === '' || reference.authors.length === 0 ? date : `${publisher}, ${date}`;
  return `${first} ${where}. ${url} (${version}).`;
}

function written(name: Name): string {
  return 'literal' in name ? name.literal : `${name.given} ${name.family}`;
}

/** A sentence keeps its own end. */
function closed(title: string): string {
  return /[.?!…]$/.test(title) ? title : `${title}.`;
}
