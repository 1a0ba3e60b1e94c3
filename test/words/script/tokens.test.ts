import { describe, expect, it } from 'vitest';
import { countWords, sayEntry, tokensOf } from '../../../src/words/script/tokens.ts';
import { scriptOf } from './script-of.ts';

function tokens(text: string) {
  const { script, entries } = scriptOf(text);
  return tokensOf(
    script!.flatMap(({ said }) => said),
    entries,
  );
}

describe('words/script/tokens', () => {
  it('says a value in words and prints it in signs, with what touches it', () => {
    expect(tokens('It is (:value[fast.peak_temperature]), then')).toEqual([
      { shown: 'It', said: 'It', words: 1, held: [] },
      { shown: 'is', said: 'is', words: 1, held: [] },
      { shown: '(71.3\u00a0°C),', said: '(seventy-one point three degrees),', words: 4, held: [1] },
      { shown: 'then', said: 'then', words: 1, held: [] },
    ]);
  });

  it('keeps the author’s own words of stated numbers and claims, each a token', () => {
    const claim = ':claim[runs warmer]{is="fast.peak_temperature > rated.peak_temperature"}';
    const found = tokens(`:stated[about 71 degrees]{is="fast.peak_temperature"}, it ${claim}`);
    expect(found.map(({ said }) => said)).toEqual(['about', '71', 'degrees,', 'it', 'runs', 'warmer']);
    expect(found.map(({ held }) => held)).toEqual([[1], [], [], [], [2], []]);
  });

  it('counts what holds a letter or digit as a word', () => {
    expect(countWords('no – dash, fifty-eight … 10:30 & é')).toBe(5);
    expect(countWords('')).toBe(0);
  });

  it.each([
    ['58.3\u00a0°C', 'fifty-eight point three degrees'],
    ['2.6\u00a0GHz', 'two point six gigahertz'],
    ['−0.2\u00a0K', 'minus zero point two kelvin'],
    ['72.88\u00a0%', 'seventy-two point eight eight percent'],
    ['1.1785', 'one point one seven eight five'],
  ])('says %s', (shown, said) => {
    expect(sayEntry({ kind: 'value', shown })).toBe(said);
    expect(sayEntry({ kind: 'stated', shown })).toBe(shown);
  });
});
