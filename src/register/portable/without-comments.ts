/** A file of content/ without the comments of its front matter: what YAML does not read may be private. */
import { CST, Parser } from 'yaml';
import type { ContentFile } from '../register.ts';
import { splitFrontMatter } from '../yaml/front-matter.ts';
import { Report } from '../yaml/report.ts';

/**
 * The text with every comment of its front matter left out; all that stays keeps its line and column, so that positions in a ledger hold.
 * Keys in `without` go too, their lines left empty: they, too, must stand at the front matter's own level.
 */
export function withoutComments(file: ContentFile, without: readonly string[] = []): string {
  const parts = splitFrontMatter(file, new Report());
  if (!parts) return '';
  const { text, yaml } = parts;
  const start = text.indexOf('\n') + 1;
  return text.slice(0, start) + strippedYaml(yaml, without) + text.slice(start + yaml.length);
}

function strippedYaml(yaml: string, without: readonly string[]): string {
  let stripped = '';
  for (const token of new Parser().parse(yaml)) {
    emptyComments(token);
    if (token.type === 'document' && token.value?.type === 'block-map') emptyKeys(token.value, without);
    stripped += CST.stringify(token as CST.Document);
  }
  return stripped;
}

/** The parser's tokens hold the whole source between them: one that is emptied leaves nothing behind. */
function emptyComments(token: unknown): void {
  if (Array.isArray(token)) token.forEach(emptyComments);
  else if (typeof token === 'object' && token !== null) {
    if ((token as CST.Token).type === 'comment') (token as CST.SourceToken).source = '';
    else for (const inner of Object.values(token)) emptyComments(inner);
  }
}

function emptyKeys(map: CST.BlockMap, without: readonly string[]): void {
  for (const item of map.items) {
    if (item.key?.type !== 'scalar' || !without.includes(item.key.source)) continue;
    const lines = CST.stringify(item).replace(/[^\n]/g, '');
    item.start = [{ type: 'newline', offset: 0, indent: 0, source: lines }];
    delete item.key;
    delete item.sep;
    delete item.value;
  }
}
