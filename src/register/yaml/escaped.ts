/** Characters that YAML writes as escapes (`"\\u202e"`), which nobody sees on the page. */
import { hiddenIn } from '../../hidden-characters.ts';
import type { Place } from '../../problem.ts';
import { tellHiddenCharacter } from './front-matter.ts';
import type { Node } from './node.ts';
import type { Report } from './report.ts';

/** Tells of each text and key that holds one, and whether there is any. */
export function tellEscaped(node: Node, report: Report): boolean {
  if (node.kind === 'text') return tell(node.text, node.place, report);
  if (node.kind === 'list') return node.items.map((item) => tellEscaped(item, report)).includes(true);
  if (node.kind !== 'map') return false;
  return [...node.entries.values()]
    .flatMap(({ key, keyPlace, value }) => [tell(key, keyPlace, report), tellEscaped(value, report)])
    .includes(true);
}

function tell(text: string, place: Place, report: Report): boolean {
  const [found] = hiddenIn(text);
  if (found) tellHiddenCharacter(found, place, report);
  return found !== undefined;
}
