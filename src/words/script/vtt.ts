/** A script as WebVTT (W3C, WebVTT: The Web Video Text Tracks Format): what is said as captions, what is on screen as comments. */
import type { Plan, PlannedBlock } from './plan.ts';
import { timedCaptions, timestamp } from './timed-captions.ts';
import { clockTime } from './timeline.ts';

/** The file's text. Captions print numbers as the note does ("58.3 °C"): they are read, not spoken. `about` stands in a comment at its top. */
export function scriptVtt(plan: Plan, about: string): string {
  const blocks = plan.blocks.flatMap((block) => {
    if (block.block.kind === 'cue') return [comment(`On screen at ${clockTime(block.from)}: ${wordsOf(block)}`)];
    return block.block.kind === 'said' ? captions(plan, block) : [];
  });
  return `${['WEBVTT', comment(about), ...blocks].join('\n\n')}\n`;
}

function captions(plan: Plan, planned: PlannedBlock): string[] {
  return timedCaptions(plan, planned).map(({ from, to, lines }) =>
    [`${timestamp(from, '.')} --> ${timestamp(to, '.')}`, ...lines.map((line) => escaped(line))].join('\n'),
  );
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
