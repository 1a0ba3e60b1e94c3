import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { printQuantity } from '../../../src/quantities/print.ts';
import { unknown } from '../../../src/quantities/uncertainty.ts';
import { isUnread, readStated } from '../../../src/words/stated/read.ts';
import { spoken } from '../../../src/words/stated/spoken.ts';

describe('words/stated/spoken', () => {
  test.each([
    ['58.3 °C', 'fifty-eight point three degrees'],
    ['58.3\u00a0°C', 'fifty-eight point three degrees'],
    ['1 °C', 'one degree'],
    ['1.0 °C', 'one point zero degrees'],
    ['−5.2 °C', 'minus five point two degrees'],
    ['136 °F', 'one hundred and thirty-six degrees Fahrenheit'],
    ['6.1 K', 'six point one kelvin'],
    ['2.6 GHz', 'two point six gigahertz'],
    ['2417 MHz', 'two thousand four hundred and seventeen megahertz'],
    ['2,417 MHz', 'two thousand four hundred and seventeen megahertz'],
    ['41.6 min', 'forty-one point six minutes'],
    ['1 min', 'one minute'],
    ['90 s', 'ninety seconds'],
    ['350 mA', 'three hundred and fifty milliamps'],
    ['12.40 W', 'twelve point four zero watts'],
    ['15.2 Wh', 'fifteen point two watt-hours'],
    ['45 %', 'forty-five percent'],
    ['1.37', 'one point three seven'],
    ['1.04 (the mean clock stands in)', 'one point zero four (the mean clock stands in)'],
    ['5.1 W (the mean power stands in)', 'five point one watts (the mean power stands in)'],
    ['0.36 K/W', 'zero point three six kelvin per watt'],
    ['1 K/W', 'one kelvin per watt'],
    ['812 points', 'eight hundred and twelve points'],
    ['812 points/W', 'eight hundred and twelve points per watt'],
    ['1.2 × 10⁻⁷ A', 'one point two times ten to the minus seven amps'],
    ['not steady', 'not steady'],
    ['', ''],
  ])('%s', (printed, words) => {
    expect(spoken(printed)).toBe(words);
  });

  test('what is said of a printed figure reads back as what is printed', () => {
    const unit = fc.constantFrom('°C', 'K', 'Hz', 'A', 'V', 'W', 'J', 's', '1', 'K/W');
    fc.assert(
      fc.property(fc.double({ min: -1e9, max: 1e9, noNaN: true }), unit, (value, canonical) => {
        const { text } = printQuantity(unknown(value, canonical));
        if (text.includes('×') || /\d{7}/.test(text)) return;
        const [said, printed] = [readStated(spoken(text)), readStated(text)];
        if (isUnread(said) || isUnread(printed)) throw new Error(`${text}: ${spoken(text)}`);
        const { nominal, lower, upper, unit: read } = printed;
        expect({ nominal: said.nominal, lower: said.lower, upper: said.upper, unit: said.unit }).toEqual({
          nominal,
          lower,
          upper,
          unit: read,
        });
      }),
      { numRuns: 500, seed: 4 },
    );
  });
});
