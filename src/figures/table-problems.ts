/** What is wrong with a small table, in one message with one remedy. */
import { readTable } from '../intake/table.ts';
import type { TableMapping } from '../intake/table-mapping.ts';
import type { Problem } from '../problem.ts';
import { mappingLines } from './mapping-lines.ts';
import { proposeMapping } from './propose-mapping.ts';
import type { TableKind } from './table-layout.ts';

export interface ProblemTable {
  readonly bytes: Uint8Array;
  readonly file: string;
  readonly kind: TableKind;
  readonly mapping: TableMapping | undefined;
}

/** Faults that are told before a message says how many more there are. */
const MOST_TOLD = 6;
/** Rules that a mapping mends: of columns, words, directions and units. */
const MAPPED = /^(?:(?:score|scores|surface|attempts)-(?:column|direction|unit|outcome|contact|clock|voltage-offset))$/;

/** The errors of a table as one, with a remedy to copy where a mapping mends them; warnings stand as they are. */
export function inOneMessage(problems: readonly Problem[], table: ProblemTable): readonly Problem[] {
  const errors = problems.filter(({ severity }) => severity === 'error');
  const own = errors.filter(({ place }) => place.file === table.file);
  const [first, ...others] = own;
  if (!first) return problems;
  const remedy = own.some(({ rule }) => MAPPED.test(rule)) ? mappingRemedy(table) : undefined;
  if (others.length === 0 && remedy === undefined) return problems;
  const kept = problems.filter((problem) => !own.includes(problem));
  const told = distinct(own);
  const more = told.length > MOST_TOLD ? [`${told.length - MOST_TOLD} more`] : [];
  const found =
    own.length === 1 ? first.found : `${own.length} faults in this table: ${[...told.slice(0, MOST_TOLD), ...more].join('; ')}`;
  return [...kept, { ...first, found, ...((remedy ?? first.remedy) ? { remedy: remedy ?? first.remedy! } : {}) }];
}

/** "line 3: no direction of `copy`", what is said of several lines once. */
function distinct(errors: readonly Problem[]): string[] {
  const lines = Map.groupBy(errors, ({ found }) => found);
  return [...lines].map(([found, all]) => {
    const numbers = [...new Set(all.map(({ place }) => place.line))];
    const shown = numbers.slice(0, 3).join(', ');
    const more = numbers.length > 3 ? ` and ${numbers.length - 3} more` : '';
    return `${numbers.length === 1 ? 'line' : 'lines'} ${shown}${more}: ${found}`;
  });
}

const KEYS: Readonly<Record<TableKind, string>> = { scores: 'scores', surface: 'surface', attempts: 'table' };

/** The mapping that the table seems to need, as lines to copy. */
function mappingRemedy({ bytes, file, kind, mapping }: ProblemTable): string | undefined {
  const proposed = proposeMapping(readTable(bytes, file), kind, mapping);
  const lines = mappingLines(proposed);
  if (lines.length === 0) return undefined;
  const path = file.replace(/^data\//, '');
  const where = mapping
    ? `add below \`${KEYS[kind]}:\`, here or in the setup`
    : 'say what the table means by its words, and look at what is guessed here';
  return [`${where}:`, `  ${KEYS[kind]}:`, ...(mapping ? [] : [`    file: ${path}`]), ...lines.map((line) => `    ${line}`)].join(
    '\n',
  );
}
