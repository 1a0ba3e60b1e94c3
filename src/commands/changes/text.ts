/** Changes as a readable table. */
import { BY_METHODS, type ChangedNumber, type NoteChanges } from '../../compute/published-state/changes.ts';
import { type NewStill, stillLines } from '../../compute/published-state/cues.ts';

/** What changed in a note or script, and the cues of a script that show it. */
export interface NoteAndStills extends NoteChanges {
  readonly stills: readonly NewStill[];
}

/** All notes that changed; one line where none did. `version`: of the tool that computed what stands now. */
export function changesText(changed: readonly NoteAndStills[], since: string, version: string): string {
  if (changed.length === 0) return `Nothing changed since ${since}.\n`;
  return `${changed.map((note) => noteText(note, version)).join('\n\n')}\n`;
}

function noteText(
  { of, title, figures, sentences, noLongerHeld, plots, pictures, stills, added, removed, because }: NoteAndStills,
  version: string,
): string {
  const file = `content/${of}.md`;
  const parts = [
    part(
      'What changed beneath it',
      because.map((name) => (name === BY_METHODS ? `the methods: these are those of version ${version}` : name)),
    ),
    part('Figures', table(figures)),
    part(
      'Sentences that print differently',
      sentences.flatMap(({ line, column, before, after }) => [`${file}:${line}:${column}`, `  was  ${before}`, `  is   ${after}`]),
    ),
    part(
      'Stated numbers and claims that are no longer decided as they were',
      noLongerHeld.flatMap(({ line, column, words, verdict, rests }) => [
        `${file}:${line}:${column}`,
        `  "${words}" ${verdict}: ${rests}`,
      ]),
    ),
    part(
      'Plots',
      plots.map(({ id, title: caption, how }) => `${how}: ${id}, ${caption}`),
    ),
    part(
      'Pictures',
      pictures.map(({ path, how }) => `${how}: data/${path}`),
    ),
    part('Cues that need a new still', stillLines(file, stills)),
    part('Numbers that are new', added),
    part('Numbers that are gone', removed),
  ];
  return [`${title} (${of})`, ...parts.filter((text) => text !== '')].join('\n\n');
}

function part(head: string, lines: readonly string[]): string {
  return lines.length === 0 ? '' : [head, ...lines.map((line) => `  ${line}`)].join('\n');
}

function table(figures: readonly ChangedNumber[]): string[] {
  const rows = figures.map((figure) => [figure.number, figure.was, '→', figure.is, byHowMuch(figure)]);
  const widths = [0, 1, 2, 3].map((column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows.map((row) => row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  '));
}

function byHowMuch({ difference, unit, standardUncertainties }: ChangedNumber): string {
  if (difference === null) return '';
  const by = `by ${signed(difference)}${unit === '' || unit === '1' ? '' : ` ${unit}`}`;
  return standardUncertainties === null ? by : `${by}, ${signed(standardUncertainties)} standard uncertainties`;
}

function signed(value: number): string {
  return `${value < 0 ? '−' : '+'}${Number(Math.abs(value).toPrecision(2))}`;
}
