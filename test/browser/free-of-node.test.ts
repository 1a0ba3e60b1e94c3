import { globSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importedBy, SRC } from './imports.ts';

describe('what runs in the reader’s browser', () => {
  const entries = globSync(join(SRC, 'browser/*.ts'));

  test('imports nothing of Node, and of the packages only those that are made for browsers, too', () => {
    expect(entries.length).toBeGreaterThan(3);
    const { packages } = importedBy(entries);
    expect([...packages].filter(([name]) => name.startsWith('node:'))).toEqual([]);
    const known = ['minisearch', 'unitmath/es/UnitMath.js', 'vega', 'vega-interpreter', 'vega-lite'];
    expect([...packages].filter(([name]) => !known.includes(name))).toEqual([]);
  });

  test('a plot drawn to a PNG would be found out, at whatever distance', () => {
    expect(importedBy([join(SRC, 'plots/draw.ts')]).packages.get('node:url')).toBe('plots/drawing/png.ts');
  });
});
