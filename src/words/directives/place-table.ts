/** `::table{runs="…" of="…"}`: a table of figures, one row a figure, one column a run. */
import type { Element } from 'hast';
import type { Nodes, ParagraphData } from 'mdast';
import { isPresent } from '../../figures/figure.ts';
import { error, type Place } from '../../problem.ts';
import { decimalPads } from '../../quantities/decimal-pads.ts';
import { readTableRequest, type TableRequest } from '../../register/requests.ts';
import { type Destination, follow } from '../expression/address.ts';
import { askedOf } from '../expression/asked-of.ts';
import { heldBy } from '../expression/evaluate.ts';
import type { Address } from '../expression/expression-tree.ts';
import { detailInWords, factInWords, figureInWords } from '../expression/in-words.ts';
import { isTextProblem, parseExpression } from '../expression/parse-expression.ts';
import { besideOf } from '../expression/stand-ins.ts';
import { locate, type TextProblem } from '../expression/text-problem.ts';
import { scrollRegion } from '../page/number-page.ts';
import { element, heldAnchor, type PageElement, permalink } from '../page/page-node.ts';
import { recordedCell } from '../page/recorded-words.ts';
import { placeAt, spanOf, type Writing } from '../page/writing.ts';
import { withoutCommas } from './name-list.ts';
import { columnsOf, requestAttributes, takeId } from './place-plot.ts';
import type { WrittenDirective } from './read-directive.ts';
import { entryOf, printed } from './value.ts';

/** The figure with the table, or null after reporting what is wrong with the request. */
export function placeTable(writing: Writing, read: WrittenDirective, node: Nodes): PageElement | null {
  if (!withoutCommas(writing, read)) return null;
  const place = placeAt(writing, spanOf(node).start);
  const attributes = requestAttributes(writing, read);
  const request = readTableRequest(attributes, columnsOf(writing), place);
  const before = writing.problems.length;
  if ('problems' in request) writing.problems.push(...request.problems);
  const rows = 'problems' in request ? [] : request.of.map(({ address, place: at }) => readRow(writing, request, address, at));
  if ('problems' in request || writing.problems.length > before) return null;
  const id = takeId(writing, request.id, attributes.get('id'));
  return id === null ? null : sheet(writing, { ...request, id }, rows as Row[]);
}

/** What marked spots ask for: a row for each, a column for each run. */
interface SpotsRequest extends Pick<TableRequest, 'id' | 'runs' | 'place'> {
  /** Ids of spots, in the order in which they are numbered. */
  readonly spots: readonly string[];
}

/** The surface temperatures of marked spots, numbered as they are marked. Null after reporting what is wrong. */
export function spotsTable(writing: Writing, { spots, ...asked }: SpotsRequest): ParagraphData | null {
  const request: TableRequest = { ...asked, of: [], title: 'Temperatures of the marked spots' };
  const before = writing.problems.length;
  const rows = spots.map((spot, index): Row | null => {
    const row = readRow(writing, request, `surface."${spot}"`, request.place);
    return row && { ...row, label: row.detail === '' ? spot : row.detail, detail: '', mark: index + 1 };
  });
  if (writing.problems.length > before) return null;
  const { tagName, properties, children } = sheet(writing, request, rows as Row[]);
  return { hName: tagName, hProperties: properties, ...(children === 'own' ? {} : { hChildren: children }) };
}

interface Row {
  /** As the author wrote it. */
  readonly address: string;
  readonly label: string;
  /** What the author wrote behind the name: a channel, a test. */
  readonly detail: string;
  /** The number that marks it in a picture. */
  readonly mark?: number;
  /** One a run; null where that run has nothing of the kind. */
  readonly cells: readonly (Destination | null)[];
}

/** One row; an address that leads nowhere in every run is a problem, in some of them an absence. */
function readRow(writing: Writing, { runs }: TableRequest, text: string, place: Place): Row | null {
  const tree = parseExpression(text);
  if (isTextProblem(tree)) return refuse(writing, locate(tree, place));
  if (tree.kind !== 'address')
    return refuse(writing, error('request-attribute', place, `\`${text}\``, { expected: 'addresses without alias' }));
  const found = runs.map(({ alias }) => followIn(writing, alias, tree));
  const wrong = found.find((each) => each !== 'unusable' && isTextProblem(each)) as TextProblem | undefined;
  const cells = found.map((each) => (each === 'unusable' || isTextProblem(each) ? null : each));
  const some = cells.find((cell) => cell !== null);
  if (some) return { address: text, ...headOf(some, tree), cells };
  return wrong ? refuse(writing, locate(wrong, place)) : { address: text, label: text, detail: '', cells };
}

function refuse(writing: Writing, problem: Writing['problems'][number]): null {
  writing.problems.push(problem);
  return null;
}

/** Follows an address within one run. */
function followIn({ subjects }: Writing, alias: string, address: Address): ReturnType<typeof follow> {
  const subject = subjects.get(alias);
  return follow(address, new Map(subject ? [[alias, subject]] : []));
}

function headOf(destination: Destination, { parts }: Address): Pick<Row, 'label' | 'detail'> {
  if (!('figure' in destination)) return { label: factInWords(destination.key), detail: '' };
  const name = destination.figure.name;
  const detail = parts
    .slice(name.split('.').length)
    .map((part) => detailInWords(part.name, destination.figure.of))
    .join(', ');
  return { label: figureInWords(name, ''), detail };
}

