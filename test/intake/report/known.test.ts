import { describe, expect, it } from 'vitest';
import type { Known } from '../../../src/intake/log.ts';
import { read } from '../../../src/intake/read.ts';
import { brief, bytes, channel, declare, RUN } from '../declare.ts';

const CHANNELS = [channel('soc', 'temperature', 'Temp [°C]')];
const known = (fromLine: number, toLine = fromLine, line = 9): Known => ({
  fromLine,
  toLine,
  reason: 'The logger was restarted.',
  place: { ...RUN, line },
});
/** A row every 10 s; a gap before line 8, a ragged row on line 10, a reading that is none on line 12. */
const rows = Array.from({ length: 14 }, (_, k) => [k < 6 ? k * 10 : k * 10 + 600, `${40 + k}`]);
const LOG = ['Time [s],Temp [°C]', ...rows.map(([t, x], k) => (k === 8 ? `${t}` : k === 10 ? `${t},E77` : `${t},${x}`))]
  .concat('')
  .join('\n');
const reading = (text: string, ...entries: Known[]) =>
  read(bytes(text), declare(CHANNELS, entries.length > 0 ? { known: entries } : {}), 'data/a.csv');

describe('intake/report/known', () => {
  it('warns of a gap, a ragged row and an unreadable cell while nobody says why', () => {
    const { log, problems } = reading(LOG);
    expect(brief({ problems })).toEqual([
      'data/a.csv:8:1 warning time-gap',
      'data/a.csv:10:1 warning field-count',
      expect.stringMatching(/^data\/a\.csv:12:\d+ warning /),
    ]);
    expect(problems.map(({ remedy }) => remedy).slice(0, 2)).toEqual([
      expect.stringContaining('`known`'),
      expect.stringContaining('`known`'),
    ]);
    expect(log?.known).toBeUndefined();
  });

  it('keeps the words of the log to itself: what was found is printed, also of a log that is not offered', () => {
    const told = read(
      bytes('Time [s],Temp [°C]\n0,50\n1,host-17\nbob logs in,51\n3,50\n4,50\n5,50\n6,50\n'),
      declare([channel('soc', 'temperature', 'Temp [°C]')], { known: [known(3), known(4)] }),
      'data/a.csv',
    ).log!;
    expect(told.known?.map(({ found }) => found)).toEqual([
      ['channel soc: the reading is not a number'],
      ['the time cannot be read'],
    ]);
    expect(told.setAside.map(({ line, reason }) => `${line}: ${reason}`)).toEqual([
      '3: channel soc: the reading is not a number',
      '4: the time cannot be read',
    ]);
  });

  it('is silent about what is known, keeps it aside all the same, and tells what was found there', () => {
    const plain = reading(LOG);
    const { log, problems } = reading(LOG, known(8), known(10, 12));
    expect(problems).toEqual([]);
    expect(log?.setAside).toEqual(plain.log?.setAside);
    expect(log?.time.gaps).toEqual(plain.log?.time.gaps);
    expect(log?.channels).toEqual(plain.log?.channels);
    expect(log?.known?.map(({ found }) => found)).toEqual([
      ['a gap of 610 s'],
      ['1 field where the other rows have 2', expect.stringContaining('soc')],
    ]);
  });

  it('warns of the next gap and the next ragged row, which nobody knew of', () => {
    const longer = `${LOG}9000,50\n9010\n9020,51\n9030,52\n`;
    const { problems } = reading(longer, known(8), known(10, 12));
    expect(brief({ problems })).toEqual(['data/a.csv:16:1 warning time-gap', 'data/a.csv:17:1 warning field-count']);
    expect(problems.map(({ found }) => found)).toEqual([
      expect.stringMatching(/^a gap: /),
      '1 field where the other rows have 2; set aside',
    ]);
  });

  it('takes a channel that has few readings, and warns where it has not', () => {
    const sparse = ['Time [s],Temp [°C]', ...Array.from({ length: 12 }, (_, k) => `${k},${k % 3 === 0 ? 40 + k : ''}`)]
      .concat('')
      .join('\n');
    const entry: Known = { channel: 'soc', reason: 'The sensor answers every third second.', place: { ...RUN, line: 9 } };
    const [warned] = reading(sparse).problems;
    expect(warned).toMatchObject({ rule: 'many-missing', found: 'the channel soc has no reading in 8 of 12 rows' });
    expect(warned?.remedy).toContain('`channel: soc`');
    const { log, problems } = reading(sparse, entry);
    expect(problems).toEqual([]);
    expect(log?.known?.map(({ found }) => found)).toEqual([['no reading in 8 of 12 rows']]);
    expect(reading('Time [s],Temp [°C]\n0,40\n1,41\n2,42\n', entry).problems.map(({ rule, found }) => [rule, found])).toEqual([
      ['known-idle', 'the channel soc has readings in most rows of a.csv: nothing is warned of it'],
    ]);
    expect(
      reading(sparse, { ...entry, channel: 'board' })
        .problems.map(({ rule }) => rule)
        .sort(),
    ).toEqual(['known-idle', 'many-missing']);
  });

  it('says which entry stands for nothing, and never hides an error', () => {
    const { problems } = reading(LOG, known(8), known(10, 12), known(3, 4, 13));
    expect(problems).toEqual([
      {
        severity: 'warning',
        rule: 'known-idle',
        place: { ...RUN, line: 13 },
        found: 'nothing of what is warned of stands on lines 3 to 4 of a.csv',
        remedy: 'correct the lines, or remove this entry',
      },
    ]);
    const empty = read(bytes('Time [s],Other\n0,1\n'), declare(CHANNELS, { known: [known(1, 99)] }), 'data/a.csv');
    expect(empty.log).toBeNull();
    expect(empty.problems.some(({ severity }) => severity === 'error')).toBe(true);
  });
});
