/** Twenty ordinary true sentences about the demonstration, as a tester would say them: at most three are true only just. */

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { noteSubjects } from '../../src/compute/steps/notes/note-subjects.ts';
import type { Problem } from '../../src/problem.ts';
import { write } from '../../src/words/write.ts';
import { demoProject } from '../commands/hold/demo.ts';
import { shareResults } from '../compute/shared-results.ts';

const SENTENCES = [
  `At its rated setting it settles at :stated[59.5 °C]{is="rated.steady_temperature"}.`,
  `It peaks at :stated[60.5 degrees]{is="rated.peak_temperature"}.`,
  `Under load it draws :stated[about six and a half watts]{is="rated.load_power"}.`,
  `Idle takes :stated[1.4 W]{is="rated.idle_power"}.`,
  `It counts as steady after :stated[about half an hour]{is="rated.time_to_steady_state"}.`,
  `The chip sits :stated[about 37 degrees]{is="rated.temperature_rise"} above the room.`,
  `It stays :stated[more than 20 degrees]{is="rated.throttle_headroom"} below the limit.`,
  `The brisk setting draws :stated[0.9 W more]{is="brisk.load_power - rated.load_power"}.`,
  `It runs :stated[7.5 percent faster]{is="steps.speedup.brisk"}.`,
  `The quick chip settles :stated[just under 80 degrees]{is="quick.steady_temperature"}.`,
  `It settles :stated[about 19 degrees]{is="quick.steady_temperature - rated.steady_temperature"} above the rated one.`,
  `The quick setting draws :stated[over nine watts]{is="quick.load_power"}.`,
  `The fast setting throttles after :stated[nearly 20 minutes]{is="fast.time_to_throttle"}.`,
  `Over the hour its clock averages :stated[2.50 GHz]{is="fast.mean_clock"}.`,
  `It draws :stated[10.4 watts]{is="fast.load_power"} for that.`,
  `It spends :stated[about 70 percent]{is="fast.held_at_limit / fast.phase_duration"} of the hour at the limit.`,
  `All tests together run :stated[18 percent faster]{is="steps.speedup.fast"}.`,
  `Each joule does :stated[about three quarters]{is="steps.performance_per_watt.fast"} of the work.`,
  `The hottest spot of the lid is at :stated[over 60 degrees]{is="fast.hottest_surface"}.`,
  `A sort takes :stated[46 seconds]{is='fast.score."ledger-sort-all-cores"'} where it took :stated[54 seconds]{is='rated.score."ledger-sort-all-cores"'}.`,
];

let problems: readonly Problem[];
let project: ReturnType<typeof demoProject>;
beforeAll(async () => {
  project = demoProject();
  shareResults(project.root);
  const file = 'content/notes/ordinary.md';
  const front = `title: Ordinary\ndate: 2026-04-01\nstatus: draft\nruns:\n  rated: larch-rated\n  brisk: larch-brisk\n  quick: larch-quick\n  fast: larch-fast\ncomparisons:\n  steps: larch-steps\n`;
  writeFileSync(join(project.root, file), `---\n${front}---\n\n${SENTENCES.join('\n')}\n`);
  const read = await noteSubjects(project.root, file);
  if (!('note' in read)) throw new Error('the demonstration cannot be read');
  problems = write(read.note, read.subjects, { unheld: true }).problems;
});
afterAll(() => project.remove());

test('words/ordinary: twenty true sentences have no error, and at most three warn', () => {
  expect(SENTENCES).toHaveLength(20);
  const told = problems.map(({ severity, found }) => `${severity}: ${found}`);
  expect(told.filter((each) => each.startsWith('error'))).toEqual([]);
  expect(told.slice(3)).toEqual([]);
});
