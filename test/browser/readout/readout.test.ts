import { describe, expect, test } from 'vitest';
import { lineNames, nearest, within } from '../../../src/browser/readout/lines.ts';
import { linesOf } from '../../../src/browser/readout/read-lines.ts';
import { inScale } from '../../../src/browser/readout/scale.ts';

const CSV = [
  'run,channel,time_min,value,unit,drawn_as',
  'rated,soc,0,27.5,°C,reading',
  'rated,soc,10,59.4,°C,reading',
  'rated,soc,5,44.1,°C,mean of 30 s',
  '"fast, no fan",soc,0,28,°C,reading',
  '"fast, no fan",soc,10,83.9,°C,reading',
  '"fast, no fan",soc,12,81.2,°C,reading',
  '',
].join('\r\n');
const lines = linesOf(CSV);

describe('browser/readout', () => {
  test('a line for each run and channel, of its readings, as the file has them', () => {
    expect(lines.map(({ run, values }) => [run, ...values])).toEqual([
      ['rated', '27.5', '59.4'],
      ['fast, no fan', '28', '83.9', '81.2'],
    ]);
    expect(lineNames(lines)).toEqual(['rated', 'fast, no fan']);
    expect(lineNames(lines.slice(0, 1))).toEqual(['soc']);
  });

  test('at a moment it tells the nearest reading, and none across a gap', () => {
    expect(nearest(lines[1]!, 9, 2)).toEqual(['83.9']);
    expect(nearest(lines[0]!, 5, 2)).toBeNull();
  });

  test('within a span it tells the lowest and the highest', () => {
    expect(within(lines[1]!, [5, 15])).toEqual(['81.2', '83.9']);
    expect(within(lines[1]!, [13, 15])).toBeNull();
  });

  // NIST SP 811 (2008), B.8: t/°F = 1.8 t/°C + 32; an interval of 1 K is one of 1.8 °F.
  test('temperatures in Fahrenheit, differences without the zero', () => {
    expect(inScale('100', '°C', '°F')).toBe('212.0 °F');
    expect(inScale('10', 'K', '°F')).toBe('18.0 °F');
    expect(inScale('2.5', 'GHz', '°F')).toBe('2.5 GHz');
    expect(inScale('83.9', '°C', '°C')).toBe('83.9 °C');
    expect(inScale('1', '1', '°C')).toBe('1');
  });
});
