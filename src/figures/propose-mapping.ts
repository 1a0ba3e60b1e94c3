/** What the columns and words of a small table probably are: proposed to its author, never taken without a word. */
import { MISSING_MARKERS } from '../intake/cells/cells.ts';
import { headName, headUnit, withoutBrackets } from '../intake/cells/heads.ts';
import { mapTable } from '../intake/mapped-table.ts';
import type { Table } from '../intake/table.ts';
import type { DeclaredTest, MappedColumn, TableMapping } from '../intake/table-mapping.ts';
import { readUnit } from '../quantities/units.ts';
import { CALLED, couldBe, SETTING } from './called-columns.ts';
import { OUTCOMES, type Outcome } from './stability/ladder.ts';
import { TABLE_FORMS, type TableKind } from './table-layout.ts';

export interface ProposedMapping {
  readonly mapping: TableMapping;
  /** Tests of which nothing says which direction is good. */
  readonly openTests: readonly string[];
  /** Words for outcomes that are not understood. */
  readonly openWords: readonly string[];
  /** Comment behind what is taken though the table does not say it; '' for nothing. */
  readonly taken: string;
  /** Of a table of several settings: every value of the column under `rows`. */
  readonly settings: readonly string[];
  /** Columns of ours that the table needs and nothing was found for. */
  readonly lacking: readonly string[];
}

/** What people call outcomes. */
const OUTCOME_WORDS: readonly (readonly [RegExp, Outcome])[] = [
  [
    /^(?:no|not?|did(?:n.?t| not)|does(?:n.?t| not)|would(?:n.?t| not)|can.?t|cannot|won.?t|will not|never)\s*(?:boot|post|start)|^dead$|^black screen/i,
    'no boot',
  ],
  [/(?:hung|hang|hangs|froze|frozen|freeze|stuck)\b.*boot|boot.*\b(?:hung|hang|hangs|froze|frozen|freeze|stuck)/i, 'hung at boot'],
  [/wrong|bad result|mismatch|corrupt|miscomput|errors?\b/i, 'wrong results'],
  [/reboot|restart|reset|crash/i, 'restarted'],
  [/throttl/i, 'throttled'],
  [/hung|hang|hangs|froze|frozen|freeze|lock(?:ed)?[ -]?up|stuck|stopped/i, 'hung under load'],
  [/^(?:ok|okay|pass|passes|passed|stable|fine|good|yes|y|success|survived|boots? and runs|runs|✓|✔)\b/i, 'passed'],
];

/** Proposes how a table of a kind is read. What a mapping already says stands. Never throws. */
export function proposeMapping(table: Table, kind: TableKind, given: TableMapping = {}): ProposedMapping {
  const found =
    kind === 'scores' ? scoresOf(table, given) : kind === 'surface' ? surfaceOf(table, given) : attemptsOf(table, given);
  const form = TABLE_FORMS[kind];
  const whole = { ...given, ...found, columns: [...(given.columns ?? []), ...(found.columns ?? [])] };
  const mapped = mapTable(table, whole, form);
  const there = mapped.table.head.map(headName);
  const named = kind === 'scores' ? testsOf(mapped.table, given) : { tests: {}, open: [] };
  const words = kind === 'attempts' ? outcomesOf(mapped.table) : { words: {}, open: [] };
  const could = table.head.some((head) => couldBe(head, 'attempts', 'voltage_offset'));
  const offset = kind === 'attempts' && !there.includes('voltage_offset') && !could;
  const every = offset ? { voltage_offset: '0 mV' } : {};
  const { layout, ...others } = found;
  const mapping: TableMapping = {
    ...(layout === undefined || layout === given.layout ? {} : { layout }),
    ...others,
    ...(Object.keys(named.tests).length > 0 ? { tests: named.tests } : {}),
    ...(Object.keys(words.words).length > 0 ? { words: words.words } : {}),
    ...(offset ? { everyRow: every } : {}),
  };
  const filled = new Set(['better', 'unit', ...Object.keys(every)]);
  return {
    mapping,
    openTests: named.open,
    openWords: words.open,
    taken: offset ? ' # if no voltage was changed' : '',
    settings: found.rows ? distinct(table, table.head.indexOf(found.rows.column)) : [],
    lacking: form.needed.filter((name) => !there.includes(name) && !filled.has(name)),
  };
}

