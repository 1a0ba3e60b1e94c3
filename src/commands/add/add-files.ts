/** Adds files to runs: looks at each, puts them together, prints what it found, writes content/runs/<id>.md and what the project lacks. Data is read, never moved or changed. */
import { addAttempts } from './add-attempts.ts';
import { addLogless, addRun } from './add-run.ts';
import { groupFiles } from './group.ts';
import { groupingText, namedLog, namedTable } from './grouping-text.ts';
import { type Looked, lookAt, tellLog, whyNot } from './look-at.ts';
import type { GivenNames } from './match.ts';
import type { AddOptions, Choice } from './options.ts';
import type { Output } from './output.ts';
import { tableLines } from './table-lines.ts';
import { writeBasis } from './write-basis.ts';

const USAGE = 'npm run add -- FILE…: name one or more files below data/, such as data/larch-2/fast-soak.csv';

/** Adds all files; the exit code: 0 when every file is part of a run now, 1 when one is not. */
export function addFiles(root: string, files: readonly string[], output: Output, options: AddOptions = {}): 0 | 1 {
  if (files.length === 0) {
    output.err(`${USAGE}\n`);
    return 1;
  }
  const looks = files.map((file) => lookAt(root, file, output));
  const looked = looks.filter((each) => each !== 'done' && each !== null);
  const usable = looked.filter((each) => each.found !== null || whyNot(each.inspection) === null);
  for (const each of looked.filter((other) => !usable.includes(other))) {
    tellLog(root, each, { channels: [], absent: [], open: [] }, null, output);
    output.err(`${each.file} is not added: ${whyNot(each.inspection)}\n`);
  }
  const added = usable.length === 0 || addRuns(root, usable, output, options);
  return looks.includes(null) || usable.length < looked.length || !added ? 1 : 0;
}

/** Puts files into runs, writes what the project lacks, then run after run. */
function addRuns(root: string, looked: readonly Looked[], output: Output, options: AddOptions): boolean {
  const { choice = 'proposed', ask } = options;
  const logs = looked.filter(({ found }) => found === null);
  const tables = looked.filter(({ found }) => found !== null && found.kind !== 'attempts');
  const attempts = looked.filter(({ found }) => found?.kind === 'attempts');
  const grouped = (by: Choice) => groupFiles(logs.map(namedLog), tables.map(namedTable), by);
  let grouping = grouped(choice);
  if (looked.length > 1) {
    output.out(groupingText(grouping));
    if (ask && logs.length > 1) {
      const answer = ask(
        'Write these? Enter: yes; a: each log is a run of its own; t: all together are one run; q: write nothing. ',
      );
      if (answer === null) return false;
      if (answer !== choice) grouping = grouped(answer);
    }
  }
  const given: GivenNames = new Map();
  const inSetup = writeBasis(root, looked, grouping, output);
  const pathed = new Map(looked.map((each) => [each.path, each]));
  const done = grouping.groups.map((group) =>
    group.logs.length === 0
      ? addLogless(root, group, pathed, options, output)
      : addRun(root, group, pathed, { given, inSetup }, options, output),
  );
  const tried = attempts.map((each) => addAttempts(root, each, output));
  const alone = grouping.groups.length === 0 ? tables : tables.filter(({ path }) => grouping.left.includes(path));
  for (const each of alone) output.err(`${each.file} is not added: ${ofWhichRun(each)}\n`);
  return [...done, ...tried].every((each) => each) && alone.length === 0;
}

function ofWhichRun({ path, found }: Looked): string {
  const lines = tableLines(path, found!, found!.proposed.settings[0]);
  return `no name and no setting tells of which run it is. Put these lines into that run's file:\n${lines.join('\n')}`;
}
