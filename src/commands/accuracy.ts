/**
 * `npm run accuracy`: every published value beside ours, with the digits reached; exit code 1 where one falls short.
 * With `-- --coverage [runs [seed]]` it simulates runs with known truth instead, and writes the table that the method pages show.
 */
import { writeFileSync } from 'node:fs';
import { COVERAGE } from '../figures/checks/coverage.ts';
import { checkTables } from '../figures/checks/results.ts';
import { checkText, coverageText } from './accuracy/text.ts';

const TABLE = new URL('../figures/checks/coverage.json', import.meta.url);
const [option, runs = '2000', seed = '1'] = process.argv.slice(2);

if (option === undefined) {
  const tables = checkTables();
  const short = tables.flatMap(({ rows }) => rows).filter(({ agrees }) => !agrees).length;
  console.log([...tables.map(checkText), coverageText(COVERAGE)].join('\n\n'));
  console.log(short === 0 ? '\nEvery value agrees as far as it must.' : `\n${short} values fall short.`);
  process.exit(short === 0 ? 0 : 1);
} else if (option === '--coverage' && [runs, seed].every((text) => /^[1-9]\d*$/.test(text))) {
  // The simulator belongs to the tests, and is loaded only when asked for.
  const { coverageTable } = await import('../../test/coverage/table.ts');
  const table = await coverageTable(Number(runs), Number(seed));
  writeFileSync(TABLE, `${JSON.stringify(table, null, 2)}\n`);
  console.log(coverageText(table));
} else {
  console.error('npm run accuracy takes no option, or -- --coverage [runs [seed]] with whole numbers');
  process.exit(1);
}
