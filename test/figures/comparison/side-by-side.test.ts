/** All runs are invented. */
import { describe, expect, test } from 'vitest';
import type { FigureName } from '../../../src/figures/catalogue.ts';
import { alone, type ComparedRun } from '../../../src/figures/comparison/compared.ts';
import { settled } from '../../../src/figures/comparison/settings.ts';
import { differencesTo, sideBySideAddresses } from '../../../src/figures/comparison/side-by-side.ts';
import type { Figure } from '../../../src/figures/figure.ts';
import { isPresent } from '../../../src/figures/figure.ts';
import { standardUncertainty } from '../../../src/quantities/uncertainty.ts';
import { absentAt, figure, part, runOf } from './runs.ts';

const GAIN = 'instrument:meter/power/gain';

/** The differences of one run from another. */
function differencesOf(rated: ComparedRun, other: ComparedRun): ReadonlyMap<string, Figure> {
  const { reference, others } = settled({ id: 'steps', reference: alone(rated), others: [alone(other)] });
  return differencesTo(reference, others).get(others[0]!)!;
}

function power(value: number, at = 'board input'): Figure {
  const parts = [part(GAIN, 0.02 * value), part(`run:${value}/load_power/sampling`, 0.01)];
  return figure('load_power', { value, unit: 'W', parts }, { channel: 'input', at });
}

function peak(value: number, id: string): Figure {
  const quantity = { value, unit: '°C', parts: [part(`run:${id}/peak_temperature/sampling`, 0.2)], repeatabilityOnly: true };
  return figure('peak_temperature', quantity, { channel: 'soc' });
}

function verdictAt(figures: ReadonlyMap<string, Figure>, address: string): unknown {
  return figures.get(address)?.of?.verdict;
}

describe('figures/comparison/side-by-side', () => {
  test('addresses stand in the order of a test sheet, a channel under its figure, phases but the load left out', () => {
    const any = figure('score', { value: 1, unit: '1', parts: [] });
    const of = (name: FigureName, channel: string) => figure(name, { value: 1, unit: '1', parts: [] }, { channel });
    const fast = runOf('fast', {
      more: {
        'energy.load': of('energy', 'input'),
        energy: of('energy', 'input'),
        mean_clock: of('mean_clock', 'clock'),
        'mean_clock.idle': of('mean_clock', 'clock'),
        'peak_temperature.ssd': of('peak_temperature', 'ssd'),
        peak_temperature: of('peak_temperature', 'soc'),
        'score.x': any,
      },
    });
    const rated = runOf('rated', { more: { 'peak_temperature.board': of('peak_temperature', 'board') } });
    expect(sideBySideAddresses([rated, fast])).toEqual([
      'peak_temperature.board',
      'peak_temperature.ssd',
      'peak_temperature',
      'mean_clock',
      'energy.load',
    ]);
  });

  // JCGM 100:2008, 5.2.2: of 10.3 W and 10 W a gain error of 2 % leaves 2 % of 0.3 W, beside the two scatters.
  test('what two figures share cancels in their difference', () => {
    const found = differencesOf(
      runOf('rated', { more: { load_power: power(10) } }),
      runOf('fast', { more: { load_power: power(10.3) } }),
    );
    const difference = found.get('load_power')!;
    if (!isPresent(difference)) throw new Error('absent');
    expect(difference.quantity.value).toBeCloseTo(0.3, 12);
    expect(standardUncertainty(difference.quantity)).toBeCloseTo(Math.hypot(0.02 * 0.3, 0.01, 0.01), 12);
    expect(difference.of).toEqual({
      run: 'fast',
      reference: 'rated',
      channel: 'input',
      at: 'board input',
      between_runs: 'unknown',
      verdict: 'these two runs differ',
    });
    expect(difference.from.figures).toEqual(['r-fast/load_power', 'r-rated/load_power']);
  });

  // u = √2 · 0.2 K: the 95 % interval reaches 1.96 u = 0.554 K.
  test.each([
    [60.5, 'these two runs do not differ'],
    [60.6, 'these two runs differ'],
    [59.4, 'these two runs differ'],
  ])('a peak of %f °C against 60 °C is %s, in kelvin', (value, verdict) => {
    const found = differencesOf(
      runOf('rated', { more: { peak_temperature: peak(60, 'rated') } }),
      runOf('fast', { more: { peak_temperature: peak(value, 'fast') } }),
    );
    expect(found.get('peak_temperature')).toMatchObject({ quantity: { unit: 'K', repeatabilityOnly: true } });
    expect(verdictAt(found, 'peak_temperature')).toBe(verdict);
  });

  test('two sensors of unstated accuracy, in two specimens, tell nothing apart; one meter does', () => {
    const rated = runOf('rated', { more: { peak_temperature: peak(60, 'rated'), load_power: power(10) } });
    const other = runOf('other', {
      specimen: 'no-2',
      more: { peak_temperature: peak(80, 'other'), load_power: power(12) },
    });
    const found = differencesOf(rated, other);
    expect(verdictAt(found, 'peak_temperature')).toBe('cannot be told');
    expect(verdictAt(found, 'load_power')).toBe('these two runs differ');
  });

  test('powers of two places, or surfaces of two spots, are not subtracted: that is said', () => {
    const surface = (spot: string, title: string) =>
      figure('hottest_surface', { value: 50, unit: '°C', parts: [] }, { spot, spot_title: title });
    const found = differencesOf(
      runOf('rated', { more: { load_power: power(10), hottest_surface: surface('lid', 'Lid centre') } }),
      runOf('fast', { more: { load_power: power(12, 'wall'), hottest_surface: surface('base', 'Underside') } }),
    );
    expect(absentAt(found, 'load_power')).toMatchObject({
      absent: 'different-places',
      why: 'Not subtracted: wall in fast, board input in rated.',
    });
    expect(absentAt(found, 'hottest_surface').why).toBe('Not subtracted: Underside in fast, Lid centre in rated.');
  });

  test('a figure that one of the two lacks has no difference: the figure itself says why', () => {
    const missing: Figure = { name: 'load_power', absent: 'no-channel', why: 'The log has no power.' };
    const rated = runOf('rated', { more: { load_power: power(10), peak_temperature: peak(60, 'rated') } });
    expect([...differencesOf(rated, runOf('fast', { more: { load_power: missing } })).keys()]).toEqual([]);
  });
});
