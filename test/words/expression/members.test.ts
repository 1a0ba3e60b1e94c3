import { describe, expect, test } from 'vitest';
import { judge, type Verdict } from '../../../src/words/expression/condition.ts';
import { evaluate } from '../../../src/words/expression/expression.ts';
import type { Condition } from '../../../src/words/expression/expression-tree.ts';
import { expressionInWords } from '../../../src/words/expression/in-words.ts';
import { isTextProblem, parseCondition } from '../../../src/words/expression/parse-expression.ts';
import type { Subject } from '../../../src/words/written.ts';
import { FAST, quantity, RATED, TWO } from '../subjects.ts';

const PLACE = { file: 'content/notes/note.md', line: 1, column: 1 };

/** Three runs whose peaks are 61.2, 71.3 and 81 °C on one die; the middle one has no load power of the wall. */
const THREE: ReadonlyMap<string, Subject> = new Map([
  ...TWO,
  [
    'hot',
    {
      ...FAST,
      id: 'larch-hot',
      figures: new Map([
        ['peak_temperature', { ...FAST.figures.get('peak_temperature')!, quantity: quantity(81, '°C', 0.1, 'x') } as never],
        ['peak_temperature.ssd', RATED.figures.get('peak_temperature.ssd')!],
      ]),
    },
  ],
  ['steps', { ...RATED, kind: 'comparison', id: 'larch-steps' }],
]);

function outcome(text: string, subjects = THREE): Verdict | string {
  const tree = parseCondition(text);
  if (isTextProblem(tree)) return `${tree.start}: ${tree.found}`;
  const judged = judge(tree, subjects);
  return 'problems' in judged ? judged.problems.map(({ start, found }) => `${start}: ${found}`).join('; ') : judged.verdict;
}

