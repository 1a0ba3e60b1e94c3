import { expect, test } from 'vitest';
import { alignLogs } from '../../../../src/compute/steps/runs/align-logs.ts';
import type { RunLog } from '../../../../src/register/register.ts';
import { logsOf, OFF, pairOf } from '../../../figures/alignment/pairs.ts';

const runLog = (name: string, line: number) =>
  ({ name, declaration: { place: { file: 'content/runs/a.md', line, column: 3 } } }) as unknown as RunLog;

test('compute/steps/runs/align-logs: clocks that the load contradicts are told at the log', () => {
  const [device, meter] = logsOf(pairOf(1));
  const { aligned, problems } = alignLogs([
    { run: runLog('device', 5), log: device },
    { run: runLog('meter', 6), log: meter },
  ]);
  expect(aligned?.length).toBe(2);
  expect(problems.map(({ severity, rule, place: { line } }) => `${line} ${severity} ${rule}`)).toEqual(['6 warning clocks-apart']);
  const [, seconds] = /the load begins or ends ([\d.]+) s before the log `device` shows it$/.exec(problems[0]!.found) ?? [];
  expect(Math.abs(Number(seconds) - OFF)).toBeLessThan(2);
});
