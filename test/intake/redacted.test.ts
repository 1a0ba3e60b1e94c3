import { describe, expect, it } from 'vitest';
import { read } from '../../src/intake/read.ts';
import { checkRedacted } from '../../src/intake/redacted.ts';
import { line } from '../register/base.ts';
import { bytes, channel, declare } from './declare.ts';

const LOG =
  'host bench-7\ntime,soc_c,power_w,user\n2026-03-10 10:00:00,40.0,5.10,kim\n2026-03-10 10:00:01,41.5,,kim\n2026-03-10 10:00:02,42.0,5.20,kim\n';
const declaration = declare([channel('soc', 'temperature', 'soc_c'), channel('input', 'power', 'power_w')], {
  time: { zone: 'UTC' },
});
const place = { file: 'content/runs/invented.md', line: 7, column: 13 };

function problems(redacted: string): string[] {
  const { log } = read(bytes(LOG), declaration, 'data/a.csv');
  return checkRedacted({ file: 'data/a-redacted.csv', bytes: bytes(redacted), place }, declaration, log!).map(line);
}

const RIGHT = LOG.replace('host bench-7\n', '').replaceAll(/,(?:user|kim)$/gm, '');

describe('intake/redacted', () => {
  it('finds the same readings where a line and a column are taken out', () => {
    expect(problems(RIGHT)).toEqual([]);
    expect(problems(LOG.replaceAll('kim', '')), 'or only emptied').toEqual([]);
    expect(problems(RIGHT.replaceAll(',', ';')), 'or written in another way').toEqual([]);
  });

  it('says which cell differs, at its place, once a channel', () => {
    expect(problems(RIGHT.replace('41.5', '41.6').replace('42.0', '42.1').replace('5.20', ''))).toEqual([
      'data/a-redacted.csv:3:21: error: redacted-differs: the column `soc_c` (soc) of the redacted log: 41.6 °C, where line 4 of data/a.csv has 41.5 °C | expected the readings of the log, so that its figures can be computed from either file | take columns, lines and words out that no channel reads, and leave the rest as it is',
      expect.stringMatching(
        /^data\/a-redacted\.csv:4:26: error: .*\(input\) of the redacted log: no reading, where line 5 .* has 5\.2 W/,
      ),
    ]);
  });

  it('says where a row is gone, too many, or at another time', () => {
    const gone = RIGHT.replace(/^2026-03-10 10:00:01.*\n/m, '');
    expect(problems(gone)).toEqual([
      expect.stringMatching(
        /^data\/a-redacted\.csv:3:1: .*row 2 of the redacted log: 2 s since the first row, where line 4 of data\/a\.csv has 1 s/,
      ),
    ]);
    expect(problems(RIGHT.replace(/^2026-03-10 10:00:02.*\n/m, ''))).toEqual([
      expect.stringMatching(
        /^content\/runs\/invented\.md:7:13: .*row 3 of the redacted log: no row since the first row, where line 5 /,
      ),
    ]);
    expect(problems(`${RIGHT}2026-03-10 10:00:03,42.0,5.20\n`)).toEqual([
      expect.stringMatching(/^data\/a-redacted\.csv:5:1: .*row 4 of the redacted log: 3 s .* has no row/),
    ]);
  });

  it('says where a channel is gone', () => {
    expect(problems(RIGHT.replace('power_w', 'power'))).toEqual([
      expect.stringMatching(
        /error: column-not-found: the channel input names the column `power_w`, which data\/a-redacted\.csv does not have/,
      ),
    ]);
  });

  it('says where equal readings would give other figures: fewer digits, another start', () => {
    expect(problems(RIGHT.replace('5.10', '5.1').replace('5.20', '5.2'))).toEqual([
      expect.stringMatching(
        /^content\/runs\/invented\.md:7:13: .*the readings of input are told to 0\.1 W in the redacted log, to 0\.01 W in the log/,
      ),
    ]);
    expect(problems(RIGHT.replaceAll('2026-03-10', '2026-01-01'))).toEqual([
      expect.stringMatching(/^content\/runs\/invented\.md:7:13: .*begins at another instant/),
    ]);
  });

  it('never throws, whatever the bytes', () => {
    for (const text of ['', '\0\0\0', '"', 'a,b\n"1,2\n', '{}'])
      expect(problems(text).every((each) => each.includes(': error: '))).toBe(true);
    expect(problems('').length).toBeGreaterThan(0);
  });
});
