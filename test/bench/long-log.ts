/** One log of 100,000 rows: Papa Parse alone, then intake and all figures, in one process. Prints milliseconds as JSON. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import { dataFiles, readProject } from '../../src/compute/project/read-project.ts';
import { derive } from '../../src/figures/derive.ts';
import { read } from '../../src/intake/read.ts';
import { readRegister } from '../../src/register/read.ts';

const root = process.argv[2]!;
const { register } = readRegister(readProject(root).content, dataFiles(root));
const [run] = register.runs.values();
const file = `data/${run!.logs[0]!.declaration.file}`;
const bytes = readFileSync(join(root, file));
const text = bytes.toString('utf8');

function median(task: () => void): number {
  const times = Array.from({ length: 7 }, () => {
    const start = performance.now();
    task();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[3]!;
}

const { log } = read(bytes, run!.logs[0]!.declaration, file);
const papa = median(() => Papa.parse(text));
const intake = median(() => read(bytes, run!.logs[0]!.declaration, file));
const figures = median(() => derive(log!, run!.context));
console.log(JSON.stringify({ rows: log!.rows, papa, intake, figures }));
