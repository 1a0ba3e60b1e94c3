/** Addresses outside the site that front matter names. */
import type { TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';
import { cut } from './values.ts';

/** What an address is written with: RFC 3986, chapter 2. Anything else makes descriptions of data that others' programs refuse. */
const FOREIGN = /[^A-Za-z0-9%._~:/?#[\]@!$&'()*+,;=-]+/g;

/** A whole https address, or undefined with a problem. Nothing is ever fetched from it: pages link to it. */
export function httpsOf(node: TextNode | undefined, key: string, report: Report): string | undefined {
  if (node === undefined) return undefined;
  const url = URL.canParse(node.text) ? new URL(node.text) : undefined;
  const plain = url?.protocol === 'https:' && url.username === '' && url.password === '' && node.text.search(FOREIGN) < 0;
  if (plain) return node.text;
  const found = url?.username ? `\`${key}\` holds a user name` : `\`${key}\` is \`${cut(node.text)}\`, no whole https address`;
  report.error('bad-outside-address', node.place, found, {
    expected: 'an address such as `https://files.example/fast-soak.csv`',
    ...(url?.protocol === 'https:' && url.username === '' ? { remedy: `write it as \`${encoded(node.text)}\`` } : {}),
  });
  return undefined;
}

/** With all that an address may not hold in percent-encoded UTF-8: RFC 3986, 2.1. */
function encoded(address: string): string {
  return address.toWellFormed().replace(FOREIGN, encodeURIComponent);
}
