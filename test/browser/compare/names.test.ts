import { describe, expect, test } from 'vitest';
import { gatherChosen } from '../../../src/browser/compare/chosen.ts';
import { namesOf, underNames } from '../../../src/browser/compare/names.ts';
import { browserRun } from './published.ts';

const named = (...titles: string[]) => [...namesOf(titles.map((title, at) => ({ run: `run-${at}`, title }))).values()];

describe('names of chosen runs', () => {
  test('leave out the words that all titles share at either end', () => {
    expect(named('Rated setting, hour soak', 'Fast setting, hour soak')).toEqual(['Rated', 'Fast']);
    expect(named('Hour soak: rated', 'Hour soak: fast, fan on')).toEqual(['rated', 'fast, fan on']);
    expect(named('Larch, rated, soak', 'Larch, fast, soak')).toEqual(['rated', 'fast']);
  });

  test('are whole titles where a short name would be empty or shared, and of one run', () => {
    expect(named('Rated setting', 'Rated setting, second specimen')).toEqual(['Rated setting', 'Rated setting, second specimen']);
    expect(named('Rated setting, hour soak')).toEqual(['Rated setting, hour soak']);
  });

  test('keep the unit behind a number', () => {
    expect(named('Larch at 2.4 GHz', 'Larch at 2.6 GHz')).toEqual(['2.4 GHz', '2.6 GHz']);
    expect(named('Larch at 2.4 GHz, hour soak', 'Larch at 2.6 GHz, hour soak')).toEqual(['2.4 GHz', '2.6 GHz']);
    expect(named('Larch, 2.4 GHz and 40 mV', 'Larch, 2.6 GHz and 0 mV')).toEqual(['2.4 GHz and 40 mV', '2.6 GHz and 0 mV']);
    expect(named('Clock 2400 MHz soak', 'Clock rated MHz soak')).toEqual(['2400 MHz', 'rated MHz']);
    expect(named('Fan at 100% duty', 'Fan at 100 W duty')).toEqual(['100%', '100 W']);
  });

  test.each([
    ['Larch 2 fan off', 'Larch 2 fan on'],
    ['Larch at 5 W', 'Larch at 7 W'],
    ['Soak 1024', 'Soak 2048'],
    ['Larch 2400, hour soak', 'Larch 2600, hour soak'],
    ['Larch soak', 'Larch 2 soak'],
    ['Larch of 2026-05-01', 'Larch of 2026-05-02'],
    ['Larch fan full', 'Larch fan off', 'Larch fan half'],
  ])('are whole titles where one would be a bare number or shorter than four characters: %s', (...titles) =>
    expect(named(...titles)).toEqual(titles),
  );

  test('have ids behind them where titles are the same', () => {
    expect(named('Soak', 'Soak')).toEqual(['Soak (run-0)', 'Soak (run-1)']);
  });

  test('stand for runs and in what figures are of; addresses stay', () => {
    const gathered = gatherChosen(['larch-rated', 'larch-fast'].map(browserRun), 'larch-rated');
    const shown = underNames(gathered, namesOf(gathered.runs));
    expect(shown.reference).toBe('Rated');
    expect(shown.runs.map(({ alias, run }) => `${alias}: ${run}`)).toEqual(['Rated: larch-rated', 'Fast: larch-fast']);
    expect(Object.keys(shown.figures)).toEqual(Object.keys(gathered.figures));
    const of = Object.values(shown.figures).map((figure) => figure.of?.run);
    expect(new Set(of.filter((run) => run !== undefined))).toEqual(new Set(['Fast']));
  });
});
