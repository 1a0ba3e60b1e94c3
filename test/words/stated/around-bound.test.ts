import { describe, expect, test } from 'vitest';
import { leavesRoomForBound } from '../../../src/words/stated/around-bound.ts';

/** A text with `■` for the number, of a figure in `unit`. */
const leaves = (text: string, unit = 's') => leavesRoomForBound(...(text.split('■') as [string, string]), unit);

describe('words/stated/around-bound', () => {
  test.each([
    'It kept its clock for ■.',
    '■ passed before it throttled.',
    'From the start on, it ran for ■ without a pause.',
    'For **■** it held.',
  ])('a bound can stand in: %s', (text) => expect(leaves(text)).toBe(true));

  test.each([
    'It throttled after ■.',
    'It throttled *after* ■.',
    'It throttled ■ into the load.',
    'The fan came on ■ later.',
    'It settled in under ■.',
    'It stays **below** ■.',
    'It took more than ■ longer.',
    'It never settled within ■.',
    'It did not throttle in ■.',
    'It took ■ or more.',
    'It took about ■.',
    'It took between ■ and an hour.',
    'between :value[a.time_constant] and ■',
    'between :stated[ten]{is="a.b" unit="min"} and ■',
    'from nearly ten minutes to ■',
    'It took ■ to :value[a.time_constant].',
  ])('none can: %s', (text) => expect(leaves(text)).toBe(false));

  test.each([
    ['°C', 'The chip would end at ■ in this room.'],
    ['W', 'It draws ■ before the fan starts.'],
    ['J', 'It took ■ into account.'],
    ['J', 'After an hour it had taken in ■.'],
  ])('what names the moment of a time names none of a figure in %s: %s', (unit, text) => {
    expect(leaves(text, unit)).toBe(true);
    expect(leaves(text)).toBe(false);
  });

  test.each(['It stayed within ■ of the room.', 'It ended under ■.', 'It never reached ■.', 'It went from 40 °C to ■.'])(
    'hedges, denials and ranges count in each unit: %s',
    (text) => expect(leaves(text, '°C')).toBe(false),
  );
});
