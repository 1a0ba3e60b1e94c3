/** A script as WebVTT (W3C, WebVTT: The Web Video Text Tracks Format): what is said as captions, what is on screen as comments. */
import { captionsOf } from './captions.ts';
import type { Plan, PlannedBlock } from './plan.ts';
import { clockTime } from './timeline.ts';

/** A caption is never shorter, s: the format wants an end behind the start. */
const LEAST = 0.01;

/** The file's text. Captions print numbers as the note does ("58.3 °C"): they are read, not spoken. `about` stands in a comment at its top. */
export function scriptVtt(plan: Plan, about: string): string {
  const blocks = plan.blocks.flatMap((block) => {
    if (block.block.kind === 'cue') return [comment(`On screen at ${clockTime(block.from)}: ${wordsOf(block)}`)];
    return block.block.kind === 'said' ? captions(plan, block) : [];
  });
  return `${['WEBVTT', comment(about), ...blocks].join('\n\n')}\n`;
}

function captions({ timeline }: Plan, { tokens, word }: PlannedBlock): string[] {
  let at = word;
  return captionsOf(tokens).map(({ lines, words }) => {
    const from = timeline.start(at);
    at += words;
    const to = Math.max(timeline.end(at), from + LEAST);
    return [`${timestamp(from)} --> ${timestamp(to)}`, ...lines.map((line) => escaped(line))].join('\n');
  });
}

/** No arrow may stand in a comment, and no empty line. */
function comment(text: string): string {
  return `NOTE ${text.replaceAll('-->', '→')}`;
}

function wordsOf({ tokens }: PlannedBlock): string {
  return tokens.map(({ shown }) => shown).join(' ');
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

/** "00:01:02.345" */
function timestamp(seconds: number): string {
  const whole = Math.round(seconds * 1000);
  const part = (value: number, width: number): string => String(value).padStart(width, '0');
  const minutes = Math.floor(whole / 60_000);
  return `${part(Math.floor(minutes / 60), 2)}:${part(minutes % 60, 2)}:${part(Math.floor(whole / 1000) % 60, 2)}.${part(whole % 1000, 3)}`;
}
