/** How files seem to belong together, for an author to judge. */
import type { Grouping, NamedFile } from './group.ts';
import type { Looked } from './look-at.ts';

/** A log with the instants of its first and last row, s, where it tells the day. */
export function namedLog({ path, inspection }: Looked): NamedFile {
  const axis = inspection.time?.axis;
  if (!axis || axis.start === null) return { path };
  return { path, span: [axis.start, axis.start + (axis.seconds[axis.seconds.length - 1] ?? 0)] };
}

/** A table with the settings that its rows tell apart. */
export function namedTable({ path, found }: Looked): NamedFile {
  return { path, settings: found!.proposed.settings };
}

/** Runs and their files, a line a run, with the reason and what else could be chosen. */
export function groupingText({ groups, left }: Grouping): string {
  const lines = groups.map(({ logs, tables, why }, at) => {
    const beside = tables.map(({ path, setting }) => `${path}${setting === undefined ? '' : ` (${setting})`}`);
    return `  run ${at + 1}: ${[...logs, ...beside].join(', ')}${why === '' ? '' : ` (${why})`}`;
  });
  const rest = left.length > 0 ? [`  of no run that can be told: ${left.join(', ')}`] : [];
  return `${['Runs, as these files seem to belong together:', ...lines, ...rest, '  Other: --apart makes each log a run of its own, --together makes one run of all.'].join('\n')}\n`;
}