/** Whether a table is of a kind as it stands, or with what is proposed. */
export function isTableOf({ lacking }: ProposedMapping): boolean {
  return lacking.length === 0;
}

function cellsAt(table: Table, field: number): string[] {
  return table.rows.map(({ cells }) => cells[field]!).filter((cell) => !MISSING_MARKERS.has(cell));
}

function distinct(table: Table, field: number): string[] {
  return field < 0 ? [] : [...new Set(cellsAt(table, field))];
}

function isNumeric(table: Table, field: number): boolean {
  const cells = cellsAt(table, field);
  return cells.length > 0 && cells.every((cell) => !Number.isNaN(table.number(cell)));
}

/** Fields by our names: those that have them already, then those that people call so. */
function calledOf(
  table: Table,
  kind: TableKind,
  given: TableMapping,
): { readonly own: Map<string, number>; readonly called: Map<string, number> } {
  const form = TABLE_FORMS[kind];
  const ours = [...form.needed, ...form.optional];
  const taken = new Set((given.columns ?? []).flatMap(({ heads }) => heads.map((head) => table.head.indexOf(head))));
  const own = new Map<string, number>();
  table.head.forEach((head, field) => {
    const name = headName(head);
    if (ours.includes(name) && !own.has(name) && !taken.has(field)) own.set(name, field);
  });
  const called = new Map<string, number>();
  for (const [name, words] of Object.entries(CALLED[kind])) {
    if (own.has(name) || (given.columns ?? []).some((column) => column.name === name)) continue;
    const used = new Set([...own.values(), ...called.values(), ...taken]);
    const field = table.head.findIndex((head, at) => !used.has(at) && words.test(headName(head)));
    if (field >= 0) called.set(name, field);
  }
  return { own, called };
}

function columnsOf(table: Table, called: ReadonlyMap<string, number>): Pick<TableMapping, 'columns'> {
  const columns = [...called].map(([name, field]): MappedColumn => ({ name, heads: [table.head[field]!], place: table.headPlace }));
  return columns.length === 0 ? {} : { columns };
}

/** A column with few values, each of them in several rows or in one row a setting. */
function settingOf(table: Table, used: ReadonlySet<number>): Pick<TableMapping, 'rows'> {
  const field = table.head.findIndex(
    (head, at) => !used.has(at) && SETTING.test(headName(head)) && !/\d$/.test(head) && distinct(table, at).length > 1,
  );
  const [value] = field < 0 ? [] : distinct(table, field);
  return value === undefined ? {} : { rows: { column: table.head[field]!, value, place: table.headPlace } };
}

