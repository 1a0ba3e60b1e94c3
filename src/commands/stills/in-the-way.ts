/** Which errors keep a script's pictures from being drawn. */
import type { Problem } from '../../problem.ts';

const WORDS = /^content\/(?:notes|scripts)\//;

/** The errors that a script's pictures may hang on: all but those of other notes and scripts. `own` is the script's file and the note's that it speaks for. */
export function inTheWay(problems: readonly Problem[], own: readonly string[]): Problem[] {
  return problems.filter(({ severity, place }) => severity === 'error' && (!WORDS.test(place.file) || own.includes(place.file)));
}
