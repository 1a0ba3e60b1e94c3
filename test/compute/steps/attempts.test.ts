import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { computeAttempts } from '../../../src/compute/steps/attempts.ts';
import { readRegister } from '../../../src/register/read.ts';
import type { Register } from '../../../src/register/register.ts';

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-attempts-'));
  mkdirSync(join(root, 'data'), { recursive: true });
});
afterEach(() => rmSync(root, { recursive: true }));

const CONTENT = [
  { path: 'content/devices/larch.md', text: '---\ntitle: Larch\nmaker: Nobody\n---\n' },
  {
    path: 'content/attempts/ladder.md',
    text: '---\ntitle: Ladder\ndevice: larch\nspecimen: no-1\ntable: ladder.csv\npassed:\n  test: integer mix\n  duration: 1 h\n  ambient: 22 °C\n---\n',
  },
];

function register(): Register {
  return readRegister(CONTENT, { kind: () => 'file' }).register;
}

const compute = (code = 'a') => computeAttempts({ root, code, register: register() }).get('ladder')!;
const write = (text: string) => writeFileSync(join(root, 'data', 'ladder.csv'), text);

describe('compute/steps/attempts', () => {
  it('reads the table and derives its figures', () => {
    write('clock,voltage_offset,outcome,note\n2 GHz,0 mV,passed,\n2.2 GHz,0 mV,hung under load,\n');
    const { figures, ladder, problems, sha256 } = compute();
    expect(problems).toEqual([]);
    expect(ladder).toMatchObject({ specimen: 'no-1', file: 'data/ladder.csv' });
    expect(figures.get('highest_passed_clock')).toMatchObject({
      quantity: { value: 2e9 },
      of: { basis: '1 specimen, 1 × 60 min' },
    });
    expect(sha256).toMatch(/^[0-9a-f]{64}$/);
  });

  it('has a key that follows the table and the code', () => {
    write('clock,voltage_offset,outcome,note\n2 GHz,0 mV,passed,\n');
    const first = compute().key;
    expect(compute().key).toBe(first);
    expect(compute('b').key).not.toBe(first);
    write('clock,voltage_offset,outcome,note\n2 GHz,0 mV,throttled,\n');
    expect(compute().key).not.toBe(first);
  });

  it('tells a table that cannot be read at its key, and goes on', () => {
    expect(compute()).toMatchObject({
      ladder: null,
      problems: [{ rule: 'unreadable-file', place: { file: 'content/attempts/ladder.md', line: 5 } }],
    });
  });
});