function scoresOf(table: Table, given: TableMapping): TableMapping {
  const { own, called } = calledOf(table, 'scores', given);
  // Runs that have names are settings, those that have numbers are repeats.
  if (called.has('repeat') && !isNumeric(table, called.get('repeat')!)) called.delete('repeat');
  const has = (name: string) => own.has(name) || called.has(name) || (given.columns ?? []).some((column) => column.name === name);
  const used = () => new Set([...own.values(), ...called.values()]);
  const free = (numeric: boolean) =>
    table.head.flatMap((_, at) =>
      !used().has(at) && isNumeric(table, at) === numeric && cellsAt(table, at).length > 0 ? [at] : [],
    );
  // A clock that is one value a setting tells settings apart; a column `clock` of ours is of what was delivered.
  const setting = given.rows
    ? {}
    : settingOf(table, new Set([...[...own].filter(([name]) => name !== 'clock').map(([, at]) => at), ...called.values()]));
  const apart = setting.rows ? table.head.indexOf(setting.rows.column) : -1;
  if (called.has('test') && isNumeric(table, called.get('test')!)) called.delete('test');
  if (!has('test')) {
    const [text] = free(false).filter((at) => at !== apart && distinct(table, at).length > 0);
    const numbers = free(true).filter((at) => at !== apart);
    if (
      text !== undefined &&
      numbers.length > 0 &&
      distinct(table, text).length > 1 &&
      !(numbers.length > 1 && !alike(table, numbers))
    )
      called.set('test', text);
  }
  if (!has('test')) {
    called.delete('value');
    called.delete('error');
    const numbers = free(true).filter((at) => at !== apart);
    return numbers.length === 0 ? columnsOf(table, called) : { layout: 'wide', ...columnsOf(table, called), ...setting };
  }
  if (has('value')) return { ...columnsOf(table, called), ...setting };
  const numbers = free(true).filter((at) => at !== apart);
  const { columns = [] } = columnsOf(table, called);
  const heads = numbers.length > 1 && alike(table, numbers) ? numbers : numbers.slice(0, 1);
  const value: MappedColumn = { name: 'value', heads: heads.map((at) => table.head[at]!), place: table.headPlace };
  return { columns: heads.length === 0 ? columns : [...columns, value], ...setting };
}

