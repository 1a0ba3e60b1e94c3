import { describe, expect, it } from 'vitest';
import { USUAL_PACE } from '../../../src/register/values/pace.ts';
import { planned, words } from './script-of.ts';

const cue = (at?: string) => `:::cue${at === undefined ? '' : `{at="${at}"}`}\nx\n:::`;
const V = ':value[fast.peak_temperature]';

describe('words/script/plan', () => {
  it('estimates at the usual pace where none is stated: 150 words last a minute', () => {
    const { pace, seconds, words: count } = planned(words(150));
    expect([pace, count]).toEqual([USUAL_PACE, 150]);
    expect(seconds).toBeCloseTo(60, 9);
  });

  it('counts a value as the words that say it', () => {
    expect(planned(`It is ${V} now`).words).toBe(3 + 4);
  });

  it('gives each section its words, its beginning and its length at the stated pace', () => {
    const { sections } = planned(`${words(10)}\n\n## One\n\n${words(20)}\n\n${cue()}\n\n### Two\n\n${words(30)}`, { pace: 120 });
    expect(sections).toEqual([
      { id: '', depth: 2, title: '', words: 10, from: 0, seconds: 5 },
      { id: 'one', depth: 2, title: 'One', words: 20, from: 5, seconds: 10 },
      { id: 'two', depth: 3, title: 'Two', words: 30, from: 15, seconds: 15 },
    ]);
  });

  it('finds the times of cues and held numbers', () => {
    const { blocks, heldAt } = planned(`${words(10)}\n\n${cue()}\n\n${words(5)} ${V}\n\n:::cue\n${V}\n:::`, { pace: 60 });
    expect(blocks.map(({ from, to }) => [from, to])).toEqual([
      [0, 10],
      [10, 10],
      [10, 19],
      [19, 19],
    ]);
    expect([...heldAt]).toEqual([
      [1, 15],
      [2, 19],
    ]);
  });

  it('lets a stated time hold: what ends early is followed by a pause, what runs over is squeezed and told', () => {
    const early = planned(`${words(10)}\n\n${cue('0:30')}\n\n${words(10)}`, { pace: 60 });
    expect(early.blocks.map(({ from, to }) => [from, to])).toEqual([
      [0, 10],
      [30, 30],
      [30, 40],
    ]);
    expect(early.faults).toEqual([]);
    const late = planned(`${words(60)}\n\n${cue('0:30')}\n\n${words(10)}`, { pace: 60 });
    expect(late.blocks.map(({ from, to }) => [from, to])).toEqual([
      [0, 30],
      [30, 30],
      [30, 40],
    ]);
    expect(late.faults.map(({ cue: { line }, found }) => [line, found])).toEqual([
      [3, 'a cue at 0:30, and the words before it last until about 1:00 at 60 words per minute'],
    ]);
  });

  it('takes the times of the finished video, and says which stated times it does not bear out', () => {
    const subtitles = [
      { from: 2, to: 4, text: 'Now this is the first part.' },
      { from: 20, to: 22, text: 'And here, the second:' },
      { from: 22, to: 26, text: '71.3°C, no less!' },
    ];
    const text = `Now this is the first part.\n\n${cue('0:08')}\n\n## Second\n\nAnd here the second: ${V}, no less.`;
    const plan = planned(text, { subtitles });
    expect(plan.basis).toBe('subtitles');
    // A word begins at its even share of its subtitle; the last word of a stretch lasts as long as the pace says.
    expect(plan.blocks[0]?.from).toBe(2);
    expect(plan.blocks[0]?.to).toBeCloseTo(2 + (2 * 5) / 6 + 0.4, 9);
    expect(plan.blocks.slice(1).map(({ from }) => from)).toEqual([20, 20, 20]);
    expect(plan.seconds).toBeCloseTo(22 + (4 * 6) / 7 + 0.4, 9);
    expect(plan.heldAt.get(1)).toBeCloseTo(22, 9);
    expect(plan.faults.map(({ found, expected }) => [found, expected])).toEqual([
      [
        'a cue at 0:08, which the subtitles of the video have at 0:20',
        '`at="0:20"`, or none: the page takes the time of the video',
      ],
    ]);
  });

  it('tells subtitles of something else, and estimates then', () => {
    const plan = planned(`${words(20)}`, { subtitles: [{ from: 0, to: 9, text: 'Quite another talk about w1 bread' }] });
    expect([plan.mismatch, plan.basis, plan.seconds]).toEqual([true, 'pace', 8]);
  });

  it('stands a script without a word', () => {
    expect(planned(cue()).seconds).toBe(0);
    expect(planned('').sections).toEqual([]);
  });
});
