/** A script as plain text: what is said in spoken words, what is on screen in brackets with its time. */
import type { Plan, PlannedBlock } from './plan.ts';
import { clockTime } from './timeline.ts';

/** The file's text, one paragraph a line. `head` are its first lines. */
export function scriptPlain(plan: Plan, head: readonly string[]): string {
  const blocks = plan.blocks.flatMap((block) => lineOf(block, plan));
  return `${[head.join('\n'), ...blocks].join('\n\n')}\n`;
}

function lineOf({ block, tokens, from }: PlannedBlock, { sections }: Plan): string[] {
  const said = tokens.map((token) => token.said).join(' ');
  const shown = tokens.map((token) => token.shown).join(' ');
  if (block.kind === 'heading') {
    const section = sections.find(({ id }) => id === block.id);
    return [`${shown.toUpperCase()} (${clockTime(from)}, about ${clockTime(section?.seconds ?? 0)})`];
  }
  if (block.kind === 'cue') return [`[${clockTime(from)}, on screen: ${shown}]`];
  return said === '' ? [] : [said];
}
