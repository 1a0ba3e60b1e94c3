/** The model of the feed of notes. */
import { riskInBrief } from '../../figures/cautions/risks.ts';
import { compareText } from '../../problem.ts';
import type { ComputedNote, SiteContents } from '../contents/site-contents.ts';
import type { NoteEntry, NotesFeed } from '../models/discovery.ts';
import { stateKey } from '../published-state/present-state.ts';
import { cautionsOf, highlights, leadPlot, marksOf, notePath, piecesOf } from './note.ts';

/** So many notes stand whole in the feed: readers of feeds have seen the others. */
const WHOLE = 20;

/** Published notes, last changed first. Law 9: no others, also where drafts show. `newest` is the day of the feed where there is no note. */
export function notesFeedModel(parts: SiteContents, newest: string): NotesFeed {
  const published = parts.notes.filter(({ note }) => note.kind === 'note' && note.status === 'published');
  const entries = published.map((computed) => entryOf(parts, computed));
  entries.sort((a, b) => compareText(b.updated, a.updated) || compareText(a.path, b.path));
  const short = entries.map((entry, index) => (index < WHOLE ? entry : { ...entry, article: [] }));
  return { entries: short, updated: entries[0]?.updated ?? newest };
}

function entryOf(parts: SiteContents, computed: ComputedNote): NoteEntry {
  const { title, date, summary = '' } = computed.note;
  const corrected = (parts.corrections.get(stateKey(computed.note)) ?? []).map(({ since }) => since);
  return {
    title,
    path: notePath(computed),
    date,
    updated: [date, ...corrected].sort().at(-1)!,
    summary,
    highlights: highlights(parts, computed),
    invented: marksOf(parts, computed).invented,
    beware: cautionsOf(parts, computed)
      .flatMap(({ risk }) => riskInBrief(risk) ?? [])
      .join(', '),
    article: articleOf(parts, computed),
  };
}

/** The lead chart, then the words; the corrections of a number stand on the page. */
function articleOf(parts: SiteContents, computed: ComputedNote): NoteEntry['article'] {
  const lead = leadPlot(computed);
  return [...(lead ? [lead] : []), ...piecesOf(computed, new Map(), parts.site.base)].map((piece) =>
    typeof piece === 'string' ? piece : { title: piece.title, alt: piece.alt, picture: piece.files.png! },
  );
}
