import { describe, expect, it } from 'vitest';
import { readSubtitles } from '../../../src/words/script/subtitles.ts';

const EXPECTED = [
  { from: 1, to: 2.5, text: 'One & two' },
  { from: 3, to: 4, text: 'three\nfour' },
];

describe('words/script/subtitles', () => {
  it('reads WebVTT, tags and entities undone', () => {
    const text =
      'WEBVTT\n\nNOTE x\n\n00:01.000 --> 00:02.500 line:0\n<v Ann>One &amp; <i>two</i>\n\nid\n00:00:03.000 --> 00:00:04.000\nthree\nfour\n';
    expect(readSubtitles(text)).toEqual({ cues: EXPECTED, faults: [] });
  });

  it.each([
    ['\n', '1\n00:00:01,000 --> 00:00:02,500\nOne & <i>two</i>\n\n2\n00:00:03,000 --> 00:00:04,000\nthree\nfour\n'],
    [
      '\r\n and a mark',
      '\uFEFF1\r\n0:00:01,000 --> 0:00:02,500 X1:40\r\n{\\an8}One & two\r\n\r\n2\r\n0:00:03,000 --> 0:00:04,000\r\nthree\r\nfour',
    ],
  ])('reads SubRip with %j', (_, text) => {
    expect(readSubtitles(text).cues).toEqual(EXPECTED);
  });

  it('tells the line of what it cannot read', () => {
    expect(readSubtitles('WEBVTT\n\n00:01.000 -> 00:02.000\nx\n').cues).toEqual([]);
    expect(readSubtitles('WEBVTT\n\n00:05.000 --> 00:02.000\nx\n').faults).toEqual([
      { line: 3, message: expect.stringContaining('End timestamp is not greater than start timestamp') },
    ]);
    expect(readSubtitles('1\n00:00:05,000 --> 00:00:02,000\nx\n').faults.map(({ line }) => line)).toEqual([2]);
    expect(readSubtitles('no subtitles here').cues).toEqual([]);
  });
});
