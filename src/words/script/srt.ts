/** A script as SubRip: a number, a time and a caption, with an empty line between (no standard; common practice, no source). */
import type { Plan } from './plan.ts';
import { timedCaptions, timestamp } from './timed-captions.ts';

/** The file's text. */
export function scriptSrt(plan: Plan): string {
  const captions = plan.blocks.flatMap((planned) => (planned.block.kind === 'said' ? timedCaptions(plan, planned) : []));
  const blocks = captions.map(({ from, to, lines }, index) =>
    [String(index + 1), `${timestamp(from, ',')} --> ${timestamp(to, ',')}`, ...lines].join('\n'),
  );
  return blocks.map((block) => `${block}\n`).join('\n');
}
