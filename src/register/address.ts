/** Addresses outside the site that front matter names. */
import type { TextNode } from './node.ts';
import type { Report } from './report.ts';
import { cut } from './values.ts';

/** A whole https address, or undefined with a problem. Nothing is ever fetched from it: pages link to it. */
export function httpsOf(node: TextNode | undefined, key: string, report: Report): string | undefined {
  if (node === undefined) return undefined;
  const url = URL.canParse(node.text) ? new URL(node.text) : undefined;
  const plain = url?.protocol === 'https:' && url.username === '' && url.password === '' && !/\s/.test(node.text);
  if (plain) return node.text;
  const found = url?.username ? `\`${key}\` holds a user name` : `\`${key}\` is \`${cut(node.text)}\`, no whole https address`;
  report.error('bad-outside-address', node.place, found, { expected: 'an address such as `https://files.example/fast-soak.csv`' });
  return undefined;
}
