/** `was`: addresses at which something once stood, and which lead to it now. */

import type { EarlierAddress, Register } from '../register.ts';
import { idFromWords } from '../values/names.ts';
import type { SourceFile } from '../values/source-file.ts';
import { cut, textsOf } from '../values/values.ts';
import type { ListNode, TextNode } from '../yaml/node.ts';
import type { Report } from '../yaml/report.ts';

/** Folders of content/ whose files have pages of their own that are named like them. */
export const PAGE_FOLDERS = ['runs', 'devices', 'comparisons'] as const;
export type PageFolder = (typeof PAGE_FOLDERS)[number];

const OF_NOTES = /^(?:notes|scripts)\/[a-z0-9-]+\/(?:plots\/[a-z0-9-]+(?:\.(?:svg|png|csv))?)?$/;
const OF_PAGES = new RegExp(`^(?:${PAGE_FOLDERS.join('|')})/[a-z0-9]+(?:-[a-z0-9]+)*/$`);

/** The addresses below the site's base at which something of this note stood, in the author's order; also those of what has gone. */
export function readWas(node: TextNode | ListNode | undefined, source: SourceFile, report: Report): EarlierAddress[] {
  return (textsOf(node, 'was', source.placeOf('was'), report) ?? []).flatMap(({ text: address, place }) => {
    if (OF_NOTES.test(address) || OF_PAGES.test(address)) return [{ address, place }];
    report.error('bad-address', place, `\`was\` names \`${cut(address)}\``, {
      expected: 'an address of this site, without what stands before it: `notes/old-name/` or `notes/name/plots/trace.svg`',
    });
    return [];
  });
}

/** The same of a run, device or comparison: where it stood under another id. `was` is absent where there is none. */
export function readFormer(
  node: TextNode | ListNode | undefined,
  folder: PageFolder,
  source: SourceFile,
  report: Report,
): { readonly was?: readonly EarlierAddress[] } {
  const was = (textsOf(node, 'was', source.placeOf('was'), report) ?? []).flatMap(({ text: address, place }) => {
    if (OF_PAGES.test(address) && address.startsWith(`${folder}/`)) return [{ address, place }];
    const id = idFromWords(address.replace(/\/+$/, '').replace(/^.*\//s, ''));
    report.error('bad-address', place, `\`was\` names \`${cut(address)}\``, {
      expected: `a former address below ${folder}/, without what stands before it: \`${folder}/old-id/\``,
      ...(id === '' ? {} : { remedy: `did you mean \`${folder}/${id}/\`?` }),
    });
    return [];
  });
  return was.length > 0 ? { was } : {};
}

/** The former ids of a run, device or comparison, in the author's order. */
export function formerIdsOf({ was = [] }: { readonly was?: readonly EarlierAddress[] }): string[] {
  return was.map(formerId);
}

/** The id in the former address of a run, device or comparison. */
function formerId({ address }: EarlierAddress): string {
  return address.slice(address.indexOf('/') + 1, -1);
}

/**
 * Tells of former addresses at which something stands, and of those that two files claim: an address leads to one page. What a note claims
 * may stand, held back, until the note takes its place. `ids`: of all files, those with errors too.
 */
export function checkFormer(
  register: Pick<Register, PageFolder | 'notes'>,
  ids: (folder: PageFolder) => ReadonlySet<string>,
  report: Report,
): void {
  const claimed = new Map<string, string>();
  const claim = (earlier: EarlierAddress, file: string) => {
    const other = claimed.get(earlier.address);
    if (other === undefined) claimed.set(earlier.address, file);
    else tellClaimed(earlier, other, report);
  };
  for (const folder of PAGE_FOLDERS) {
    const standing = ids(folder);
    for (const { file, was = [] } of register[folder].values()) {
      for (const earlier of was) {
        if (standing.has(formerId(earlier))) tellStanding(earlier, report);
        else claim(earlier, file);
      }
    }
  }
  for (const { file, was = [] } of register.notes.values()) for (const earlier of was) claim(earlier, file);
}

function tellStanding({ address, place }: EarlierAddress, report: Report): void {
  const found = `\`was\` names \`${address}\`, which is the address of content/${address.slice(0, -1)}.md`;
  report.error('standing-address', place, found, {
    expected: 'an address at which nothing stands any more',
    remedy: 'remove that file, or this line: an address leads to one page',
  });
}

function tellClaimed({ address, place }: EarlierAddress, other: string, report: Report): void {
  report.error('repeated-address', place, `\`was\` names \`${address}\`, as ${other} does`, {
    remedy: `keep it where readers of ${address.slice(0, address.indexOf('/'))} should be led`,
  });
}