/** Columns that are named alike and numbered: repeats. */
function alike(table: Table, fields: readonly number[]): boolean {
  const stems = new Set(fields.map((at) => withoutBrackets(table.head[at]!).replace(/[\s_#-]*\d+$/, '')));
  return stems.size === 1 && fields.every((at) => /\d+$/.test(withoutBrackets(table.head[at]!)));
}

function surfaceOf(table: Table, given: TableMapping): TableMapping {
  const { own, called } = calledOf(table, 'surface', given);
  const has = (name: string) => own.has(name) || called.has(name) || (given.columns ?? []).some((column) => column.name === name);
  const used = () => new Set([...own.values(), ...called.values()]);
  const setting = given.rows ? {} : settingOf(table, used());
  const apart = setting.rows ? table.head.indexOf(setting.rows.column) : -1;
  const free = table.head.flatMap((_, at) => (!used().has(at) && at !== apart && cellsAt(table, at).length > 0 ? [at] : []));
  const numbers = free.filter((at) => isNumeric(table, at));
  const texts = free.filter((at) => !isNumeric(table, at));
  if (!has('spot') && texts.length > 0 && (has('reading') || numbers.length > 0)) called.set('spot', texts[0]!);
  if (!has('spot') && numbers.length + (called.has('reading') ? 1 : 0) > 1) {
    called.delete('reading');
    return { layout: 'wide', ...columnsOf(table, called), ...setting };
  }
  if (!has('reading') && numbers.length > 0) called.set('reading', numbers[0]!);
  return { ...columnsOf(table, called), ...setting };
}

/** Clocks of computers: below this a bare number is in GHz, above it in MHz. */
const LEAST_MEGAHERTZ = 20;

/**
 * A column in which every cell says what came of an attempt, whatever it is called; undefined where none does. One in which all passed may
 * be of anything: that the device started, say.
 */
function outcomeField(table: Table, used: ReadonlySet<number>): number | undefined {
  const field = table.head.findIndex((_, at) => {
    const meant = used.has(at) ? [] : cellsAt(table, at).map(meantBy);
    return !meant.includes(undefined) && meant.some((outcome) => outcome !== 'passed');
  });
  return field < 0 ? undefined : field;
}

/** "No errors" and "did not hang" tell what did not happen: a denial ahead, in the same clause. */
const DENIED = /(?:\b(?:no|not|without|never|zero|0)\b|n['’]t\b)[^,;]*$/i;

/** The outcome that a cell says; undefined where it is not understood. */
function meantBy(cell: string): Outcome | undefined {
  const own = OUTCOMES.find((outcome) => outcome === cell.toLowerCase());
  if (own !== undefined) return own;
  return OUTCOME_WORDS.find(([words]) => {
    const at = words.exec(cell)?.index;
    return at !== undefined && !DENIED.test(cell.slice(0, at));
  })?.[1];
}

function isOutcome(cell: string): boolean {
  return (OUTCOMES as readonly string[]).includes(cell.toLowerCase());
}

function attemptsOf(table: Table, given: TableMapping): TableMapping {
  const { own, called } = calledOf(table, 'attempts', given);
  const taken = (given.columns ?? []).some(({ name }) => name === 'outcome');
  const byCells = outcomeField(table, new Set([...own.values(), ...called.values()]));
  if (!own.has('outcome') && !called.has('outcome') && !taken && byCells !== undefined) called.set('outcome', byCells);
  const clock = own.get('clock') ?? called.get('clock');
  const numbers =
    clock === undefined
      ? []
      : cellsAt(table, clock)
          .map((cell) => table.number(cell))
          .filter((value) => !Number.isNaN(value));
  const bare =
    clock !== undefined && numbers.length > 0 && headUnit(table.head[clock]!) === undefined && given.units?.clock === undefined;
  const unit = /ghz$/i.test(table.head[clock ?? -1] ?? '') || Math.max(...numbers) < LEAST_MEGAHERTZ ? 'GHz' : 'MHz';
  const offset = called.get('voltage_offset') ?? own.get('voltage_offset');
  const bareOffset =
    offset !== undefined &&
    isNumeric(table, offset) &&
    headUnit(table.head[offset]!) === undefined &&
    /mv/i.test(table.head[offset]!);
  const units = { ...(bare ? { clock: unit } : {}), ...(bareOffset ? { voltage_offset: 'mV' } : {}) };
  return { ...columnsOf(table, called), ...(Object.keys(units).length > 0 ? { units } : {}) };
}

/** Directions by units that leave no doubt: a time is better short, a rate is better high. */
function testsOf(table: Table, given: TableMapping): { readonly tests: Record<string, DeclaredTest>; readonly open: string[] } {
  const at = (name: string) => table.head.findIndex((head) => headName(head) === name);
  const [test, unit, better] = [at('test'), at('unit'), at('better')];
  const tests: Record<string, DeclaredTest> = {};
  const open: string[] = [];
  for (const { cells } of test < 0 ? [] : table.rows) {
    const title = cells[test]!;
    if (title === '' || tests[title] || open.includes(title) || given.tests?.[title]) continue;
    if (better >= 0 && (cells[better] === 'higher' || cells[better] === 'lower')) continue;
    const direction = directionOf(unit < 0 ? '' : cells[unit]!);
    if (direction === undefined) open.push(title);
    else tests[title] = { better: direction };
  }
  return { tests, open };
}

function directionOf(spelling: string): DeclaredTest['better'] | undefined {
  if (readUnit(spelling)?.canonical === 's') return 'lower';
  if (/\/\s*(?:s|sec|second|min|h)$|^[a-z]*(?:ops|flops|ips|fps|bps|b\/s)$/i.test(spelling)) return 'higher';
  return undefined;
}

function outcomesOf(table: Table): { readonly words: Record<string, string>; readonly open: string[] } {
  const field = table.head.findIndex((head) => headName(head) === 'outcome');
  const words: Record<string, string> = {};
  const open: string[] = [];
  for (const cell of field < 0 ? [] : new Set(table.rows.map(({ cells }) => cells[field]!))) {
    if (cell === '' || isOutcome(cell)) continue;
    const meant = meantBy(cell);
    if (meant === undefined) open.push(cell);
    else words[cell] = meant;
  }
  return { words, open };
}
