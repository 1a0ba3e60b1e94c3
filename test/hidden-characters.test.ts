import { describe, expect, it } from 'vitest';
import { hiddenIn, visible } from '../src/hidden-characters.ts';
import { error } from '../src/problem.ts';

/** Bidi_Control of Unicode's PropList.txt (version 16), typed from it. */
const BIDI_CONTROL = [0x61c, 0x200e, 0x200f, 0x202a, 0x202b, 0x202c, 0x202d, 0x202e, 0x2066, 0x2067, 0x2068, 0x2069];

describe('hidden-characters', () => {
  it('names what acts on a terminal or turns letters round, and leaves all else', () => {
    expect(visible('a\u001b[2Jb\u0007\u009b\r\u007f\u2028')).toBe('a⟨U+001B⟩[2Jb⟨U+0007⟩⟨U+009B⟩⟨U+000D⟩⟨U+007F⟩⟨U+2028⟩');
    expect(visible('°C\t± 0,5 µm\nnäxt')).toBe('°C\t± 0,5 µm\nnäxt');
  });

  it.each(BIDI_CONTROL)('names the control of direction U+%x', (code) => {
    expect(visible(`a${String.fromCodePoint(code)}b`)).toBe(`a⟨U+${code.toString(16).toUpperCase().padStart(4, '0')}⟩b`);
  });

  it('names what has no width where it stands next to a digit, and nowhere else', () => {
    expect(visible('7\u200b1, 7\u00ad, \u2060٣, 7\u200c\u200d1, 5\u{e0061}')).toBe(
      '7⟨U+200B⟩1, 7⟨U+00AD⟩, ⟨U+2060⟩٣, 7⟨U+200C⟩⟨U+200D⟩1, 5⟨U+E0061⟩',
    );
    for (const text of ['Spiel\u00adraum', '🏳️‍🌈', 'نمی‌خواهم', '1️⃣ 2️⃣']) expect(visible(text)).toBe(text);
  });

  it('says where each stands and what it does', () => {
    expect(hiddenIn('ok \u202e5\u200b')).toEqual([
      { index: 3, name: 'U+202E', does: 'turns the order of text round' },
      { index: 5, name: 'U+200B', does: 'has no width, next to a digit' },
    ]);
  });

  it('is applied to the sentences of every problem, which go to terminals and pages', () => {
    const place = { file: 'data/a.csv', line: 1, column: 1 };
    expect(error('a', place, 'b\u001b', { expected: 'c\u202e', remedy: 'd\u0007' })).toMatchObject({
      found: 'b⟨U+001B⟩',
      expected: 'c⟨U+202E⟩',
      remedy: 'd⟨U+0007⟩',
    });
  });
});
