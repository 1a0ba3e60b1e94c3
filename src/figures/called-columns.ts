/** What people call the columns of small tables; and what a column that nothing reads may mean for the rows or constants of a mapping. */
import { headName } from '../intake/cells/heads.ts';
import type { MappedTable } from '../intake/mapped-table.ts';
import type { Table } from '../intake/table.ts';
import type { TableMapping } from '../intake/table-mapping.ts';
import { error, type Problem, warning } from '../problem.ts';

type Words = Readonly<Record<string, RegExp>>;

/** What people call our columns. */
export const CALLED: Readonly<Record<'scores' | 'surface' | 'attempts', Words>> = {
  scores: {
    test: /^(?:sub_?)?(?:tests?|benchmarks?|bench|workload|kernel|task|case|name|test_name|benchmark_name)$/,
    value: /^(?:value|result|score|mean|average|avg|median|measured|points|rate|throughput|time|duration|seconds)$/,
    unit: /^units?$/,
    repeat: /^(?:repeat|rep|run|iteration|iter|pass|trial|round|loop|attempt|try|no|nr|number|#)(?:_?(?:no|nr|number|id|#))?\.?$/,
    error: /^(?:error|err|\+\/_?|±|std_?(?:dev|ev|deviation)?|sd|sigma|standard_(?:error|deviation)|uncertainty)$/,
    better: /^(?:better|direction|which_is_better)$/,
    start: /^(?:start(?:ed)?|begin|began|from)(?:_?(?:time|at))?$/,
    end: /^(?:end(?:ed)?|finish(?:ed)?|stop(?:ped)?|until|to)(?:_?(?:time|at))?$/,
  },
  surface: {
    spot: /^(?:spot|point|place|location|position|where|marker|name|label|area|sp)(?:_?(?:name|id))?$/,
    reading: /^(?:reading|temp|temperature|value|t|max|t_max|max_temp|hottest|°c|degc|celsius)$/,
    material: /^(?:material|surface_material)$/,
    part: /^(?:part|component)$/,
    contact: /^(?:contact|touch)$/,
  },
  attempts: {
    clock: /^(?:cpu_)?(?:clock|freq|frequency|speed|mhz|ghz|core_clock|target)(?:_?(?:mhz|ghz))?$/,
    voltage_offset:
      /^(?:volt(?:s|age)?|over_?voltage|vcore|uv|vdd)$|^(?!.*(?:clock|freq|hz|temp|time)).*offset|under_?volt|(?:^|_)mv(?:$|_)/,
    outcome: /^(?:outcome|result|status|state|stable|verdict|ok|passed|what_happened)\??$/,
    note: /^(?:notes?|comments?|remarks?)$/,
    test: /^(?:test|workload|benchmark)$/,
    duration: /^(?:duration|how_long|time|minutes)$/,
    ambient: /^(?:ambient|room|room_temp(?:erature)?)$/,
  },
};

/** What people call the column that tells settings or runs apart. */
export const SETTING =
  /clock|freq|[mg]hz|voltage|setting|mode|profile|preset|config|governor|run|session|device|specimen|board|unit_no/;

/** A column whose name says, as words of its own, that it tells settings or runs apart. */
const TELLS_APART =
  /(?:^|_)(?:clock|freq|frequency|[mg]hz|setting|mode|profile|preset|config|governor|voltage|run|session|specimen)s?(?:_|$)/;

/** Whether a column of a file could be one of ours, by its name. */
export function couldBe(head: string, kind: keyof typeof CALLED, name: string): boolean {
  if (name === 'voltage_offset' && /\bmV\b/i.test(head)) return true;
  return headName(head) === name || (CALLED[kind][name]?.test(headName(head)) ?? false);
}

/**
 * What is wrong with columns that nothing reads: one that tells settings or runs apart, whose rows would be taken as repeats of one; and one
 * that could hold what `every_row` says. Empty where the mapping itself has problems.
 */
export function unreadProblems(
  file: Table,
  { readAs, problems }: Pick<MappedTable, 'readAs' | 'problems'>,
  mapping: TableMapping | undefined,
  kind: keyof typeof CALLED,
): Problem[] {
  if (problems.length > 0) return [];
  const unread = file.head.flatMap((head, field) => (readAs[field] === null ? [{ head, field }] : []));
  const constants = Object.keys(mapping?.everyRow ?? {}).flatMap((name) =>
    unread.filter(({ head }) => couldBe(head, kind, name)).map(({ head }) => constantBeside(file, name, head)),
  );
  if (kind === 'attempts' || mapping?.rows) return constants;
  const apart = unread.filter(({ head }) => TELLS_APART.test(headName(head)));
  return [...constants, ...apart.flatMap(({ head, field }) => poolsRows(file, head, field, kind))];
}

function constantBeside(file: Table, name: string, head: string): Problem {
  return error('table-every-row', file.headPlace, `\`every_row\` says \`${name}\`, and the column \`${head}\` may hold it`, {
    remedy: `take it out of \`every_row\`, and write \`${name}: ${head}\` below \`columns\``,
  });
}

/** An error where a value stands in several rows; else the column may as well hold a measured value or the number of a repeat. */
function poolsRows(file: Table, head: string, field: number, kind: string): Problem[] {
  const cells = file.rows.map(({ cells: own }) => own[field]!.trim()).filter((cell) => cell !== '');
  const values = [...new Set(cells)];
  if (values.length < 2) return [];
  const counts = values.every((value, at) => Number(value) === at + 1);
  const tell = values.length < cells.length && !counts ? error : warning;
  const repeats = kind === 'scores' ? `; if each is a repeat, \`repeat: ${head}\` below \`columns\`` : '';
  return [
    tell('table-rows', file.headPlace, `the column \`${head}\` has ${values.length} values, and rows of all are read as one run`, {
      remedy: `below \`${kind}\` write \`rows:\` and below it \`${head}: ${values[0]}\`, with the value of this run${repeats}`,
    }),
  ];
}
