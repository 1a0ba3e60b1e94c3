import { describe, expect, it } from 'vitest';
import { read } from '../../../src/intake/read.ts';
import { bytes, channel, declare } from '../declare.ts';

const CHANNELS = [channel('soc', 'temperature', 'soc_c'), channel('flag', 'throttle_flag', 'limit')];
const unread = (text: string, channels = CHANNELS, more = {}) => read(bytes(text), declare(channels, more), 'data/a.csv').unread;

const HEAD = 'time_s,soc_c,limit\n';
const ROWS = '0,40.0,no\n1,41.5,no\n2,42.0,yes\n3,43.0,no\n4,44.0,no\n5,44.5,no\n';
const NOTHING = { columns: 0, lines: 0, cells: 0 };

describe('intake/rows/unread', () => {
  it('finds nothing where the time and channels are all that there is', () => {
    expect(unread(HEAD + ROWS)).toEqual(NOTHING);
    expect(unread(`${HEAD}${ROWS}\n\n`), 'blank lines').toEqual(NOTHING);
    expect(unread(HEAD + ROWS + HEAD + ROWS.replaceAll(/^/gm, '1')), 'the header again').toMatchObject({ columns: 0 });
    expect(unread(`${HEAD.trim()},\n${ROWS.replaceAll('\n', ',\n')}`), 'a delimiter at the end of each line').toEqual(NOTHING);
    expect(unread(`﻿${HEAD}${ROWS}`), 'a byte order mark').toEqual(NOTHING);
  });

  it('takes a date beside a clock time, and a line of units, for read', () => {
    const text =
      'date,clock,soc_c,limit\n,,°C,\n'.replace(',,°C,', '-,-,°C,-') + ROWS.replaceAll(/^(\d),/gm, '2026-03-10,10:00:0$1,');
    expect(unread(text)).toEqual(NOTHING);
  });

  it('counts a column that no channel reads, with or without a name', () => {
    expect(unread(HEAD.replace('\n', ',host\n') + ROWS.replaceAll('\n', ',bench-7\n'))).toEqual({ ...NOTHING, columns: 1 });
    expect(unread(HEAD.replace('\n', ',spare\n') + ROWS.replaceAll('\n', ',\n')), 'empty, but named').toEqual({
      ...NOTHING,
      columns: 1,
    });
    const late = ROWS.replaceAll('\n', ',\n').replace('44.5,no,', '44.5,no,bench-7');
    expect(unread(HEAD.replace('\n', ',\n') + late), 'one cell of a column without a name').toEqual({ ...NOTHING, columns: 1 });
    const bare = channel('soc', 'temperature', 'column 2', { unit: '°C' });
    expect(unread(ROWS, [bare], { time: { column: 'column 1', unit: 's', format: 'elapsed' } })).toEqual({
      ...NOTHING,
      columns: 1,
    });
  });

  it('counts lines above the header and below the rows', () => {
    expect(unread(`host: bench-7\nserial 0042\n${HEAD}${ROWS}`)).toEqual({ ...NOTHING, lines: 2 });
    expect(unread(`${HEAD}${ROWS}log closed by bench-7\n`)).toEqual({ ...NOTHING, lines: 1 });
  });

  it('lets a line with a field too few be, and counts one that holds words or a field too many', () => {
    const between = (line: string) => unread(HEAD + ROWS.replace('3,43.0,no\n', `${line}\n3,43.0,no\n`));
    expect(between('2.5,43.0'), 'the last field is missing').toEqual(NOTHING);
    expect(between('2.5,no'), 'a flag slid left').toEqual(NOTHING);
    expect(between('2.5,bench-7 lost its sensor')).toEqual({ ...NOTHING, lines: 1 });
    expect(between('2.5,43.0,no,8891')).toEqual({ ...NOTHING, lines: 1 });
    expect(unread(`${HEAD}${ROWS}6,4`), 'cut off in a number').toEqual(NOTHING);
    expect(between('192.0.2.17'), 'an address set aside for documents (RFC 5737)').toEqual({ ...NOTHING, lines: 1 });
    expect(between('2.5 192.0.2.17:22')).toEqual({ ...NOTHING, lines: 1 });
  });

  it('counts lines that the author drops by what they hold, as any other', () => {
    const place = { file: 'content/runs/invented.md', line: 9, column: 1 };
    const repairs = [{ kind: 'drop', fromLine: 4, toLine: 4, reason: 'the cable came loose', place }];
    expect(unread(HEAD + ROWS, CHANNELS, { repairs })).toEqual(NOTHING);
    expect(unread(HEAD + ROWS.replace('2,42.0,yes', '2,bench-7,yes'), CHANNELS, { repairs })).toEqual({ ...NOTHING, lines: 1 });
  });

  it('counts a cell of text in a channel, unless the author says that it means no reading', () => {
    const text = HEAD + ROWS.replace('43.0', 'ask bench-7');
    expect(unread(text)).toEqual({ ...NOTHING, cells: 1 });
    const told = [channel('soc', 'temperature', 'soc_c', { missing: ['ask bench-7'] }), CHANNELS[1]!];
    expect(unread(text, told)).toEqual(NOTHING);
  });
});
