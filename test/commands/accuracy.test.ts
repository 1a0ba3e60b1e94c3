import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { checkText, coverageText } from '../../src/commands/accuracy/text.ts';
import { checkTables } from '../../src/figures/checks/results.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const accuracy = (...args: string[]) =>
  spawnSync(process.execPath, ['test/coverage/accuracy.ts', ...args], { cwd: root, encoding: 'utf8' });

describe('commands/accuracy', () => {
  test('prints each published value beside ours, the coverage, and that all agree', () => {
    const { status, stdout, stderr } = accuracy();
    expect(stderr).toBe('');
    expect(stdout).toContain('NIST BoxBOD: y = b1 · (1 - exp(-b2 · x)), higher difficulty, from both starts');
    expect(stdout).toMatch(/\n {2}u of the deviation from 20 °C, °C +0\.41 +0\.40620\d* +2\.0 +1\.9 +agrees +as printed\n/);
    expect(stdout).toMatch(/\n {2}idle_temperature +\d+\.\d % +of \d+ /);
    expect(stdout).toMatch(/\n\nEvery value agrees as far as it must\.\n$/);
    expect(status).toBe(0);
  });

  test('an option that it does not know', () => {
    const { status, stderr } = accuracy('--coverage', 'many');
    expect(stderr).toContain('takes no option, or -- --coverage [runs [seed]]');
    expect(status).toBe(1);
  });

  test('a value that falls short stands out', () => {
    const [table] = checkTables();
    const rows = table!.rows.map((row) => ({ ...row, agrees: false }));
    expect(checkText({ ...table!, rows })).toMatch(/FALLS SHORT/);
  });

  test('a share outside the band is marked', () => {
    const row = { kind: 'extreme', truth: '', limits: { held: 99, of: 100 }, expanded: { held: 90, of: 100 } };
    expect(coverageText({ runs: 1, seed: 1, figures: { peak_power: row } })).toContain('90.0 % !');
  });
});
