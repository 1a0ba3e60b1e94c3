import { describe, expect, it } from 'vitest';
import { commentText, type VideoTextParts, videoText } from '../../../src/compute/video/video-text.ts';
import { planned, words } from '../../words/script/script-of.ts';

const SCRIPT = `Before it.\n\n## Later\n\n${words(300)}.\n\n### Deeper\n\nMore.\n\n## Last\n\nThe end.`;
const CORRECTION = {
  since: '2026-05-02',
  reason: 'The log was exported again.',
  numbers: [
    { id: 'c', label: 'peak temperature of fast', was: '71.3 °C', is: '72.1 °C', cue: '0:40', sentence: 'It peaked at 71.3 °C.' },
  ],
};
const PARTS: VideoTextParts = {
  title: 'Short',
  summary: 'An hour of load.',
  disclosure: 'Bought in a shop.',
  plan: planned(SCRIPT),
  cautions: [{ risk: 'It can burn.', done: ['The lid was at 59 °C.'] }],
  links: [{ what: 'The write-up', address: 'https://bench.example/notes/x/' }],
  corrections: [],
};

describe('compute/video/video-text', () => {
  it('is one text to paste: what it is about, cautions, chapters, addresses, disclosure', () => {
    expect(videoText(PARTS)).toBe(`Short

An hour of load.

Cautions
- It can burn. The lid was at 59 °C.

Chapters
0:00 Opening
0:01 Later
2:01 Last

Numbers, data and method
The write-up: https://bench.example/notes/x/

How the specimen was obtained
Bought in a shop.
`);
  });

  it('leaves out what there is nothing of; the first chapter begins at 0:00 whatever its section does', () => {
    const bare = {
      ...PARTS,
      summary: '',
      disclosure: '',
      cautions: [],
      links: [],
      plan: planned(':::cue{at="0:30"}\nA.\n:::\n\n## One\n\nWords.'),
    };
    expect(videoText(bare)).toBe('Short\n\nChapters\n0:00 One\n');
  });

  it('has corrections, which also make a comment to paste', () => {
    const corrected = { ...PARTS, corrections: [CORRECTION] };
    const told = `Corrections to "Short"

2026-05-02 at 0:40: peak temperature of fast, 71.3 °C is now 72.1 °C.
It said: It peaked at 71.3 °C.
Why: The log was exported again.`;
    expect(videoText(corrected).endsWith(`\n\n${told}\n`)).toBe(true);
    expect(commentText(corrected)).toBe(`${told}\n\nThe write-up: https://bench.example/notes/x/\n`);
    expect(commentText(PARTS)).toBe('');
  });
});
