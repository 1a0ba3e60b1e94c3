import { describe, expect, it } from 'vitest';
import { scriptSrt } from '../../../src/words/script/srt.ts';
import { readSubtitles } from '../../../src/words/script/subtitles.ts';
import { scriptVtt } from '../../../src/words/script/vtt.ts';
import { planned, words } from './script-of.ts';

const TEXT = `Warm & slow, at :value[fast.peak_temperature].\n\n:::cue{at="0:20"}\nA plot.\n:::\n\n${words(200)}, and an end.`;

describe('words/script/srt', () => {
  const srt = scriptSrt(planned(TEXT));

  it('has the captions of the WebVTT beside it, at the same times', () => {
    const [own, other] = [srt, scriptVtt(planned(TEXT), 'About it.')].map((text) => readSubtitles(text).cues);
    expect(own!.length).toBeGreaterThan(10);
    expect(own).toEqual(other);
  });

  it('numbers them, and says nothing of what is on screen', () => {
    expect(srt).toMatch(/^1\n00:00:00,000 --> 00:00:\d\d,\d{3}\nWarm & slow, at 71\.3\u00a0°C\.\n\n2\n00:00:20,000 --> /);
    expect(srt).not.toContain('plot');
    expect(srt).toMatch(/[^\n]\n$/);
  });
});
