import { describe, expect, it } from 'vitest';
import { read } from '../../../src/intake/read.ts';
import { brief, bytes, channel, declare } from '../declare.ts';

const LOG = bytes('Elapsed [s],SoC [°C]\n0,30.1\n100,31.2\n200,32.3\n');
const phases = (...from: number[]) => ({
  phaseStarts: from.map((each, k) => ({
    name: `p${k}`,
    from: each,
    place: { file: 'content/runs/a.md', line: 20 + k, column: 3 },
  })),
});
const reading = (...from: number[]) =>
  read(LOG, declare([channel('soc', 'temperature', 'SoC [°C]')], phases(...from)), 'data/a.csv');

describe('intake/report/phase-starts', () => {
  it('warns of a phase that begins after the last row, at the phase', () => {
    const { log, problems } = reading(0, 900);
    expect(log).not.toBeNull();
    expect(brief({ problems })).toEqual(['content/runs/a.md:21:3 warning phase-unreached']);
    expect(problems[0]!.found).toBe("phase `p1` begins 700 s after the log's last row");
    expect(problems[0]!.expected).toContain('ends 200 s after its first row');
  });

  it('says nothing of one that begins with the last row', () => {
    expect(reading(0, 200).problems).toEqual([]);
  });
});