describe('words/expression/members', () => {
  test.each([
    ['all *.peak_temperature < 85 °C', 'holds'],
    ['all *.peak_temperature < 80 °C', 'fails'],
    ['all *.peak_temperature < *.device.throttle_at', 'holds'],
    ['any *.peak_temperature > 80 °C', 'holds'],
    ['none *.peak_temperature > 85 °C', 'holds'],
    ['none *.peak_temperature > 80 °C', 'fails'],
    ['all *.peak_temperature < 71.4 °C', 'fails'],
    ['all [rated fast].peak_temperature < 71.4 °C', 'cannot be told'],
    ['all [rated fast].load_power between 3 W and 6 W', 'holds'],
    ['all ([rated fast].load_power > 3 W and [rated fast].load_power < 5 W)', 'fails'],
    ['hot.peak_temperature is largest of *.peak_temperature', 'holds'],
    ['fast.peak_temperature is largest of *.peak_temperature', 'fails'],
    ['rated.load_power is smallest of [rated fast].load_power', 'holds'],
    ['all fast.peak_temperature.* < 75 °C', 'holds'],
    ['count(*.peak_temperature) >= 3', 'holds'],
    ['max(*.peak_temperature) < 82 °C and not min(*.peak_temperature) < 60 °C', 'cannot be told'],
  ])('%s: %s', (text, expected) => {
    expect(outcome(text)).toBe(expected);
  });

  test.each([
    ['all *.peak_temperature < 71.4 °C', 'fails', ['hot']],
    ['any *.peak_temperature > 71.4 °C', 'holds', ['hot']],
    ['none *.peak_temperature > 60 °C', 'fails', ['fast', 'hot']],
    ['all [rated fast].peak_temperature < 71.4 °C', 'cannot be told', ['fast']],
    ['none [rated fast].peak_temperature >= 71.4 °C', 'cannot be told', ['fast']],
    ['all *.peak_temperature < 90 °C', 'holds', ['rated', 'fast', 'hot']],
  ])('%s %s by %j', (text, verdict, deciding) => {
    const judged = judge(parseCondition(text) as Condition, THREE);
    if ('problems' in judged) throw new Error(JSON.stringify(judged.problems));
    expect(judged.verdict).toBe(verdict);
    expect(judged.decisive.map(({ of }) => of?.split('.')[0])).toEqual(deciding);
  });

  test('each run stands in both sides of its own comparison', () => {
    const apart = new Map(
      [...TWO].map(([alias, run], index) => [
        alias,
        { ...run, facts: new Map([['limit', quantity(65 + 10 * index, '°C', 0, '')]]) },
      ]),
    );
    expect(outcome('all *.peak_temperature < *.limit', apart)).toBe('holds');
    expect(outcome('any *.peak_temperature > *.limit', apart)).toBe('fails');
  });

  test.each([
    ['*.peak_temperature < 85 °C', '0: a group of values where one is needed'],
    ['all fast.peak_temperature < 85 °C', '4: `all` without a group'],
    ['fast.peak_temperature is largest of fast.peak_temperature', '36: `is largest of` without a group'],
    ['all [rated slow].peak_temperature < 85 °C', '4: unknown alias `slow`'],
    ['all fast.nothing.* < 1', '4: nothing that `fast.nothing.*` could stand for'],
    ['all *.steady_temperature < 85 °C', expect.stringContaining('is absent')],
  ])('%s is told: %s', (text, expected) => {
    expect(outcome(text)).toEqual(expected);
  });

  test('a value over a group is held by each of its members', () => {
    const found = evaluate('max(*.peak_temperature)', THREE, PLACE);
    expect('held' in found && found.held.map(({ alias }) => alias)).toEqual(['rated', 'fast', 'hot']);
    expect('quantity' in found && found.quantity.value).toBe(81);
    const counted = evaluate('count(*.peak_temperature)', THREE, PLACE);
    expect('quantity' in counted && counted.quantity).toEqual({ value: 3, unit: '1', parts: [] });
  });

  test('counts members, and different ones', () => {
    const specimens = new Map(
      [...THREE].map(([alias, run]) => [alias, { ...run, names: new Map([['specimen', alias === 'hot' ? 'no-2' : 'no-1']]) }]),
    );
    const value = (text: string) => {
      const found = evaluate(text, specimens, PLACE);
      return 'quantity' in found ? found.quantity.value : found.problems.map((each) => each.found);
    };
    expect([value('kinds(*.specimen)'), value('kinds([rated fast].specimen)'), value('kinds(*.setting.clock)')]).toEqual([2, 1, 1]);
    expect(value('count(rated.peak_temperature.*)')).toBe(1);
    expect(value('fast.specimen')).toEqual(['unknown figure `specimen` of `fast`']);
  });

  test('what all members share, and what they are together', () => {
    const counts = new Map(
      [...THREE].map(([alias, run]) => [
        alias,
        {
          ...run,
          facts: new Map([
            ['repeats.a', { value: 5, unit: '1', parts: [] }],
            ['repeats.b', { value: alias === 'hot' ? 4 : 5, unit: '1', parts: [] }],
          ]),
        },
      ]),
    );
    const value = (text: string) => {
      const found = evaluate(text, counts, PLACE);
      return 'quantity' in found ? found.quantity.value : found.problems.map((each) => each.found);
    };
    expect(value('same([rated fast].repeats.*)')).toBe(5);
    expect(value('sum(fast.repeats.*)')).toBe(10);
    expect(value('sum(*.repeats.a)')).toBe(15);
    expect(value('same(*.repeats.*)')).toEqual(['`same` of values that differ: 5 and 4']);
    expect(value('same(*.peak_temperature)')).toEqual(['`same` of a measured value']);
  });

  test('a mean or a sum never mixes own figures with what somebody else published', () => {
    const peak = RATED.figures.get('peak_temperature')!;
    const elsewhere = {
      ...RATED,
      id: 'elsewhere',
      figures: new Map([['peak_temperature', { ...peak, of: { quoted: 'A source' } } as never]]),
    };
    const subjects = new Map([...TWO, ['old', elsewhere]]);
    const found = (text: string) => {
      const value = evaluate(text, subjects, PLACE);
      return 'quantity' in value ? 'given' : value.problems.map((each) => each.found);
    };
    expect(found('mean([rated old].peak_temperature)')).toEqual([
      '`mean` of own figures and of `old.peak_temperature`, which is quoted',
    ]);
    expect(found('sum(rated.peak_temperature, old.peak_temperature)')[0]).toMatch(/^`sum` of own figures/);
    expect(found('mean([rated fast].peak_temperature)')).toBe('given');
    expect(found('mean(old.peak_temperature, old.peak_temperature)')).toBe('given');
    expect(found('max(*.peak_temperature)')).toBe('given');
  });

  test('reads in words', () => {
    const aliases = new Map([
      ['rated', 'Rated soak'],
      ['fast', 'Fast soak'],
    ]);
    expect(expressionInWords('max(*.peak_temperature)', aliases)).toBe('greatest of peak temperature of every run');
    expect(expressionInWords('mean([rated fast].load_power)', aliases)).toBe('mean of load power of Rated soak, Fast soak');
  });
});
