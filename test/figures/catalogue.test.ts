import katex from 'katex';
import { describe, expect, test } from 'vitest';
import { CATALOGUE, definitionOf, SUBJECTS } from '../../src/figures/catalogue.ts';

describe('the catalogue', () => {
  test('has every thermal, clock and power figure once', () => {
    expect(CATALOGUE.filter(({ subject }) => ['thermal', 'clock', 'power'].includes(subject)).map(({ name }) => name)).toEqual([
      'idle_temperature',
      'peak_temperature',
      'steady_temperature',
      'end_temperature',
      'temperature_rise',
      'time_to_steady_state',
      'time_constant',
      'asymptote_temperature',
      'throttle_headroom',
      'held_at_limit',
      'ambient_ceiling',
      'rise_per_watt',
      'mean_clock',
      'lowest_clock',
      'time_below_setting',
      'throttle_events',
      'time_to_throttle',
      'sustained_ratio',
      'idle_current',
      'load_current',
      'idle_power',
      'load_power',
      'peak_power',
      'energy',
    ]);
    expect(new Set(CATALOGUE.map(({ name }) => name)).size).toBe(CATALOGUE.length);
  });

  test.each(CATALOGUE.map((definition) => [definition.name, definition] as const))(
    '%s is whole, and its formula is sound TeX',
    (_, definition) => {
      expect(SUBJECTS).toContain(definition.subject);
      expect(definition.label).toMatch(/^[a-z]/);
      expect(definition.definition).toMatch(/^[A-Z].*\.$/);
      expect(definition.source).not.toBe('');
      expect(definition.check).not.toBe('');
      expect(definition.absentWhen.length).toBeGreaterThan(0);
      expect(definition.assumptions.length).toBeGreaterThan(0);
      expect(() =>
        katex.renderToString(definition.formula, { output: 'mathml', throwOnError: true, strict: 'error' }),
      ).not.toThrow();
    },
  );

  test('finds a definition by name, and none for an unknown one', () => {
    expect(definitionOf('peak_temperature')?.label).toBe('peak temperature');
    expect(definitionOf('toString')).toBeUndefined();
  });
});
