/** What a project lacks below its runs, written once for all files that come together. */
import { writeDevice, writeSetup } from './basis.ts';
import { firstFirst } from './first-log.ts';
import type { Grouping } from './group.ts';
import type { Looked } from './look-at.ts';
import { matchColumns } from './match.ts';
import type { Output } from './output.ts';
import { readProject } from './project.ts';
import { isComplete, sharedChannelLines } from './run-file.ts';
import { sharedLines } from './table-lines.ts';

/** A device and a setup, where there are none and several files come at once; the columns whose units it leaves open. */
export function writeBasis(root: string, looked: readonly Looked[], { groups }: Grouping, output: Output): ReadonlySet<string> {
  const project = readProject(root);
  const [first] = looked;
  if (!first || looked.length < 2 || project.setups.length > 0 || project.devices.length > 0) return new Set();
  const shared = (['scores', 'surface'] as const).flatMap((kind) => {
    const own = looked.filter(({ found }) => found?.kind === kind);
    return own[0] && groups.length > 1 ? sharedLines(own) : [];
  });
  const taken = new Set<string>();
  const pathed = new Map(looked.map((each) => [each.path, each]));
  const channels = (groups.length > 1 ? firstFirst(groups[0]!.logs, pathed) : []).flatMap((path) => {
    const { inspection } = pathed.get(path)!;
    const own = matchColumns(inspection.columns, [], new Map(), taken).channels;
    for (const { name } of own) taken.add(name);
    return own;
  });
  const lines = [...(channels.length > 0 ? sharedChannelLines({ channels, absent: [], open: [] }) : []), ...shared];
  for (const { file, look } of [writeDevice(root, first.path), writeSetup(root, first.path, lines)])
    output.out(`  wrote ${file}; look at its ${look}\n`);
  return new Set(channels.filter((channel) => !isComplete(channel)).map(({ column }) => column.column));
}
