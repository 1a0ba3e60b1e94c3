/**
 * `npm run accuracy`: without options the command of the same name. With `-- --coverage [runs [seed]]` it simulates runs with known truth,
 * and every family, and writes the tables that the method pages show; `--family NAME` simulates one family alone, `--trials N` as
 * many trials of each cell as it says. What has fewer trials than the family asks for is printed and not written. Exit code 1 where a row is at fault.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { coverageText, familyText } from '../../src/commands/accuracy/text.ts';
import { commandLine } from '../../src/commands/command-line.ts';
import { type FamilyTable, faultsOf } from '../../src/figures/checks/families.ts';
import { familyTables } from './family-table.ts';
import { familyNames } from './find-families.ts';
import { coverageTable } from './table.ts';

commandLine({
  name: 'accuracy',
  does: 'Prints every published value beside ours, with the digits reached. With --coverage it simulates runs of known truth instead, and stores how often intervals hold it.',
  takes: [
    { name: 'RUNS', is: 'with --coverage: how many runs to simulate, 2000 if left out', optional: true },
    { name: 'SEED', is: 'with --coverage: where chance begins, 1 if left out', optional: true },
  ],
  options: {
    '--coverage': { does: 'simulate' },
    '--family': { value: 'NAME', does: 'with --coverage: simulate one family alone' },
    '--trials': {
      value: 'NUMBER',
      does: 'with --coverage: so many trials of each cell; fewer than the family asks for are not stored',
    },
  },
  exits: { 0: 'every value agrees', 1: 'a value falls short, an interval does not hold, or the options do not go together' },
  example: 'npm run accuracy -- --coverage --family gaps --trials 50',
});

const STORED = new URL('../../src/figures/checks/', import.meta.url);
const USAGE = 'npm run accuracy takes no option, or -- --coverage [runs [seed]] [--family NAME] [--trials N] with whole numbers';

const asked = options();
if (asked === 'nothing') await import('../../src/commands/accuracy.ts');
else if (asked === 'wrong') {
  console.error(USAGE);
  process.exitCode = 1;
} else {
  const { runs, seed, trials, family } = asked;
  if (family === null && trials === null) await soaks(runs, seed);
  await families(family === null ? familyNames() : [family], trials);
}

interface Options {
  readonly runs: number;
  readonly seed: number;
  readonly trials: number | null;
  readonly family: string | null;
}

function options(): Options | 'nothing' | 'wrong' {
  if (process.argv.length === 2) return 'nothing';
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { coverage: { type: 'boolean' }, family: { type: 'string' }, trials: { type: 'string' } },
    });
    const [runs = '2000', seed = '1', ...more] = positionals;
    const { family = null, trials = null } = values;
    const whole = [runs, seed, ...(trials === null ? [] : [trials])].every((text) => /^[1-9]\d*$/.test(text));
    if (!values.coverage || !whole || more.length > 0 || (family !== null && !familyNames().includes(family))) return 'wrong';
    return { runs: Number(runs), seed: Number(seed), trials: trials === null ? null : Number(trials), family };
  } catch {
    return 'wrong';
  }
}

async function soaks(runs: number, seed: number): Promise<void> {
  const table = await coverageTable(runs, seed);
  writeFileSync(new URL('coverage.json', STORED), `${JSON.stringify(table, null, 2)}\n`);
  console.log(coverageText(table));
}

/** Each family is stored as soon as it is simulated: what is stopped keeps what it has. */
async function families(names: readonly string[], trials: number | null): Promise<void> {
  for (const name of names) {
    const tables = await familyTables([name], trials);
    for (const table of Object.values(tables)) {
      console.log(`\n${familyText(name, table)}`);
      if (table.rows.flatMap(faultsOf).length > 0) process.exitCode = 1;
    }
    if (trials === null) store(tables);
  }
}

/** Puts tables in the place of those of the same families, one row a line. Families that are no more fall out. */
function store(tables: Readonly<Record<string, FamilyTable>>): void {
  const file = new URL('families.json', STORED);
  const all = { ...(JSON.parse(readFileSync(file, 'utf8')) as Record<string, FamilyTable>), ...tables };
  const blocks = familyNames().flatMap((name) => {
    const table = all[name];
    if (!table) return [];
    const { rows, ...head } = table;
    const heads = Object.entries(head).map(([key, value]) => `    ${JSON.stringify(key)}: ${JSON.stringify(value)},\n`);
    const lines = rows.map((row) => `      ${JSON.stringify(row)}`);
    return [`  ${JSON.stringify(name)}: {\n${heads.join('')}    "rows": [\n${lines.join(',\n')}\n    ]\n  }`];
  });
  writeFileSync(file, `{\n${blocks.join(',\n')}\n}\n`);
}
