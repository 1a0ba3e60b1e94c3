import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { plainFile } from '../../../src/register/portable/plain-values.ts';
import { withoutComments } from '../../../src/register/portable/without-comments.ts';
import { DEMONSTRATION } from '../../demonstration-folder.ts';

const path = 'content/scripts/x.md';

const COMMENTED = `---
# PRIVATE 1
title: A # PRIVATE 2
subtitles: x.vtt # PRIVATE 3
runs: # PRIVATE 4
  # PRIVATE 5
  a: b
summary: | # PRIVATE 6
  words # which stay
  more
highlights:
  - "a # kept" # PRIVATE 7
  # PRIVATE 8
  - b
  #PRIVATE 9
---
# A heading
`;

test('register/travel/without-comments: comments go, what is read stays where it is', () => {
  const text = withoutComments({ path, text: COMMENTED }, ['subtitles']);
  expect(text).toBe(`---

title: A 

runs: 
  
  a: b
summary: | 
  words # which stay
  more
highlights:
  - "a # kept" 
  
  - b
  
---
# A heading
`);
  expect(plainFile({ path, text }).keys).toEqual(
    new Map([...plainFile({ path, text: COMMENTED }).keys].filter(([key]) => key !== 'subtitles')),
  );
});

test('register/travel/without-comments: a key of several lines goes with all of them', () => {
  const text = withoutComments({ path, text: '---\ntitle: A\nwas:\n  - notes/x/\n  - notes/y/\ndate: 2026-01-01\n---\n' }, ['was']);
  expect(text).toBe('---\ntitle: A\n\n\n\ndate: 2026-01-01\n---\n');
});

test('register/travel/without-comments: line ends and a mark at the start of the file are kept, or of no account', () => {
  expect(withoutComments({ path, text: '\uFEFF---\r\ntitle: A # PRIVATE\r\n---\r\nWords\r\n' })).toBe(
    '---\r\ntitle: A \r\n---\r\nWords\r\n',
  );
});

test('register/travel/without-comments: nothing of a file without comments changes', () => {
  const note = 'content/notes/a-second-larch.md';
  const text = readFileSync(`${DEMONSTRATION}/${note}`, 'utf8');
  expect(withoutComments({ path: note, text })).toBe(text);
});
