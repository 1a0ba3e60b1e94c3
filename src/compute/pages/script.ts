/** The models of a script's page and of its prompter, and the files beside them. */

import { USUAL_PACE } from '../../register/values/pace.ts';
import { plotsOn } from '../../words/script/on-screen.ts';
import { scriptPlain } from '../../words/script/plain.ts';
import type { Plan, PlannedBlock } from '../../words/script/plan.ts';
import { clockTime } from '../../words/script/timeline.ts';
import { sayEntry } from '../../words/script/tokens.ts';
import { scriptVtt } from '../../words/script/vtt.ts';
import { type ComputedNote, pagePlot, type SiteContents } from '../contents/site-contents.ts';
import { stateKey } from '../published-state/present-state.ts';
import type { HeldNote, Link, PrompterModel, ScriptModel, SpokenBlock } from '../results.ts';
import { correctedNumbers, correctionsOf } from './corrections.ts';
import { cautionsOf, deviceLinks, heldNote, ledgersOf, marksOf, notePath, printedFront, quotedIn } from './note.ts';
import { illustrated } from './picture-html.ts';

const NOTHING_PLANNED = 'a script is planned before its page is made';

/** All that the page of a script prints. */
export function scriptModel(parts: SiteContents, computed: ComputedNote): ScriptModel {
  const { note } = computed;
  const plan = planned(computed);
  const corrected = correctedNumbers(parts, computed);
  return {
    kind: 'script',
    title: note.title,
    date: note.date,
    summary: note.summary ?? '',
    front: printedFront(computed, corrected),
    marks: marksOf(parts, computed),
    devices: deviceLinks(parts, computed),
    note: noteOf(parts, computed),
    length: {
      time: clockTime(plan.seconds),
      words: plan.words,
      basis: basisText(computed, plan),
      sections: plan.sections.map(({ title, id, words, seconds, from }) => ({
        title: title === '' ? 'Before the first heading' : title,
        id,
        words,
        time: clockTime(seconds),
        from: clockTime(from),
      })),
    },
    blocks: plan.blocks.map((block) => ({
      ...spokenBlock(computed, plan, block, corrected, parts.site.base),
      ...picturesOf(parts, computed, block),
    })),
    heldNotes: heldNotes(parts, computed),
    cautions: cautionsOf(parts, computed),
    disclosure: note.disclosure ?? '',
    ...correctionsOf(parts, computed),
    prompter: `${notePath(computed)}prompter/`,
    ledger: ledgersOf(computed),
    quoted: quotedIn(parts, computed.note),
    files: {
      txt: `${notePath(computed)}script.txt`,
      vtt: `${notePath(computed)}script.vtt`,
      srt: `${notePath(computed)}script.srt`,
      video: `${notePath(computed)}video.txt`,
    },
  };
}

/** All that the prompter shows. */
export function prompterModel(parts: SiteContents, computed: ComputedNote): PrompterModel {
  const plan = planned(computed);
  return {
    kind: 'prompter',
    title: computed.note.title,
    marks: marksOf(parts, computed),
    script: { title: computed.note.title, path: notePath(computed) },
    pace: plan.pace,
    words: plan.words,
    blocks: plan.blocks.flatMap((planned) => {
      const { kind } = planned.block;
      const text = planned.tokens.map(({ said, shown }) => (kind === 'said' ? said : shown)).join(' ');
      return text === '' ? [] : [{ kind, time: clockTime(planned.from), text }];
    }),
  };
}

/** Plain text and WebVTT beside the page of a script; nothing for a note. */
export function scriptFiles(parts: SiteContents, computed: ComputedNote): [path: string, text: string][] {
  if (computed.note.kind !== 'script') return [];
  const plan = planned(computed);
  const path = notePath(computed);
  const { title } = computed.note;
  const length = `${clockTime(plan.seconds)} for ${plan.words} words, ${basisText(computed, plan)}`;
  const invented = marksOf(parts, computed).invented ? [INVENTED] : [];
  return [
    [`${path}script.txt`, scriptPlain(plan, [title, `${length}.`, ...invented])],
    [`${path}script.vtt`, scriptVtt(plan, [`${title}. Times: ${basisText(computed, plan)}.`, ...invented].join(' '))],
  ];
}

