import { expect, test } from 'vitest';
import { readOrigins } from '../../../src/register/sealed/archive-origins.ts';

const path = 'content/archives/x.json';
const ORIGIN = { format: 1, of: 'notes/x', site: 'https://bench.example/', links: ['notes/y/'] };

test('register/archives: where something was unpacked from is read', () => {
  expect(readOrigins([{ path, text: JSON.stringify(ORIGIN) }])).toEqual({ origins: [ORIGIN], problems: [] });
});

test.each([
  ['{', 'this is not JSON'],
  ['{"format":2}', 'this is not an origin of an archive: at `format` 2 where 1 belongs'],
])('register/archives: %s is told as a problem', (text, found) => {
  const { origins, problems } = readOrigins([{ path, text }]);
  expect(origins).toEqual([]);
  expect(problems.map(({ rule, place, found }) => [rule, place.file, found])).toEqual([['archive-origin', path, found]]);
});
