import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type RunTask, runStep } from '../../../../src/compute/steps/runs/run-step.ts';
import { digest } from '../../../../src/compute/store/digest.ts';
import { openStore } from '../../../../src/compute/store/store.ts';
import type { ChannelDeclaration, Log } from '../../../../src/intake/log.ts';
import type { Sharing } from '../../../../src/register/register.ts';
import { contextOf, instrumentOf, phase, presentAt } from '../../../figures/build.ts';

let root: string;
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'soakproof-run-'));
  mkdirSync(join(root, 'data'));
});
afterEach(() => rmSync(root, { recursive: true }));

/** A run with one log and one channel. */
function loggedIn(file: string, channel: ChannelDeclaration, sharing: Sharing = {}): Pick<RunTask, 'run' | 'logs' | 'channels'> {
  const declaration = { file, channels: [channel], repairs: [], place: channel.place };
  return { run: 'invented', logs: [{ name: '', declaration, sharing }], channels: [channel] };
}

test('compute/run-step: figures, stored log and page see corrected readings, the file keeps its own, and the range is warned of', () => {
  const text = `t [s],power [W]\n${Array.from({ length: 60 }, (_, t) => `${t},0.40`).join('\n')}\n`;
  writeFileSync(join(root, 'data', 'log.csv'), text);
  const place = { file: 'content/runs/invented.md', line: 3, column: 5 };
  const correction = { power: { value: -0.1, unit: 'W', u: 0.02, text: '−0.10 ± 0.02 W (standard)' } };
  const meter = instrumentOf('meter', 'power', {}, { correction, accurate: { power: { from: 0.35 } } });
  const store = openStore(root);
  const result = runStep(root, store, {
    step: 'run',
    key: 'invented',
    ...loggedIn('log.csv', { name: 'board', quantity: 'power', column: 'power [W]', instrument: 'meter', place }),
    context: contextOf({ instruments: { meter }, phases: [phase('load', 0, 60)] }),
    tables: {},
    digests: { 'log.csv': digest(new TextEncoder().encode(text)) },
  });
  expect(presentAt(result.derived!.figures, 'load_power').quantity.value).toBeCloseTo(0.3, 12);
  expect((store.get(result.log!) as Log).channels[0]!.values[0]).toBeCloseTo(0.3, 12);
  expect(result.summary!.logs[0]!.inferences.map(({ statement }) => statement).join()).toContain('corrected by −0.10 ± 0.02 W');
  expect(result.problems.find(({ rule }) => rule === 'below-accurate-range')).toMatchObject({ severity: 'warning', place });
  expect(readFileSync(join(root, 'data', 'log.csv'), 'utf8')).toBe(text);
  // Whoever computes with the cleaned readings corrects them himself.
  const cleaned = new TextDecoder().decode(store.bytes(result.data![0]!.cleaned!.sha256));
  expect(cleaned.split('\r\n')[1]).toBe('0,0.4,2');
});

test('compute/run-step: a redaction that is a copy of the log is an error, since all of it would go out', () => {
  const text = `t [s],power [W],host\n${Array.from({ length: 60 }, (_, t) => `${t},0.40,bench-7`).join('\n')}\n`;
  const problems = (redacted: string) => {
    const files = { 'log.csv': text, 'redacted.csv': redacted };
    for (const [name, content] of Object.entries(files)) writeFileSync(join(root, 'data', name), content);
    const place = { file: 'content/runs/invented.md', line: 3, column: 5 };
    return runStep(root, openStore(root), {
      step: 'run',
      key: 'invented',
      ...loggedIn(
        'log.csv',
        { name: 'board', quantity: 'power', column: 'power [W]', place },
        { redacted: { file: 'redacted.csv', place } },
      ),
      context: contextOf({ phases: [phase('load', 0, 60)] }),
      tables: {},
      digests: Object.fromEntries(Object.entries(files).map(([name, content]) => [name, digest(Buffer.from(content))])),
    }).problems.filter(({ severity }) => severity === 'error');
  };
  expect(problems(text)).toMatchObject([
    { rule: 'redacted-nothing', found: 'data/redacted.csv is the log itself, byte for byte: nothing is taken out of it' },
  ]);
  expect(problems(text.replaceAll('bench-7', ''))).toEqual([]);
});