const INVENTED = 'Everything here is invented: device, maker, people and numbers.';

function planned({ plan }: ComputedNote): Plan {
  if (plan === undefined) throw new Error(NOTHING_PLANNED);
  return plan;
}

function basisText({ note }: ComputedNote, { basis, pace }: Plan): string {
  if (basis === 'subtitles') return `taken from the subtitles of the finished video (data/${note.subtitles})`;
  const source = note.pace === undefined ? ` (${USUAL_PACE} is common practice, no source)` : '';
  return `estimated at ${pace} words per minute${source}, without pauses`;
}

function noteOf(parts: SiteContents, { note }: ComputedNote): Link | null {
  const found = parts.notes.find((other) => other.note.kind === 'note' && other.note.id === note.note);
  return found ? { title: found.note.title, path: notePath(found) } : null;
}

function spokenBlock(
  computed: ComputedNote,
  { basis }: Plan,
  { block, from }: PlannedBlock,
  corrected: ReadonlyMap<number, string>,
  base: string,
): Omit<SpokenBlock, 'shows' | 'redrawn'> {
  const estimated = basis === 'pace' && !(block.kind === 'cue' && block.at !== null);
  return {
    kind: block.kind,
    depth: block.kind === 'heading' ? block.depth : 0,
    id: block.kind === 'heading' ? block.id : '',
    time: clockTime(from),
    about: estimated ? 'about' : '',
    pieces: block.html.flatMap((piece): SpokenBlock['pieces'] => {
      if (typeof piece === 'string') return [illustrated(piece, computed, base, false)];
      if ('held' in piece) {
        const sign = { corrected: corrected.get(piece.held) ?? '' };
        return [{ ...numberIn(computed, piece.held, block.kind === 'said'), ...sign }];
      }
      const drawn = computed.plots[piece.plot];
      return drawn ? [pagePlot(drawn, notePath(computed))] : [];
    }),
  };
}

/** The plots that a cue shows: by link where they are the note's, and those that are drawn otherwise than when the script was published. */
function picturesOf(parts: SiteContents, computed: ComputedNote, { block }: PlannedBlock): Pick<SpokenBlock, 'shows' | 'redrawn'> {
  if (block.kind !== 'cue') return { shows: [], redrawn: [] };
  const note = parts.notes.find((other) => other.note.kind === 'note' && other.note.id === computed.note.note);
  const { own, others: named } = plotsOn(block, computed.plots, note?.plots ?? []);
  const isRedrawn = (of: ComputedNote) => (plot: { readonly id: string }) =>
    parts.redrawn.get(stateKey(of.note))?.has(plot.id) === true;
  const redrawn = [...own.filter(isRedrawn(computed)), ...(note ? named.filter(isRedrawn(note)) : [])];
  return {
    shows: note ? named.map(({ id, title }) => ({ title, path: `${notePath(note)}#plot-${id}` })) : [],
    redrawn: [...new Set(redrawn.map(({ title }) => title))],
  };
}

/** Spoken where it is spoken; printed in headings, tables and on what is on screen. */
function numberIn({ written }: ComputedNote, number: number, aloud: boolean) {
  const entry = written.entries[number - 1]!;
  return { number, id: entry.id, said: aloud ? sayEntry(entry) : entry.shown };
}

function heldNotes(parts: SiteContents, computed: ComputedNote): HeldNote[] {
  const entries = computed.written.entries.filter(({ kind }) => kind !== 'highlight');
  return entries.map((entry, index) => {
    const said = sayEntry(entry);
    return { ...heldNote(parts, computed, entry, index + 1), ...(said === entry.shown ? {} : { said }) };
  });
}
