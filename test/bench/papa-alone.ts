/** Baseline: Papa Parse alone over every log, in one thread. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';

const folder = process.argv[2]!;
let cells = 0;
for (const name of readdirSync(folder)) {
  const { data } = Papa.parse<string[]>(readFileSync(join(folder, name), 'utf8'));
  for (const row of data) cells += row.length;
}
console.log(`${cells} cells`);
