/** The beginning of a write-up: a draft that names the runs and shows their course. */
import { MOST_STYLES } from '../../plots/drawing/palette.ts';

/** `date` is the day of the newest run; where no run states one it is left to the author. The plot has as many runs as can be told apart. */
export function noteSkeleton(runs: readonly string[], date: string | undefined): string {
  const aliases = runs.map((id) => [aliasOf(id), id] as const);
  const shown = aliases.slice(0, MOST_STYLES).map(([alias]) => alias);
  const day = date === undefined ? ['# date: 2026-03-14'] : [`date: ${date}`];
  return [
    '---',
    'title: What an hour of load does',
    ...day,
    'status: draft',
    'runs:',
    ...aliases.map(([alias, id]) => `  ${alias}: ${id}`),
    '---',
    '',
    'Write plainly what you did and what you found. Then `npm run hold -- content/notes/first-note.md` ties each number to the figure that it states.',
    '',
    `::plot{kind=trace runs="${shown.join(' ')}"}`,
    '',
  ].join('\n');
}

/** An alias is written in addresses: lower-case letters and digits in words joined by `_`. */
function aliasOf(id: string): string {
  return /^\d/.test(id) ? `run_${id.replaceAll('-', '_')}` : id.replaceAll('-', '_');
}
