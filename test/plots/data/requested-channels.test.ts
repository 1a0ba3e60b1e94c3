import { describe, expect, test } from 'vitest';
import { slotsOf } from '../../../src/plots/data/requested-channels.ts';
import { channel, logOf, PLACE, request, subject } from '../subjects.ts';

const rated = subject('rated');
const fast = subject('fast');
const told = (subjects: readonly ReturnType<typeof subject>[], channels: readonly string[]) =>
  slotsOf(request('trace', subjects, channels), subjects).problems.map((problem) => {
    expect(problem).toMatchObject({ severity: 'error', place: PLACE });
    return [problem.rule, problem.found, problem.remedy ?? problem.expected];
  });

describe('plots/data/requested-channels', () => {
  test('without channels the primary temperature of each run', () => {
    const { slots, problems } = slotsOf(request('trace', [rated, fast]), [rated, fast]);
    expect(problems).toEqual([]);
    expect(slots.map(({ name, channels }) => [name, channels.map((each) => each.name)])).toEqual([['soc', ['soc', 'soc']]]);
  });

  test('an unknown channel is told for each run, with the nearest spelling', () => {
    expect(told([rated, fast], ['core-clock'])).toEqual([
      ['unknown-channel', 'the run rated has no channel `core-clock`', 'did you mean `core_clock`?'],
      ['unknown-channel', 'the run fast has no channel `core-clock`', 'did you mean `core_clock`?'],
    ]);
  });

  test('a channel without a reading cannot be drawn', () => {
    expect(told([rated], ['dead'])[0]).toEqual([
      'no-readings',
      'the channel `dead` of the run rated has no reading to draw',
      'look at the column "dead" of data/larch-2/soak.csv',
    ]);
  });

  test('a log without a temperature asks for channels', () => {
    const bare = { ...rated, log: logOf([0, 1], [channel('amps', 'current', 'A', [1, 2], 0.1)], 1) };
    expect(told([bare], [])[0]![1]).toBe('the run rated has no temperature channel to draw');
  });

  test('one name for two quantities is refused', () => {
    const other = { ...fast, log: logOf([0, 1], [channel('soc', 'clock', 'Hz', [1, 2], 1)], 1) };
    expect(told([rated, other], ['soc'])[0]!.slice(0, 2)).toEqual([
      'different-quantities',
      'the channel `soc` is temperature in °C in one run and clock in Hz in another',
    ]);
  });

  test('more runs than can be told apart are refused', () => {
    const many = Array.from({ length: 7 }, (_, i) => ({ ...rated, alias: `r${i}` }));
    expect(told(many, [])[0]).toEqual(['too-many-runs', '7 runs in one plot', 'draw them in two plots']);
  });
});
