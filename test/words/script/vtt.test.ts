import { describe, expect, it } from 'vitest';
import webvtt from 'webvtt-parser';
import { LINE } from '../../../src/words/script/captions.ts';
import { scriptPlain } from '../../../src/words/script/plain.ts';
import { readSubtitles } from '../../../src/words/script/subtitles.ts';
import { scriptVtt } from '../../../src/words/script/vtt.ts';
import { planned, words } from './script-of.ts';

const TEXT = `Warm & <slow>, at :value[fast.peak_temperature] --> the limit.

## Later

:::cue{at="0:20"}
A --> B
:::

${words(400)}, and an end.

:::cue{at="0:25"}
All squeezed.
:::

:::cue{at="0:25"}
Twice.
:::

The last words.`;

/** By the W3C's own parser and validator, webvtt-parser 2.2. */
function parsed(text: string) {
  return new webvtt.WebVTTParser().parse(text, 'subtitles');
}

describe('words/script/vtt', () => {
  const vtt = scriptVtt(planned(TEXT), 'About --> it.');

  it('is WebVTT without an error, also where words are squeezed between stated times', () => {
    const { cues, errors } = parsed(vtt);
    expect(errors).toEqual([]);
    expect(cues.length).toBeGreaterThan(20);
  });

  it('holds the words as they print, in order, in lines of a caption', () => {
    const { cues } = readSubtitles(vtt);
    expect(cues[0]?.text).toBe('Warm & <slow>, at 71.3\u00a0°C --> the limit.');
    expect(cues.map(({ text }) => text.replaceAll('\n', ' ')).join(' ')).toContain(words(400));
    for (const { text } of cues) for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(LINE);
    expect(Math.max(...cues.map(({ text }) => text.split('\n').length))).toBe(2);
  });

  it('has each caption end before the next begins, and its comments say what is on screen', () => {
    const { cues } = readSubtitles(vtt);
    for (const [index, { from, to }] of cues.entries()) {
      expect(to).toBeGreaterThan(from);
      const next = cues[index + 1];
      if (next) expect(next.from).toBeGreaterThanOrEqual(to - 0.011);
    }
    expect(vtt).toContain('NOTE On screen at 0:20: A → B');
  });

  it('is read back as the subtitles of its own script', () => {
    const again = planned(TEXT, { subtitles: readSubtitles(vtt).cues });
    expect(again.basis).toBe('subtitles');
    const first = planned(TEXT);
    expect(again.seconds).toBeCloseTo(first.seconds, 1);
  });
});

describe('words/script/plain', () => {
  it('holds what is said in spoken words, and what is on screen with its time', () => {
    const text = scriptPlain(
      planned('At :value[fast.peak_temperature].\n\n## Two\n\n:::cue\nShows :value[fast.peak_temperature].\n:::\n\nYes.'),
      ['T'],
    );
    expect(text).toBe(
      'T\n\nAt seventy-one point three degrees.\n\nTWO (0:02, about 0:00)\n\n[0:02, on screen: Shows 71.3\u00a0°C.]\n\nYes.\n',
    );
  });
});
