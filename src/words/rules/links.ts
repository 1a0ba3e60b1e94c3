/** Links lead to pages of the site, to http, https or a mail address. */
import type { Definition, Link, Nodes, Root } from 'mdast';
import { visit } from 'unist-util-visit';
import { error } from '../../problem.ts';
import { placeAt, spanOf, type Writing } from '../page/writing.ts';

const ALLOWED = new Set(['http', 'https', 'mailto']);

/** Reports and disarms links of other protocols; they keep their words. */
export function checkLinks(writing: Writing, tree: Root): void {
  visit(tree, (node: Nodes) => {
    if (node.type === 'link' || node.type === 'definition') checkTarget(writing, node);
  });
}

function checkTarget(writing: Writing, node: Link | Definition): void {
  const wrong = wrongProtocol(node.url);
  if (wrong === undefined) {
    if (!/^(#|[A-Za-z][A-Za-z0-9+.-]*:)/.test(node.url) && node.url !== '') {
      writing.links.push({ href: node.url, place: placeAt(writing, spanOf(node).start) });
    }
    return;
  }
  const more = {
    expected: '`https:`, `http:`, `mailto:` or a path of this site',
    remedy: 'write the whole address, or leave the link out',
  };
  writing.problems.push(error('link-protocol', placeAt(writing, spanOf(node).start), `a link ${wrong}`, more));
  node.url = '';
}

/** What is wrong with where a link leads; undefined where nothing is. Browsers skip blanks and controls before and within a scheme. */
function wrongProtocol(url: string): string | undefined {
  const bare = Array.from(url)
    .filter((character) => character > ' ' && character !== '\u007F')
    .join('');
  if (/^[/\\]{2}/.test(bare)) return 'to another host without saying by which protocol';
  const scheme = /^([A-Za-z][A-Za-z0-9+.-]*):/.exec(bare)?.[1]?.toLowerCase();
  return scheme === undefined || ALLOWED.has(scheme) ? undefined : `of the protocol \`${scheme}:\``;
}
