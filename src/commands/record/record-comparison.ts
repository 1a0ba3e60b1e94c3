/** Freezes one comparison: what the published site says of it now, under an address that keeps saying it. */

import { existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { compute } from '../../compute/compute.ts';
import type { Gathered } from '../../compute/models/gathered.ts';
import { mending } from '../../compute/project/mending.ts';
import { readProject } from '../../compute/project/read-project.ts';
import { alreadyFrozen, freeze, newestDay } from '../../compute/record-copies/freeze.ts';
import { readCopies } from '../../compute/record-copies/read-copies.ts';
import type { Manifest } from '../../compute/results.ts';
import { openStore, writeWhole } from '../../compute/store/store.ts';
import { allLogs } from '../../figures/figures-json.ts';
import { report } from '../../print/report.ts';
import type { Problem } from '../../problem.ts';
import { notUnderstood } from '../command-line.ts';
import { findContent } from '../find-content.ts';
import { readOneDated } from '../one-dated.ts';
import type { Printer } from '../publish/publish-note.ts';

const USAGE = `npm run record -- content/comparisons/x.md                      as of the day of its newest run
npm run record -- content/comparisons/x.md --date 2026-04-02    as of a day that you give
`;

/** Runs the command; the exit code. */
export async function recordComparison(root: string, args: readonly string[], printer: Printer): Promise<0 | 1 | 2> {
  const refuse = (text: string): 1 => {
    printer.err(`${text}\n`);
    return 1;
  };
  const options = readOneDated(args, 'comparison');
  if (typeof options === 'string') return notUnderstood(printer, options, USAGE);
  const found = findContent(root, options.file, ['comparisons'], 'comparison');
  if ('refused' in found) return refuse(found.refused);
  const { manifest, gathered } = await mending(root, async () => {
    const manifest = await compute(root, 'site');
    return { manifest, gathered: gatheredOf(root, manifest, found.file) };
  });
  const against = problemsAgainst(manifest, found.file, gathered);
  if (against.length > 0) return refuse(`${report(root, against)}${found.file} is not frozen: mend its errors first`);
  if (gathered === undefined) return refuse(unreached(found.file));
  const newest = newestDay(gathered);
  const date = options.date ?? newest;
  if (date < newest) return refuse(`its newest run is of ${newest}; a copy as of ${date} cannot hold it`);
  const same = alreadyFrozen(gathered, readCopies(readProject(root).copies).copies);
  if (same !== undefined) {
    printer.out(`Nothing changed since ${same.id}, as of ${same.date}: no other copy is made.\n`);
    return 0;
  }
  return write(root, gathered, date, printer, refuse);
}

/** What the published site prints of a comparison; undefined where no published note reaches it, or it could not be computed. */
function gatheredOf(root: string, { gathered }: Manifest, file: string): Gathered | undefined {
  const blob = gathered[file.slice('content/comparisons/'.length, -'.md'.length)];
  if (blob === undefined) return undefined;
  return JSON.parse(new TextDecoder().decode(openStore(root).bytes(blob))) as Gathered;
}

/** Errors of the comparison and of the runs, logs and tables behind it; all errors where it is not known what those are. */
function problemsAgainst({ problems }: Manifest, file: string, gathered: Gathered | undefined): Problem[] {
  const errors = problems.filter(({ severity }) => severity === 'error');
  if (gathered === undefined) return errors;
  const own = new Set([
    file,
    ...gathered.runs.flatMap(({ run, device, instruments, tables, ...logs }) => [
      `content/runs/${run}.md`,
      `content/devices/${device.id}.md`,
      ...instruments.map(({ id }) => `content/instruments/${id}.md`),
      ...allLogs(logs).map((log) => log.file),
      ...tables.map((table) => table.file),
    ]),
  ]);
  return errors.filter(({ place }) => own.has(place.file));
}

function unreached(file: string): string {
  return `${file} is in no published note, and a record copy is published for ever.
Publish a note that names it under \`comparisons\` first, then freeze what that note rests on.`;
}

/** Never over another file: an address means one thing. */
function write(root: string, gathered: Gathered, date: string, printer: Printer, refuse: (text: string) => 1): 0 | 1 {
  const { copy, file, text } = freeze(gathered, date);
  const path = join(root, file);
  if (existsSync(path)) return refuse(`${file} is there already and holds something else: bring back what was committed`);
  mkdirSync(dirname(path), { recursive: true });
  writeWhole(path, text);
  const figures = [gathered, ...gathered.runs].reduce((sum, { figures: some }) => sum + Object.keys(some).length, 0);
  printer.out(
    `${file} holds “${copy.record.title}” as of ${date}: ${gathered.runs.length} runs, ${figures} figures.
The next build publishes it as record-copies/${copy.id}/, where it stays as it is. Commit the file.\n`,
  );
  return 0;
}
