import { describe, expect, it } from 'vitest';
import { expressionInWords, factInWords, figureInWords, heldInWords, nameInWords } from '../../../src/words/expression/in-words.ts';

const ALIASES = new Map([
  ['rated', 'Rated soak'],
  ['fast', 'Fast soak'],
  ['steps', 'Two settings'],
  ['high_clock', 'High clock'],
]);

describe('words/expression/in-words', () => {
  it.each([
    ['fast.peak_temperature', 'peak temperature of Fast soak'],
    ['high_clock.peak_temperature.input_probe', 'peak temperature (input probe) of High clock'],
    ['peak_temperature', 'peak temperature'],
    ['fast.load_power - rated.load_power', 'load power of Fast soak less that of Rated soak'],
    ['fast.load_power / rated.mean_clock', 'load power of Fast soak over mean clock of Rated soak'],
    ['steps.speedup.fast', 'speedup (Fast soak) of Two settings'],
    ['rated.score."wide-copy"', 'score (wide copy) of Rated soak'],
    ['-fast.peak_temperature + 5 K', 'minus peak temperature of Fast soak plus 5\u00a0K'],
    [
      'max(fast.peak_temperature, rated.peak_temperature)',
      'greatest of peak temperature of Fast soak, peak temperature of Rated soak',
    ],
    ['(fast.load_power - rated.load_power) / 2', '(load power of Fast soak less that of Rated soak) over 2'],
    ['fast.setting.clock', 'clock setting of Fast soak'],
    ['fast.device.throttle_at', 'throttle limit of Fast soak'],
  ])('%s', (expression, expected) => {
    expect(expressionInWords(expression, ALIASES)).toBe(expected);
  });

  it('says nothing of a condition, or of what cannot be read', () => {
    expect(expressionInWords('fast.load_power < 5 W', ALIASES)).toBe('');
    expect(expressionInWords('fast.', ALIASES)).toBe('');
  });

  it('gives names blanks, and leaves numbers and units in them alone', () => {
    expect(nameInWords('input_current')).toBe('input current');
    expect(nameInWords('grid-relaxation-all-cores')).toBe('grid relaxation all cores');
    expect(nameInWords('"0 mV"')).toBe('0 mV');
    expect(nameInWords('no-1')).toBe('no-1');
    expect(factInWords('device.throttle_at.ssd')).toBe('throttle limit (ssd)');
    expect(factInWords('setting.fan_speed')).toBe('fan speed');
    expect(figureInWords('energy_per_task', 'Wide copy')).toMatch(/ \(Wide copy\)$/);
  });

  it('says what holds a number, with the title of a test or spot', () => {
    expect(heldInWords({ address: 'setting.clock' })).toBe('clock setting');
    expect(heldInWords({ address: 'peak_temperature.input_probe', figure: 'peak_temperature' })).toBe(
      'peak temperature (input probe)',
    );
    expect(heldInWords({ address: 'score."wide-copy"', figure: 'score' }, { test: 'wide-copy', title: 'Wide copy' })).toMatch(
      / \(Wide copy\)$/,
    );
    expect(
      heldInWords(
        { address: 'touch_margin."lid-centre"', figure: 'touch_margin' },
        { spot: 'lid-centre', spot_title: 'Lid centre' },
      ),
    ).toMatch(/ \(Lid centre\)$/);
    expect(heldInWords({ address: 'highest_passed_clock."0 mV"', figure: 'highest_passed_clock' })).toBe(
      'highest passed clock (0 mV)',
    );
  });
});
