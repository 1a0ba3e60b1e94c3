/** Of which plots pictures are made: each costs another drawing. */
import type { PlotRequest } from '../../../register/requests.ts';
import { plotNamed } from '../../../words/script/on-screen.ts';
import type { Written } from '../../../words/written.ts';
import type { Notes } from '../notes/notes.ts';

/** Those of scripts, those of notes that a script shows, and the chart at the head of each note, by which links to it are shown. */
export function picturedPlots(outcomes: Pick<Notes, 'outcomes'>['outcomes']): ReadonlySet<PlotRequest> {
  const notes = outcomes.filter(({ note }) => note.kind === 'note');
  const leads = notes.flatMap(({ written }) => plotAt(written, leadOf(written)));
  const spoken = outcomes.flatMap(({ note, written }) => {
    if (note.kind !== 'script') return [];
    const speaksFor = notes.find((other) => other.note.id === note.note)?.written.plots ?? [];
    const named = (written.script ?? []).flatMap((block) => (block.kind === 'cue' ? block.shows : []));
    return [...written.plots, ...named.flatMap((id) => plotNamed(id, speaksFor) ?? [])];
  });
  return new Set([...leads, ...spoken]);
}

/** Index of the plot that stands at the head of a note: the one that the front matter asks for, else the first of the text. */
export function leadOf({ lead, pieces }: Pick<Written, 'lead' | 'pieces'>): number | undefined {
  return lead ?? pieces.find((piece) => typeof piece === 'number');
}

function plotAt({ plots }: Written, index: number | undefined): PlotRequest[] {
  return index === undefined ? [] : plots.slice(index, index + 1);
}
