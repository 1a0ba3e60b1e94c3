/** Corrections as text, ready to paste under a video or into a reply. */
import type { CorrectedTogether } from '../results.ts';

/** Newest first, one paragraph each reason. */
export function correctionsAsText(title: string, corrections: readonly CorrectedTogether[]): string {
  const paragraphs = corrections.map(({ since, reason, numbers }) => {
    const lines = numbers.flatMap(({ label, cue, was, is, sentence }) => {
      const where = cue === undefined ? '' : ` at ${cue}`;
      const what = label === '' ? '' : `${label}, `;
      return [`${since}${where}: ${what}${was} is now ${is}.`, ...(sentence === '' ? [] : [`It said: ${sentence}`])];
    });
    return [...lines, `Why: ${reason}`].join('\n');
  });
  return `${[`Corrections to "${title}"`, ...paragraphs].join('\n\n')}\n`;
}
