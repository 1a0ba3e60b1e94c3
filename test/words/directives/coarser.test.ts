import { describe, expect, test } from 'vitest';
import { write } from '../../../src/words/write.ts';
import { noteOf, TWO } from '../subjects.ts';

/** What a text prints of its numbers, or what is told. `fast.peak_temperature` is 71.3 °C ± 2.0 K, `fast.load_power` 5.250 W ± 0.039 W. */
function printed(text: string): string[] {
  const { entries, problems } = write(noteOf(text), TWO);
  return problems.length > 0
    ? problems.map(({ place, found, expected }) => `${place.column} ${found}: ${expected}`)
    : entries.map(({ shown }) => shown.replaceAll('\u00a0', ' '));
}

describe('words/directives/coarser', () => {
  test.each([
    [':value[fast.peak_temperature]', '71.3 °C'],
    [':value[fast.peak_temperature]{to="1 °C"}', '71 °C'],
    [':value[fast.peak_temperature]{to="1 K"}', '71 °C'],
    [':value[fast.peak_temperature]{to="5 °C"}', '70 °C'],
    [':value[fast.peak_temperature]{to="2 °F"}', '160 °F'],
    [':value[fast.load_power]{to="0.1 W"}', '5.2 W'],
    [':value[fast.load_power]{to="100 mW"}', '5200 mW'],
    [':value[fast.load_power]{unit=mW to=500}', '5000 mW'],
    [':value[fast.load_power / rated.load_power]{to=0.1}', '1.3'],
    [':value[fast.load_power / rated.load_power]{to="5 %"}', '135 %'],
    [':value[fast.setting.clock]{to="1 GHz"}', '2 GHz'],
  ])('%s prints %s', (text, expected) => {
    expect(printed(text)).toEqual([expected]);
  });

  test.each([
    [':value[fast.load_power]{to="0.0001 W"}', 'the value is not known more closely'],
    [':value[fast.load_power]{to="0.3 W"}', '1, 2 or 5 and their tenfolds'],
    [':value[fast.load_power]{to="0.1"}', 'the unit too: `0.1 W`'],
    [':value[fast.load_power]{to="1 °C"}', 'one of µW, mW, W, kW'],
    [':value[fast.load_power]{to="some W"}', 'a step with its unit'],
    [':value[fast.load_power]{to="0 W"}', 'a step with its unit'],
  ])('%s is refused: %s', (text, expected) => {
    expect(printed(text)).toEqual([expect.stringContaining(expected)]);
  });

  test('the ledger keeps the value as it was before it was rounded', () => {
    const [entry] = write(noteOf(':value[fast.load_power]{to="0.5 W"}'), TWO).entries;
    expect(entry).toMatchObject({ value: 5.25, shown: '5.0\u00a0W' });
  });

  test('a number of a list takes the unit that stands behind its last', () => {
    expect(printed(':stated[5.3]{unit=W is="fast.load_power"} and :stated[3.9 W]{is="rated.load_power"}')).toEqual([
      '5.3',
      '3.9 W',
    ]);
    expect(printed(':stated[5.4]{unit=W is="fast.load_power"}')).toEqual([expect.stringContaining('5.250\u00a0W')]);
  });
});
