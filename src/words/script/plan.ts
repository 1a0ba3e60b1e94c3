/** A script in time: when each block, cue and held number is due, and how long each section takes to say. */
import { USUAL_PACE } from '../../register/values/pace.ts';
import type { LedgerEntry } from '../written.ts';
import { LEAST_SHARE, matchSubtitles } from './match.ts';
import type { CueBlock, ScriptBlock, ScriptText } from './script.ts';
import type { Subtitle } from './subtitles.ts';
import { type Anchor, clockTime, type Timeline, timeline } from './timeline.ts';
import { type Token, tokensOf } from './tokens.ts';

/** Seconds by which an estimate may differ from a stated time before anybody is told. */
const SLACK = 5;

export interface PlannedBlock {
  readonly block: ScriptBlock;
  readonly tokens: readonly Token[];
  /** Index in the script of its first spoken word; words of headings, cues and what is shown are not spoken. */
  readonly word: number;
  readonly words: number;
  /** Seconds: for a cue, when it is due. */
  readonly from: number;
  readonly to: number;
}

export interface Section {
  /** Id of its heading; '' for what stands before the first. */
  readonly id: string;
  readonly depth: number;
  readonly title: string;
  readonly words: number;
  readonly from: number;
  /** Seconds that its words take, pauses before cues left out where the pace tells it. */
  readonly seconds: number;
}

export interface Plan {
  /** Words per minute. */
  readonly pace: number;
  /** What the times come from. */
  readonly basis: 'pace' | 'subtitles';
  readonly blocks: readonly PlannedBlock[];
  readonly sections: readonly Section[];
  readonly words: number;
  /** Seconds to the end of the last word. */
  readonly seconds: number;
  /** When each held number is said or shown, by its number on the page. */
  readonly heldAt: ReadonlyMap<number, number>;
  readonly timeline: Timeline;
  /** Stated times of cues that the words or the subtitles speak against. */
  readonly faults: readonly { readonly cue: CueBlock; readonly found: string; readonly expected: string }[];
  /** Whether subtitles were given in which the script's words are not found. */
  readonly mismatch: boolean;
}

interface Options {
  readonly pace?: number | undefined;
  /** Of the finished video. */
  readonly subtitles?: readonly Subtitle[] | undefined;
}

/** Places a script in time. Subtitles decide where there are any; else the stated times of cues, and the pace between them. */
export function planScript(script: ScriptText, entries: readonly LedgerEntry[], { pace = USUAL_PACE, subtitles }: Options): Plan {
  const measured = measure(script, entries);
  const spoken = measured.flatMap(({ block, tokens }) => (block.kind === 'said' ? tokens : []));
  const words = spoken.reduce((sum, token) => sum + token.words, 0);
  const match = subtitles && matchSubtitles(spoken, subtitles);
  const heard = match && match.share >= LEAST_SHARE ? match.anchors : undefined;
  const line = timeline(heard ?? statedAnchors(measured), pace);
  const blocks = measured.map((each) => inTime(each, line, heard !== undefined));
  const basis = heard ? 'subtitles' : 'pace';
  return {
    pace,
    basis,
    blocks,
    sections: sectionsOf(blocks, pace, basis),
    words,
    seconds: words === 0 ? 0 : line.end(words),
    heldAt: heldTimes(blocks, line),
    timeline: line,
    faults: heard ? againstSubtitles(blocks) : againstPace(measured, pace),
    mismatch: match !== undefined && heard === undefined,
  };
}

type Measured = Omit<PlannedBlock, 'from' | 'to'>;

function measure(script: ScriptText, entries: readonly LedgerEntry[]): Measured[] {
  let word = 0;
  return script.map((block) => {
    const tokens = tokensOf(block.said, entries);
    const words = block.kind === 'said' ? tokens.reduce((sum, token) => sum + token.words, 0) : 0;
    const measured = { block, tokens, word, words };
    word += words;
    return measured;
  });
}

function statedAnchors(measured: readonly Measured[]): Anchor[] {
  return measured.flatMap(({ block, word }) => (block.kind === 'cue' && block.at !== null ? [{ word, at: block.at }] : []));
}

function inTime(measured: Measured, line: Timeline, heard: boolean): PlannedBlock {
  const { block, word, words } = measured;
  const stated = block.kind === 'cue' && !heard ? block.at : null;
  const from = stated ?? line.start(word);
  return { ...measured, from, to: words === 0 ? from : line.end(word + words) };
}

function sectionsOf(blocks: readonly PlannedBlock[], pace: number, basis: Plan['basis']): Section[] {
  const heads = blocks.flatMap(({ block }, index) => (block.kind === 'heading' ? [index] : []));
  const starts = heads[0] === 0 ? heads : [0, ...heads];
  return starts.flatMap((start, index) => {
    const inside = blocks.slice(start, starts[index + 1]);
    const said = inside.filter(({ words }) => words > 0);
    const words = said.reduce((sum, each) => sum + each.words, 0);
    const [head, last] = [inside[0], said.at(-1)];
    if (!head || (head.block.kind !== 'heading' && words === 0)) return [];
    const from = said[0]?.from ?? head.from;
    const seconds = basis === 'pace' ? (words * 60) / pace : (last?.to ?? from) - from;
    const heading = head.block.kind === 'heading' ? head.block : { id: '', depth: 2 };
    const title = head.block.kind === 'heading' ? head.tokens.map(({ shown }) => shown).join(' ') : '';
    return [{ id: heading.id, depth: heading.depth, title, words, from, seconds }];
  });
}

function heldTimes(blocks: readonly PlannedBlock[], line: Timeline): Map<number, number> {
  const times = new Map<number, number>();
  for (const { block, tokens, word, from } of blocks) {
    for (const piece of block.html) if (typeof piece === 'object' && 'held' in piece) times.set(piece.held, from);
    let at = word;
    for (const token of tokens) {
      for (const number of token.held) times.set(number, block.kind === 'said' ? line.start(at) : from);
      if (block.kind === 'said') at += token.words;
    }
  }
  return times;
}

function againstSubtitles(blocks: readonly PlannedBlock[]): Plan['faults'] {
  return blocks.flatMap(({ block, from }) => {
    if (block.kind !== 'cue' || block.at === null || Math.abs(block.at - from) <= SLACK) return [];
    const found = `a cue at ${clockTime(block.at)}, which the subtitles of the video have at ${clockTime(from)}`;
    return [{ cue: block, found, expected: `\`at="${clockTime(from)}"\`, or none: the page takes the time of the video` }];
  });
}

/** Words that take longer, at the pace, than the time between two stated cues. */
function againstPace(measured: readonly Measured[], pace: number): Plan['faults'] {
  let last: Anchor = { word: 0, at: 0 };
  return measured.flatMap(({ block, word }) => {
    if (block.kind !== 'cue' || block.at === null) return [];
    const due = last.at + ((word - last.word) * 60) / pace;
    const late = due - block.at;
    last = { word, at: block.at };
    if (late <= SLACK) return [];
    const found = `a cue at ${clockTime(block.at)}, and the words before it last until about ${clockTime(due)} at ${pace} words per minute`;
    return [{ cue: block, found, expected: 'a later time, fewer words, or a faster `pace`' }];
  });
}
