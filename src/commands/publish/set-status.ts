/** The status of a note in its text. */

const FRONT_MATTER = /^\uFEFF?---[ \t]*\r?\n[\s\S]*?^---[ \t]*\r?$/m;
const STATUS =
  /^(status[ \t]*:[ \t]*)(?:draft|held back|published|"(?:draft|held back|published)"|'(?:draft|held back|published)')/m;

/** The text with the status `published`, every other byte as it was. Throws where the front matter states none; the register has read one. */
export function setPublished(text: string): string {
  const [head = ''] = FRONT_MATTER.exec(text) ?? [];
  if (!STATUS.test(head)) throw new Error('the front matter states no status');
  return head.replace(STATUS, '$1published') + text.slice(head.length);
}
