import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { withoutRemarks } from '../../../src/words/page/without-remarks.ts';
import { renderProse } from '../../../src/words/prose.ts';
import { DEMONSTRATION } from '../../demonstration-folder.ts';

const SOURCE = `a <!-- PRIVATE --> b :value[x]

<!-- PRIVATE
of two lines --> c

[//]: # (PRIVATE)
[x]: http://a.example "title"
[x]: http://private.example

[^1]: PRIVATE
[^2]: printed

[x] and [^2] \`<!-- printed -->\`

    <!-- printed -->
`;

test('words/without-remarks: what no page prints becomes blanks, and all else stays where it is', () => {
  const text = withoutRemarks(SOURCE, false);
  expect(text).not.toMatch(/PRIVATE|private|of two lines/);
  expect(text.split('\n').map((line) => line.length)).toEqual(SOURCE.split('\n').map((line) => line.length));
  for (const kept of [':value[x]', 'http://a.example "title"', 'printed', '`<!-- printed -->`', '    <!-- printed -->'])
    expect(text.indexOf(kept)).toBe(SOURCE.indexOf(kept));
});

test('words/without-remarks: the page is the same', () => {
  const place = { file: 'content/runs/x.md', line: 1 };
  const source = SOURCE.replace(':value[x]', '');
  expect(renderProse(withoutRemarks(source, false), place).html).toBe(renderProse(source, place).html);
});

test('words/without-remarks: a text without remarks is left as it is, front matter too', () => {
  const text = readFileSync(`${DEMONSTRATION}/content/notes/a-clock-it-cannot-keep.md`, 'utf8');
  expect(withoutRemarks(text, true)).toBe(text);
});
