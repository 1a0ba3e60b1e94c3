import { describe, expect, test } from 'vitest';
import { seriesText } from '../../../src/compute/store/json-text.ts';
import type { RunSeries } from '../../../src/plots/data/series.ts';

const SERIES: RunSeries = {
  format: 1,
  run: 'invented',
  load: null,
  span: 1.5,
  phases: [],
  channels: [{ name: 'soc', quantity: 'temperature', unit: '°C', decimals: 1, t: [0, 1.5], y: [20, 20.5], breaks: [] }],
};

describe('compute/store/json-text', () => {
  test('a series begins with its format, the rest is canonical JSON in one line (RFC 8785: keys in order, no blanks)', () => {
    expect(seriesText(SERIES)).toBe(
      '{"format":1,"channels":[{"breaks":[],"decimals":1,"name":"soc","quantity":"temperature","t":[0,1.5],"unit":"°C","y":[20,20.5]}],"load":null,"phases":[],"run":"invented","span":1.5}\n',
    );
    expect(JSON.parse(seriesText(SERIES))).toEqual(SERIES);
  });
});
