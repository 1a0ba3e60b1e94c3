/** Whether "more than 59.9 min" can stand where a number stood. */
import { deniedBefore, hedgeAfter, hedgeBefore } from './hedge-at.ts';
import { tokenise } from './tokens.ts';

/**
 * Whether the words around a number leave room for a bound in its place: no hedge, denial or range, as in "under", "never within", "or so",
 * "between … and". Around a time, none that makes it the moment of an event, as in "throttled after": what has a bound was not seen to
 * happen. `before` and `after` are Markdown, `unit` is the figure's own ("s" for each time).
 */
export function leavesRoomForBound(before: string, after: string, unit: string): boolean {
  const [ahead, behind] = [plain(before.slice(-REACH)), plain(after.slice(0, REACH))];
  const [tokens, next] = [tokenise(ahead), tokenise(behind)];
  const hedged = hedgeBefore(tokens, tokens.length) ?? deniedBefore(tokens, tokens.length) ?? hedgeAfter(next, 0);
  return (
    hedged === undefined &&
    !RANGE_ENDS.test(ahead) &&
    !RANGE_BEGINS.test(behind) &&
    !(unit === 's' && (WHEN.test(ahead) || THEN.test(behind)))
  );
}

/** Characters that are looked at on either side. */
const REACH = 400;
/** What another number holds says nothing of this one. */
const DIRECTIVE = /:(?:value|stated)\[([^\]]*)\](?:\{[^}]*\})?/g;

const RANGE_ENDS = /\b(?:between|from)\s+(?:[^\s.;!?]+\s+){1,4}(?:and|to)\s*$|\d\s*(?:to|[-–—])\s*$/iu;
const RANGE_BEGINS = /^\s*(?:to|[-–—])\s*[-−]?\d/iu;

/** Around a time: the moment of an event. Around anything else they say where, or when it was so. */
const WHEN = /\b(?:after|within|in)\s+$/iu;
const THEN = /^\s+(?:in|into|later|before)\b/iu;

/** Held numbers as a digit, and marks of emphasis left out. */
function plain(markdown: string): string {
  return markdown.replace(DIRECTIVE, '1').replaceAll(/[*_]/g, '');
}