function sheet(writing: Writing, request: TableRequest, rows: readonly Row[]): PageElement {
  const absences: Element[] = [];
  const head = element('thead', {}, [
    element('tr', {}, [
      element('td', {}, []),
      ...request.runs.map(({ alias }) => element('th', { scope: 'col' }, [alias.replaceAll('_', ' ')])),
    ]),
  ]);
  const pads = request.runs.map((_, column) => decimalPads(rows.map(({ cells }) => shownOf(cells[column] ?? null)?.shown ?? '')));
  const body = rows.map((row, index) => {
    const cells = row.cells.map((cell, column) =>
      tableCell(writing, request, row, cell, { column, pad: pads[column]?.[index] ?? '' }, absences),
    );
    return element('tr', {}, [rowHead(row), ...cells]);
  });
  const caption = request.title ?? captionOf(request, rows);
  const table = element('table', {}, [
    element('caption', {}, [caption, permalink(request.id, `the table: ${caption}`)]),
    head,
    element('tbody', {}, body),
  ]);
  const reasons = absences.length > 0 ? [element('ul', { className: ['absences'] }, absences)] : [];
  return {
    tagName: 'figure',
    properties: { className: ['sheet'], id: request.id },
    children: [scrollRegion(caption, table), ...reasons],
  };
}

function rowHead({ label, detail, mark }: Row): Element {
  const said = mark === undefined ? [] : [element('span', { className: ['mark'] }, [String(mark)]), ' '];
  if (said.length > 0) return element('th', { scope: 'row' }, [...said, label]);
  return element('th', { scope: 'row' }, detail === '' ? [label] : [label, element('span', { className: ['detail'] }, [detail])]);
}

function captionOf({ runs }: TableRequest, rows: readonly Row[]): string {
  const names = runs.map(({ alias }) => alias.replaceAll('_', ' '));
  const labels = rows.map(({ label, detail }) => (detail === '' ? label : `${label} (${detail})`));
  const words = labels.join(', ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}: ${names.join(', ')}`;
}

function tableCell(
  writing: Writing,
  request: TableRequest,
  row: Row,
  cell: Destination | null,
  { column, pad }: { readonly column: number; readonly pad: string },
  absences: Element[],
): Element {
  const alias = request.runs[column]?.alias ?? '';
  const absent = (why: string) => absentCell(writing, request, row, { alias, key: cell?.key ?? row.address, why }, absences);
  if (cell === null) return absent('this run has no such figure.');
  if ('figure' in cell && !isPresent(cell.figure)) return absent(cell.figure.why);
  const shown = shownOf(cell);
  if (!shown) return absent('it cannot be printed.');
  const held = [heldBy(cell)];
  writing.drafts.push(entryOf('table', request.place, '', `${alias}.${cell.key}`, shown, held));
  const anchor = heldAnchor(writing.drafts.length - 1, shown.shown);
  const beside = [placeDetail(row, cell), ...besideOf(held)].filter((text) => text !== '').join(', ');
  const detail = beside === '' ? [] : [element('span', { className: ['detail'] }, [beside])];
  return element('td', { className: ['number'] }, [anchor, ...padding(pad), ...detail]);
}

/** Set in an attribute: it takes up its width, and is neither copied nor read out. */
function padding(pad: string): Element[] {
  return pad === '' ? [] : [element('span', { className: ['pad'], dataPad: pad }, [])];
}

/** What a cell prints; null where there is nothing to print. */
function shownOf(cell: Destination | null) {
  if (cell === null || ('figure' in cell && !isPresent(cell.figure))) return null;
  const figure = 'figure' in cell && isPresent(cell.figure) ? cell.figure : undefined;
  const shown = 'fact' in cell ? printed(cell.fact) : figure && printed(figure.quantity, { interval: figure.interval });
  return shown && !('refused' in shown) ? shown : null;
}

/** "absent", with the reason below the table; of a published script, what was recorded. */
function absentCell(
  writing: Writing,
  { place }: TableRequest,
  row: Row,
  { alias, key, why }: { readonly alias: string; readonly key: string; readonly why: string },
  absences: Element[],
): Element {
  const expression = `${alias}.${key}`;
  const recorded = recordedCell(writing, expression, place, why);
  if (recorded) return element('td', { className: ['number'] }, [recorded]);
  const held = askedOf(expression, 'expression', writing.subjects);
  writing.absent.push({ kind: 'table', line: place.line, column: place.column, expression, why, held });
  const what = row.detail === '' ? row.label : `${row.label} (${row.detail})`;
  absences.push(element('li', {}, [`${what}, ${alias.replaceAll('_', ' ')}: ${why}`]));
  return element('td', { className: ['absent'] }, ['absent']);
}

/** Where a cell was measured, said in a row whose electrical figures were not all measured at one place. */
function placeDetail({ cells }: Row, cell: Destination): string {
  const places = cells.map((each) => (each === null ? undefined : placeOf(each)));
  const stated = new Set(places.filter((place) => place !== undefined));
  if (stated.size === 0 || (stated.size === 1 && !places.includes(undefined))) return '';
  return placeOf(cell) ?? 'place unstated';
}

function placeOf(cell: Destination): string | undefined {
  const at = 'figure' in cell && isPresent(cell.figure) ? cell.figure.of?.at : undefined;
  return typeof at === 'string' ? at : undefined;
}
