/** Corrections as text, ready to paste under a video or into a reply. */
import type { ShownCorrection } from '../results.ts';

/** Newest first, one paragraph each. */
export function pasteText(title: string, corrections: readonly ShownCorrection[]): string {
  const paragraphs = corrections.map(({ since, cue, was, is, reason, sentence }) => {
    const where = cue === undefined ? '' : ` at ${cue}`;
    const said = sentence === '' ? [] : [`It said: ${sentence}`];
    return [`${since}${where}: ${was} is now ${is}.`, ...said, `Why: ${reason}`].join('\n');
  });
  return `${[`Corrections to "${title}"`, ...paragraphs].join('\n\n')}\n`;
}
