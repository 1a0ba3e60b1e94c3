/** What is said as captions in time, for every form of subtitles. They print numbers as the note does ("58.3 °C"): they are read, not spoken. */
import { captionsOf } from './captions.ts';
import type { Plan, PlannedBlock } from './plan.ts';

/** A caption is never shorter, s: the formats want an end behind the start. */
const LEAST = 0.01;

export interface TimedCaption {
  /** Seconds. */
  readonly from: number;
  readonly to: number;
  readonly lines: readonly string[];
}

/** The captions of a block that is said. */
export function timedCaptions({ timeline }: Plan, { tokens, word }: PlannedBlock): TimedCaption[] {
  let at = word;
  return captionsOf(tokens).map(({ lines, words }) => {
    const from = timeline.start(at);
    at += words;
    return { from, to: Math.max(timeline.end(at), from + LEAST), lines };
  });
}

/** "00:01:02.345"; SubRip has a comma before the thousandths. */
export function timestamp(seconds: number, point: '.' | ','): string {
  const whole = Math.round(seconds * 1000);
  const part = (value: number, width: number): string => String(value).padStart(width, '0');
  const minutes = Math.floor(whole / 60_000);
  const [hours, rest] = [part(Math.floor(minutes / 60), 2), part(minutes % 60, 2)];
  return `${hours}:${rest}:${part(Math.floor(whole / 1000) % 60, 2)}${point}${part(whole % 1000, 3)}`;
}
