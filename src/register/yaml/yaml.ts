/** The one door to the YAML library: front matter -> a tree of texts with places. Only what can be read in one way is let in. */
import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Pair,
  parseDocument,
  type Scalar,
  visit,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { Place } from '../../problem.ts';
import type { Entry, MapNode, Node } from './node.ts';
import type { Report } from './report.ts';
import { syntaxProblem } from './yaml-messages.ts';

/** No shape of the register is nested deeper than this. */
const DEEPEST = 8;

interface Context {
  readonly file: string;
  readonly yaml: string;
  readonly lines: LineCounter;
  readonly report: Report;
}

/**
 * Reads front matter whose first line is line 2 of its file.
 *
 * The failsafe schema leaves every scalar as it is written, so that `1.10`, `no`, `0x10` and `2026-03-14` stay text. Refused are flow mappings
 * (`{ column: T, amb }` is two keys), anchors, aliases, tags, a second document and values broken over lines.
 * Returns undefined, with a problem, where the text is no mapping at all.
 */
export function parseFrontMatter(file: string, yaml: string, report: Report): MapNode | undefined {
  const context: Context = { file, yaml, lines: new LineCounter(), report };
  let document: Document.Parsed;
  try {
    document = parseDocument(yaml, {
      schema: 'failsafe',
      lineCounter: context.lines,
      uniqueKeys: false,
      prettyErrors: false,
      logLevel: 'silent',
    });
  } catch {
    report.error('yaml-syntax', { file, line: 2, column: 1 }, 'the front matter cannot be read: it is nested too deeply');
    return undefined;
  }
  if (tellSyntax(document, context)) return undefined;
  const root = document.contents;
  if (isMap(root) && !root.flow) return mapNode(root as YAMLMap, context, 0);
  tellRoot(root, context);
  return undefined;
}

/** The first complaint of the library; those after it mostly follow from it. */
function tellSyntax(document: Document.Parsed, context: Context): boolean {
  const ending = /^\.\.\.[ \t]*\r?$/m.exec(context.yaml);
  if (ending) {
    context.report.error(
      'yaml-syntax',
      placeAt(context, ending.index, ending.index + 3),
      '`...` would end the front matter before its last line',
      {
        remedy: 'remove this line',
      },
    );
    return true;
  }
  const first = [...document.errors].sort((a, b) => a.pos[0] - b.pos[0])[0];
  if (!first) return false;
  const { rule, found, ...more } = syntaxProblem(first.code, first.message, lineAt(context.yaml, first.pos[0]));
  const start = /quote$/.test(first.message) ? openingQuote(document, first.pos[0]) : first.pos[0];
  context.report.error(rule, placeAt(context, start, Math.max(start + 1, first.pos[1])), found, more);
  return true;
}

function lineAt(text: string, offset: number): string {
  return text.slice(text.lastIndexOf('\n', offset - 1) + 1).split(/\r?\n/, 1)[0] as string;
}

/** Offset of the last quoted value that begins before an offset: the library complains of a missing quote where it gave up. */
function openingQuote(document: Document.Parsed, before: number): number {
  let start = before;
  visit(document, {
    Scalar(_, node) {
      const at = node.range?.[0] ?? before;
      if (/^QUOTE/.test(node.type ?? '') && at < before) start = at;
    },
  });
  return start;
}

function tellRoot(root: unknown, context: Context): void {
  const node = root as { range?: [number, number, number] } | null;
  const place = node?.range ? placeAt(context, node.range[0], node.range[1]) : { file: context.file, line: 1, column: 1 };
  const empty = root === null || (isScalar(root) && root.source === '');
  const found = empty ? 'the front matter is empty' : 'the front matter is not a list of keys';
  context.report.error('yaml-syntax', place, found, { expected: 'lines such as `title: My text`, with a blank after the colon' });
}

function mapNode(map: YAMLMap, context: Context, depth: number): MapNode {
  const entries = new Map<string, Entry>();
  for (const pair of map.items) {
    const entry = entryOf(pair, context, depth);
    if (!entry) continue;
    const first = entries.get(entry.key);
    if (first) tellTwice(entry, first, context);
    else entries.set(entry.key, entry);
  }
  return { kind: 'map', entries, place: rangePlace(map, context) };
}

function tellTwice(entry: Entry, first: Entry, { report }: Context): void {
  report.error('duplicate-key', entry.keyPlace, `\`${entry.key}\` stands twice`, {
    remedy: `keep one of the two; the other one is on line ${first.keyPlace.line}`,
  });
}

