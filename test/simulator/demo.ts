/** `npm run demo`: writes the demo's logs and tables into data/. Run it after a change of the simulator; the bytes are otherwise the same. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { commandLine } from '../../src/commands/command-line.ts';
import { demoFiles } from './demo-files.ts';
import { demoPictures } from './demo-pictures.ts';

commandLine({
  name: 'demo',
  does: "Writes the demonstration's logs and tables into data/ anew. The bytes are the same until the simulator changes.",
  options: { '--pictures': { does: 'render its pictures too, which takes a minute or two' } },
  exits: { 0: 'the files are written', 1: 'a file could not be written' },
  example: 'npm run demo',
});

const data = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'data');

const pictures = process.argv.includes('--pictures') ? await demoPictures() : [];

for (const [path, bytes] of [...demoFiles(), ...pictures]) {
  const target = join(data, path);
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, bytes);
  console.log(`data/${path}: ${bytes.length} bytes`);
}
