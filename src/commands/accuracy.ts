/** `npm run accuracy`: every published value beside ours, with the digits reached; exit code 1 where one falls short. */
import './plain-failures.ts';
import { COVERAGE } from '../figures/checks/coverage.ts';
import { FAMILIES } from '../figures/checks/families.ts';
import { checkTables } from '../figures/checks/results.ts';
import { checkText, coverageText, familyText } from './accuracy/text.ts';

const tables = checkTables();
const short = tables.flatMap(({ rows }) => rows).filter(({ agrees }) => !agrees).length;
const families = Object.entries(FAMILIES).map(([name, table]) => familyText(name, table));
console.log([...tables.map(checkText), coverageText(COVERAGE), ...families].join('\n\n'));
console.log(short === 0 ? '\nEvery value agrees as far as it must.' : `\n${short} values fall short.`);
if (short > 0) process.exitCode = 1;