function entryOf(pair: Pair, context: Context, depth: number): Entry | undefined {
  const key = pair.key;
  if (!isScalar(key) || typeof key.value !== 'string' || key.value === '' || key.anchor || key.tag) {
    const place = hasRange(key) ? rangePlace(key, context) : { file: context.file, line: 2, column: 1 };
    context.report.error('yaml-syntax', place, 'this key is not a plain word', { expected: 'a key such as `title`' });
    return undefined;
  }
  const keyPlace = rangePlace(key, context);
  const value =
    pair.value === null ? ({ kind: 'empty', place: keyPlace } as const) : nodeOf(pair.value, context, depth + 1, keyPlace);
  return { key: key.value, keyPlace, value };
}

function nodeOf(value: unknown, context: Context, depth: number, fallback: Place): Node {
  const place = hasRange(value) ? rangePlace(value, context) : fallback;
  const refuse = (found: string, remedy: string): Node => {
    context.report.error('yaml-form', place, found, { remedy });
    return { kind: 'refused', place };
  };
  if (isAlias(value))
    return refuse(
      `\`*${value.source}\` refers to another place of the file`,
      'write the value out; what runs share belongs in a setup',
    );
  const marked = value as { anchor?: string; tag?: string; flow?: boolean };
  if (marked.anchor)
    return refuse(
      `\`&${marked.anchor}\` names a value for reuse`,
      'take the mark out; if it belongs to the text, put the text in quotes',
    );
  if (marked.tag)
    return refuse(
      'a mark beginning with `!` stands before this value',
      'take the mark out; if it belongs to the text, put the text in quotes',
    );
  if (depth > DEEPEST) return refuse('this is nested deeper than any key needs', 'check the indentation');
  if (isScalar(value)) return textNode(value, context, place, fallback);
  if (isSeq(value))
    return { kind: 'list', items: (value as YAMLSeq).items.map((item) => nodeOf(item, context, depth + 1, place)), place };
  if (isMap(value) && marked.flow) {
    return refuse(
      'this mapping is written in braces',
      'write each key on a line of its own, indented below; if the braces belong to the text, put it in quotes',
    );
  }
  return mapNode(value as YAMLMap, context, depth);
}

/** What YAML calls null is a missing value here, unless in quotes. */
const NOTHING = new Set(['', '~', 'null', 'Null', 'NULL']);

function textNode(scalar: Scalar, context: Context, place: Place, fallback: Place): Node {
  const text = String(scalar.value).trim();
  const [start, end] = scalar.range ?? [0, 0];
  const quoted = scalar.type === 'QUOTE_DOUBLE' || scalar.type === 'QUOTE_SINGLE';
  if (text === '' || (scalar.type === 'PLAIN' && NOTHING.has(text)))
    return { kind: 'empty', place: text === '' && !quoted ? fallback : place };
  const block = scalar.type === 'BLOCK_LITERAL' || scalar.type === 'BLOCK_FOLDED';
  if (!block && context.yaml.slice(start, end).includes('\n')) {
    context.report.error('value-over-lines', place, 'this value is broken over lines', {
      remedy:
        'put it on one line, or write `|` after the colon and the text indented below; check the indentation if a key was meant',
    });
    return { kind: 'refused', place };
  }
  tellSwallowed(scalar, end, context);
  return { kind: 'text', text, quoted, place, inside: quoted ? placeAt(context, start + 1, end - 1) : place };
}

/** `title: Board #2` is `Board` to YAML. A comment has a blank after its sign; where there is none, a part of the value was probably lost. */
function tellSwallowed(scalar: Scalar, end: number, context: Context): void {
  if (scalar.type !== 'PLAIN') return;
  const swallowed = /^[ \t]+(#[^\s#][^\r\n]*)/.exec(context.yaml.slice(end));
  if (!swallowed) return;
  const start = end + swallowed[0].length - swallowed[1]!.length;
  context.report.warning(
    'lost-in-comment',
    placeAt(context, start, start + swallowed[1]!.length),
    `\`${swallowed[1]}\` is taken as a comment, not as part of the value`,
    {
      remedy: 'put the value in quotes, or a blank after `#` if it is a comment',
    },
  );
}

function hasRange(node: unknown): node is { range: [number, number, number] } {
  return Array.isArray((node as { range?: unknown } | null)?.range);
}

function rangePlace(node: unknown, context: Context): Place {
  const [start, end] = (node as { range?: [number, number, number] | null }).range ?? [0, 0];
  return placeAt(context, start, end);
}

/** Line 1 of the file is the opening `---`. */
function placeAt({ file, lines }: Context, start: number, end: number): Place {
  const from = lines.linePos(start);
  const to = lines.linePos(Math.max(start, end));
  return {
    file,
    line: Math.max(1, from.line) + 1,
    column: Math.max(1, from.col),
    endLine: Math.max(1, to.line) + 1,
    endColumn: Math.max(1, to.col),
  };
}
