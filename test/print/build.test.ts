import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, inject, it } from 'vitest';
import { holdToPages } from '../../src/print/build.ts';

describe('print/build', () => {
  it('publishes no site without one of its pages, and names the kind that has no route', () => {
    const side = mkdtempSync(join(inject('scratch'), 'side-'));
    mkdirSync(join(side, 'runs', 'larch'), { recursive: true });
    writeFileSync(join(side, 'runs', 'larch', 'index.html'), '');
    const run = { kind: 'run', path: 'runs/larch/', blob: '' } as const;
    const missing = { kind: 'not-found', path: '404', blob: '' } as const;
    expect(() => holdToPages(side, [run, missing])).not.toThrow();
    const device = { kind: 'device', path: 'devices/larch/', blob: '' } as const;
    expect(() => holdToPages(side, [run, device])).toThrow(
      'No file below src/pages prints devices/larch/, a page of the kind “device”.',
    );
  });
});
