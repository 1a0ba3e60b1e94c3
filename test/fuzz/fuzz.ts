/**
 * `npm run fuzz -- [CASES [SEED]]`: writes random tables in random forms of logs, reads them back, damages their bytes and reads them
 * again. Exit code 1 where a value was misread, a row lost in silence, something thrown, or a case took longer than two seconds.
 */
import { commandLine } from '../../src/commands/command-line.ts';
import { seededRandom } from '../statistics/seeded-random.ts';
import { tryCase, type Verdict } from './judge.ts';

commandLine({
  name: 'fuzz',
  does: 'Writes random tables in random forms of logs, reads them back, damages their bytes and reads them again.',
  takes: [
    { name: 'CASES', is: 'how many logs to write, 2000 if left out', optional: true },
    {
      name: 'SEED',
      is: 'chance of the first log, 1 if left out; each further log takes the next, so that runs side by side start CASES apart',
      optional: true,
    },
  ],
  exits: {
    0: 'nothing was misread',
    1: 'a value was misread, a row lost in silence, something thrown, or a case took longer than two seconds',
  },
  example: 'npm run fuzz -- 10000',
});

const [cases = 2000, seed = 1] = process.argv.slice(2).map(Number);
/** Enough to see what is wrong. */
const MOST_SHOWN = 10;
const counts: Record<Verdict['harmedIs'], number> = { 'read the same': 0, 'read, with problems': 0, 'refused with problems': 0 };
let faults = 0;
for (let number = 0; number < cases; number++) {
  // Each case has its own seed, so that one can be tried alone: npm run fuzz -- 1 SEED.
  const verdict = tryCase(seededRandom(seed + number));
  counts[verdict.harmedIs]++;
  for (const [what, found] of [
    ['as written', verdict.whole],
    ['damaged', verdict.harmed],
  ] as const) {
    if (!found) continue;
    faults++;
    if (faults <= MOST_SHOWN) {
      const how = what === 'damaged' ? ` (${verdict.how})` : '';
      console.error(`seed ${seed + number}, ${what}: ${found.fault}: ${found.why}${how}\n  ${verdict.shape}`);
    }
  }
  if ((number + 1) % 10_000 === 0) console.log(`${number + 1} cases, ${faults} faults`);
}
console.log(`${cases} logs written and read back, ${cases} damaged: ${faults} faults`);
for (const [is, count] of Object.entries(counts)) console.log(`  damaged and ${is}: ${count}`);
process.exitCode = faults === 0 ? 0 : 1;
