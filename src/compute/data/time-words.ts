/** How a log counts its time, for readers: front matter has shorter words for it. */
import type { TimeFormat } from '../../intake/log.ts';

const WORDS: Readonly<Record<TimeFormat, string>> = {
  elapsed: 'elapsed',
  epoch: 'since 1970-01-01 UTC',
  iso8601: 'date and time',
  clock: 'time of day',
};

export function timeWords(format: TimeFormat): string {
  return WORDS[format];
}
