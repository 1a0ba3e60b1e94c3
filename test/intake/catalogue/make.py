#!/usr/bin/env python3
"""Writes the logs of this folder, and beside each what must be read from it.

Every log is invented. The readings below are the truth; a log is the truth written down in one of the ways of real loggers, and the
expectation is computed here from the truth, in exact fractions, by nothing of the project's own code. Run: python3 make.py, then npm run format.
"""
import json
import os
from fractions import Fraction as Q

HERE = os.path.dirname(os.path.abspath(__file__))
T = '48.2 48.9 50.4 53.1 55.8 57.3 58.2 58.9 59.3 59.6 59.7 59.8'.split()
B = '31.0 31.1 31.4 31.9 32.5 33.2 33.8 34.1 34.5 34.6 34.8 34.9'.split()
P = '4.1 4.2 7.8 8.1 8.2 8.3 8.3 8.4 8.4 8.4 8.5 8.5'.split()
F = '600 600 1800 1800 1800 1800 1800 1800 1700 1700 1700 1700'.split()
N = 12
made = set()


def value(text, factor=1, offset=0):
    return Q(text) * Q(factor) + Q(offset)


def column(quantity, unit, texts, factor=1, offset=0):
    """Statistics of a column in its canonical unit; None is no reading."""
    values = [None if t is None else value(t, factor, offset) for t in texts]
    known = [v for v in values if v is not None]
    return {
        'quantity': quantity, 'unit': unit, 'count': len(known), 'missing': len(values) - len(known),
        'first': float(known[0]), 'last': float(known[-1]), 'min': float(min(known)), 'max': float(max(known)),
        'mean': float(sum(known) / len(known)),
    }


def temp(texts=T):
    return column('temperature', '°C', texts)


def power(texts=P, factor=1):
    return column('power', 'W', texts, factor)


def clock(texts=F, factor=10**6):
    return column('clock', 'Hz', texts, factor)


def axis(name, form, step=1, span=None, start=None, **more):
    return {'column': name, 'format': form, 'step': step, 'span': (N - 1) * step if span is None and step is not None else span, 'start': start, **more}


def put(name, body, shows, expected, encoding='utf-8'):
    assert name not in made, name
    made.add(name)
    data = body if isinstance(body, bytes) else body.encode(encoding)
    with open(os.path.join(HERE, name + '.csv'), 'wb') as file:
        file.write(data)
    with open(os.path.join(HERE, name + '.json'), 'w', encoding='utf-8') as file:
        json.dump({'shows': shows, **expected}, file, ensure_ascii=False, indent=2)
        file.write('\n')


def log(name, body, shows, time, columns, rows=N, typed=None, aside=None, told=None, left=None, says=None, encoding='utf-8'):
    """A log that must be read. aside: line -> reason; told: rules of warnings; left: columns that are left out; says: methods of inferences."""
    put(name, body, shows, {
        'typed': typed or {}, 'time': time, 'rows': rows, 'columns': columns,
        'setAside': aside or {}, 'told': told or [], 'leftOut': left or [], 'says': says or [],
    }, encoding)


def refuse(name, body, shows, rule, found, write, encoding='utf-8'):
    """A log that must be refused. write: what the remedy tells the tester to write or do."""
    put(name, body, shows, {'refused': {'rule': rule, 'found': found, 'write': write}}, encoding)


def lines(*rows, end='\n', last=True):
    text = end.join(rows)
    return text + (end if last else '')


def table(head, rows, sep=',', end='\n', last=True):
    return lines(*([sep.join(head)] if head else []), *[sep.join(row) for row in rows], end=end, last=last)


def hms(second, start=9 * 3600):
    second += start
    return '%02d:%02d:%02d' % (second // 3600 % 24, second // 60 % 60, second % 60)


S = [str(k) for k in range(N)]
STAMP = ['2026-03-14 ' + hms(k) for k in range(N)]
PLAIN = list(zip(S, T, P))
CIVIL = axis('time', 'iso8601')
ELAPSED = axis('t_s', 'elapsed')
SOC, POW = {'soc_c': temp()}, {'soc_c': temp(), 'power_w': power()}
EPOCH = 1773480000

# --- 1. Forms -----------------------------------------------------------------------------------------------------------------------
log('form-series', table(['t_s', 'soc_c', 'power_w'], PLAIN), 'a row a sample, with a time', ELAPSED, POW)
refuse('form-results', table(['test', 'run', 'value', 'unit'], [['pack', str(1 + k % 3), str(100 + k), 'MB/s'] for k in range(9)]),
       'a table of benchmark results, no time', 'time-column-missing', 'test', 'scores')
refuse('form-matrix', lines(*[','.join('%.1f' % (24 + (r * 7 + c * 3) % 11 / 10) for c in range(12)) for r in range(9)]),
       'a thermal picture as a matrix of numbers', 'not-a-log', 'matrix', 'surface')
refuse('form-matrix-trailing', lines(*[';'.join('%.1f' % (24 + (r * 7 + c * 3) % 11 / 10) for c in range(12)) + ';' for r in range(9)]),
       'a matrix whose lines end in a delimiter', 'not-a-log', 'matrix', 'surface')
refuse('form-blocks', lines(*[line for k in range(6) for line in ('Time: %s' % hms(k), 'Core temperature: %s C' % T[k], 'Fan: %d rpm' % (1500 + k), '')]),
       'repeated blocks of key and value', 'not-a-log', 'key-value', 'one row a sample')
refuse('form-prose', lines('We let it run all night.', 'In the morning it was still at 61 degrees.', 'The fan had not stopped once.'),
       'free text', 'not-a-log', 'no line looks like', 'one row a sample')
KEYED = ["time=%s temp=%s'C clock=%s flags=0x0" % (STAMP[k].replace(' ', 'T'), T[k], F[k]) for k in range(N)]
log('form-key-cells', lines(*KEYED), 'every cell as key=value, without a header', CIVIL,
    {'temp': temp(), 'clock': clock(), 'flags': column('throttle_flag', '1', ['0'] * N)}, typed={'channels': {'clock': {'unit': 'MHz'}}},
    says=['keys-in-cells'])
log('form-no-time', table(['soc_c', 'power_w'], list(zip(T, P))), 'numbers without a time: the step is stated',
    axis('(row number)', 'elapsed', 2), POW, typed={'time': {'every': '2 s'}}, says=['stated-step'])
refuse('form-no-time-undeclared', table(['soc_c', 'power_w'], list(zip(T, P))), 'numbers without a time, and nothing stated',
       'time-column-missing', 'looks like a time', 'every: 1 s')
refuse('form-xy', table(['angle', 'lift'], [[str(k * 5), str(k * k)] for k in range(9)]), 'an x-y table without time',
       'time-column-missing', 'looks like a time', 'every: 1 s')
log('form-one-row', table(['t_s', 'soc_c'], [['0', '50.5']]), 'one row', {**axis('t_s', 'elapsed', None, 0)},
    {'soc_c': temp(['50.5'])}, rows=1, told=['few-rows'])
log('form-header-only', 'time;soc;power\n', 'a header and no row', axis('time', 'elapsed', None, None), {}, rows=0, told=['few-rows'], left=['soc', 'power'])
wide = ['t_s'] + ['Sensor %d [°C]' % k for k in range(1, 523)]
log('form-wide', table(wide, [[S[k]] + ['%d.%d' % (20 + k, j % 10) for j in range(522)] for k in range(N)]), '523 columns', ELAPSED,
    {'Sensor %d [°C]' % j: temp(['%d.%d' % (20 + k, (j - 1) % 10) for k in range(N)]) for j in range(1, 523)})
LONG = [[STAMP[k], name, v] for k in range(N) for name, v in (('soc', T[k]), ('board', B[k]))]
refuse('form-long', table(['time', 'sensor', 'reading_c'], LONG), 'channel names in a column, several rows an instant', 'long-form',
       'sensor', 'sensor: soc')
log('form-long-declared', table(['time', 'sensor', 'reading_c'], LONG), 'the same, one channel named', CIVIL, {'reading_c': temp()},
    typed={'rows': {'sensor': 'soc'}}, left=['sensor'], says=['rows-where'])
GPU = [[STAMP[k], str(j), v, w] for k in range(N) for j, v, w in ((0, T[k], P[k]), (1, B[k], '2.%d' % (k % 10)), (2, '40.0', '1.5'))]
refuse('form-two-devices', table(['time', 'gpu_index', 'temp_c', 'power_w'], GPU), 'three devices by an index column', 'long-form',
       'gpu_index', 'gpu_index: 0')
log('form-two-devices-declared', table(['time', 'gpu_index', 'temp_c', 'power_w'], GPU), 'the same, one device named', CIVIL,
    {'temp_c': temp(), 'power_w': power()}, typed={'rows': {'gpu_index': '0'}}, says=['rows-where'])
APART = [['%s.%d' % (STAMP[k], 1 + 4 * j), name, v] for k in range(N) for j, (name, v) in enumerate((('alder', T[k]), ('birch', B[k])))]
refuse('form-two-devices-apart', table(['time', 'device', 'temp_c'], APART), 'two devices in turn, each at its own instants', 'long-form',
       'device', 'device: alder')

refuse('form-key-prose', lines(*['Reading %d: soc=%s C board=%s C after %d s' % (k, T[k], B[k], k) for k in range(N)]),
       'free text lines with pairs of key and value', 'not-a-log', 'key-value', 'one row a sample')
refuse('form-objects', lines(*['{"t": %d, "soc_c": %s}' % (k, T[k]) for k in range(N)]), 'an object a line (JSON)', 'not-a-log', 'JSON', 'script')

# --- 2. Bytes -----------------------------------------------------------------------------------------------------------------------
DEG = ['t_s', 'soc [°C]', 'power [W]']
DEGREES = {'soc [°C]': temp(), 'power [W]': power()}
log('bytes-utf8', table(DEG, PLAIN), 'degree sign in UTF-8', ELAPSED, DEGREES)
log('bytes-cp1252', table(DEG, PLAIN), 'degree sign as byte B0', ELAPSED, DEGREES, encoding='cp1252', says=['encoding'])
log('bytes-one-character', table(['t_s', 'soc [℃]', 'power [W]'], PLAIN), 'degree sign as U+2103', ELAPSED,
    {'soc [℃]': temp(), 'power [W]': power()})
log('bytes-apostrophe', table(['t_s', "soc ['C]", 'power [W]'], PLAIN), "'C for the degree", ELAPSED, {"soc ['C]": temp(), 'power [W]': power()})
log('bytes-legacy-double', table(['t_s', 'soc[℃]', 'power[W]'], PLAIN), 'degree sign as two bytes of an East Asian encoding', ELAPSED,
    {'power[W]': power()}, encoding='gb18030', says=['encoding'])
log('bytes-mark', table(DEG, PLAIN), 'UTF-8 with a byte-order mark', ELAPSED, DEGREES, encoding='utf-8-sig')
log('bytes-utf16', table(DEG, PLAIN, sep='\t'), 'UTF-16 with a mark and tabs', ELAPSED, DEGREES, encoding='utf-16', says=['encoding'])
log('bytes-utf16-bare', table(DEG, PLAIN).encode('utf-16-le'), 'UTF-16 without a mark', ELAPSED, DEGREES, says=['encoding'])
log('bytes-crlf', table(DEG, PLAIN, end='\r\n'), 'CR LF', ELAPSED, DEGREES)
log('bytes-no-newline', table(DEG, PLAIN, last=False), 'no newline at the end, and the last row ends as the others do', ELAPSED, DEGREES)
log('bytes-nul-tail', (table(DEG, PLAIN) + '12,59').encode() + b'\0' * 512, 'a run of NUL bytes at the end', ELAPSED, DEGREES,
    aside={'14': 'cut off'}, told=['last-line-cut', 'nul-tail'])
log('bytes-rubbish', table(['t_s', 'soc_c', 'note'], [(S[k], T[k], 'ok' if k != 5 else '\x8d\x81\x90') for k in range(N)]).encode('latin-1'),
    'rubbish bytes in one cell', ELAPSED, {'soc_c': temp()}, told=['mixed-encoding'], left=['note'], says=['encoding'])
log('bytes-two-encodings', lines('t_s,soc [°C],note').encode() + b''.join(('%s,%s,%s\n' % (S[k], T[k], 'h\u00f6her' if k == 6 else 'ok')).encode('latin-1') for k in range(N)),
    'two encodings in one file', ELAPSED, {'soc [°C]': temp()}, told=['mixed-encoding'], left=['note'], says=['encoding'])
glued = [','.join(row) for row in zip(STAMP, T, P)]
log('bytes-glued', lines('time,soc_c,power_w', *glued[:5], glued[5] + glued[6], *glued[7:]), 'two records on a line: a newline was lost',
    axis('time', 'iso8601', 1), {'soc_c': temp(T[:5] + T[7:]), 'power_w': power(P[:5] + P[7:])}, rows=10,
    aside={'7': '5 fields where the other rows have 3'}, told=['field-count'])
log('bytes-blank-lines', lines('', 't_s,soc_c,power_w', '', *[','.join(r) for r in PLAIN[:6]], '', *[','.join(r) for r in PLAIN[6:]], '', ''),
    'blank lines first, in the middle and last', ELAPSED, POW, says=['header-line'])

import gzip
PLAIN_TEXT = table(DEG, PLAIN).encode()
PACKED = gzip.compress(PLAIN_TEXT, mtime=0)
log('bytes-gzip', PACKED, 'a log packed with gzip', ELAPSED, DEGREES, says=['gzip'])
log('bytes-gzip-members', b''.join(gzip.compress(line, mtime=0) for line in PLAIN_TEXT.splitlines(keepends=True)),
    'packed line by line, as a logger appends: a member a line', ELAPSED, DEGREES, says=['gzip'])
refuse('bytes-gzip-cut', PACKED[:-20], 'packed, and the end is missing', 'packed-unreadable', 'cut off or damaged', 'gzip -dc')
refuse('bytes-gzip-damaged', PACKED[:-6] + bytes([PACKED[-6] ^ 1]) + PACKED[-5:], 'packed, and the checksum is wrong', 'packed-unreadable', 'cut off or damaged', 'gzip -dc')

# --- 3. Structure -------------------------------------------------------------------------------------------------------------------
log('shape-no-header', table(None, zip(STAMP, T, F)), 'no header', axis('column 1', 'iso8601'),
    {'column 2': temp()},
    typed={'channels': {'column 2': {'quantity': 'temperature', 'unit': '°C'}}}, says=['no-header'])
prose = ['Bench logger, channel card of our own making', 'Serial no.: 17', '*** start of recording ***', '']
log('shape-header-later', lines(*prose, 't_s,soc_c,power_w', *[','.join(r) for r in PLAIN]), 'the header below prose', ELAPSED, POW, says=['header-line'])
log('shape-header-60', lines(*['Setting %d: %d' % (k, k * k) for k in range(1, 60)], 't_s,soc_c,power_w', *[','.join(r) for r in PLAIN]),
    'the header on line 60', ELAPSED, POW, says=['header-line'])
log('shape-marker', lines('t_s,soc_c,power_w', '# recording starts', *[','.join(r) for r in PLAIN]), 'a marker line between header and rows',
    ELAPSED, POW, says=['marker-lines'])
log('shape-single-field', lines('t_s,soc_c,power_w', 'BEGIN', '=====', *[','.join(r) for r in PLAIN]), 'single-field lines between header and rows',
    ELAPSED, POW, says=['marker-lines'])
log('shape-header-again', lines('t_s,soc_c,power_w', *[','.join(r) for r in PLAIN[:6]], 't_s,soc_c,power_w', *[','.join(r) for r in PLAIN[6:]], 't_s,soc_c,power_w'),
    'the header again among the rows and at the end', ELAPSED, POW, says=['repeated-header'])
log('shape-header-late', lines(*[','.join(r) for r in PLAIN[:4]], 't_s,soc_c,power_w', *[','.join(r) for r in PLAIN[4:]]),
    'rows of an earlier recording above the header', ELAPSED, POW, says=['header-below'])
log('shape-footer', lines('t_s,soc_c,power_w', *[','.join(r) for r in PLAIN], '', 'Recording ended 2026-03-14', 'soc: sensor on the die'),
    'a footer', ELAPSED, POW, says=['footer'])
log('shape-units-line', lines('time\tsoc\tboard\tinput', 's\t°C\t°C\tmA', *['\t'.join(r) for r in zip(S, T, B, F)]), 'names on one line, units on the next',
    axis('time', 'elapsed'), {'soc': temp(), 'board': temp(B), 'input': column('current', 'A', F, '1/1000')}, says=['units-line'])
refuse('shape-fewer-names', table(['t_s', 'soc_c'], [(S[k], T[k], P[k]) for k in range(N)]), 'fewer names than fields in every row',
       'names-and-fields-disagree', '2 names', 'mend the logger')
log('shape-column-added', lines('t_s,soc_c,power_w', *[','.join(r) for r in PLAIN[:7]], *[','.join((*PLAIN[k], '21.5')) for k in range(7, N)]),
    'a column added half way without a new header', ELAPSED, POW, told=['field-count-changed'])
log('shape-column-added-early', lines('t_s,soc_c,power_w', *[','.join(r) for r in PLAIN[:3]], *[','.join((*PLAIN[k], '21.5')) for k in range(3, N)]),
    'a column added after a few rows: the header\'s width counts', ELAPSED, POW, told=['field-count-changed'])
log('shape-column-inserted', lines('t_s,soc_c,fan_c', *['%s,%s,%s' % (S[k], T[k], B[k]) for k in range(7)], *['%s,%s,%s,%s' % (S[k], T[k], B[k], '33.1') for k in range(7, N)]),
    'a column added, and which one it is cannot be told', axis('t_s', 'elapsed', 1, 6), {'soc_c': temp(T[:7]), 'fan_c': temp(B[:7])}, rows=7,
    aside={str(k): '4 fields where the other rows have 3' for k in range(9, 14)}, told=['field-count', 'field-count-changed'])
short = [','.join(r) for r in zip(S, T, B, P)]
short[4] = ','.join((S[4], T[4], P[4]))
short[8] = ','.join((S[8], T[8], B[8], P[8], '7'))
keep = [k for k in range(N) if k not in (4, 8)]
log('shape-missing-field', lines('t_s,soc_c,board_c,power_w', *short), 'a sensor left out of one row, a field too many in another', ELAPSED,
    {'soc_c': temp([T[k] for k in keep]), 'board_c': temp([B[k] for k in keep]), 'power_w': power([P[k] for k in keep])}, rows=10,
    aside={'6': '3 fields', '10': '5 fields'}, told=['field-count', 'field-count'])
log('shape-trailing', lines('t_s,soc_c,power_w,', *[','.join(r) + ',' for r in PLAIN]), 'a delimiter at the end of every line', ELAPSED, POW)
log('shape-same-names', table(['t_s', 'temp [°C]', 'temp [°C]'], zip(S, T, B)), 'the same name twice', ELAPSED,
    {'temp [°C] (1)': temp(), 'temp [°C] (2)': temp(B)})
log('shape-quoted-names', lines('t_s,"soc, upper [°C]","power, 12,5 V rail [W]"', *[','.join(r) for r in PLAIN]), 'commas inside quoted names', ELAPSED,
    {'soc, upper [°C]': temp(), 'power, 12,5 V rail [W]': power()})
COMMA = [[x.replace('.', ',') for x in row] for row in PLAIN]
log('shape-semicolon', table(['t_s', 'soc_c', 'power_w'], PLAIN, sep=';'), 'semicolons and a decimal point', ELAPSED, POW)
log('shape-semicolon-comma', table(['t_s', 'soc_c', 'power_w'], COMMA, sep=';'), 'semicolons and a decimal comma', ELAPSED, POW, says=['decimal-mark'])
log('shape-quoted-comma', table(['t_s', 'soc_c', 'power_w'], [[r[0]] + ['"%s"' % x for x in r[1:]] for r in COMMA]),
    'commas as delimiter and quoted decimal commas', ELAPSED, POW, says=['decimal-mark'])
log('shape-blanks', lines('t_s   soc_c   power_w', *['%-6s%-8s%s' % r for r in PLAIN]), 'runs of blanks', ELAPSED, POW)
log('shape-padded', lines('t_s , soc_c , power_w', *['%4s , %6s , %5s' % r for r in PLAIN]), 'cells padded on both sides', ELAPSED, POW)
log('shape-sensor-order', table(['t_s', 'Sensor 3 [°C]', 'Sensor 1 [°C]'], zip(S, T, B)), 'sensor columns out of order', ELAPSED,
    {'Sensor 3 [°C]': temp(), 'Sensor 1 [°C]': temp(B)})

log('shape-space-after', lines('t_s, soc_c, power_w', *[', '.join(r) for r in PLAIN]), 'a space after every comma', ELAPSED, POW)
log('shape-space-after-quoted', lines('t_s, "soc_c", "power_w"', *['%s, "%s", "%s"' % r for r in PLAIN]), 'a space after every comma, and quotes behind it', ELAPSED, POW)
log('shape-first-torn', lines('t_s,soc_c,power_w', '0,48', '0,48.2,4.0,48.2,4.1', *[','.join(r) for r in PLAIN]), 'the first two rows torn, one short and one glued', ELAPSED, POW,
    aside={'2': '2 fields', '3': '5 fields'}, told=['field-count', 'field-count'])
log('shape-hash-header', lines('# board 3', '#time_s,soc_c,power_w', *[','.join(r) for r in PLAIN[:6]], '# load on', *[','.join(r) for r in PLAIN[6:]]),
    'the header behind a hash, a remark between the rows', axis('#time_s', 'elapsed'), POW, aside={'9': '1 field'}, told=['field-count'], says=['header-line'])
refuse('shape-header-reordered', lines('t_s,soc_c,power_w', *[','.join(r) for r in PLAIN[:7]], 't_s,power_w,soc_c', *['%s,%s,%s' % (S[k], P[k], T[k]) for k in range(7, N)]),
       'a second header with the columns in another order', 'header-changed', 'names the columns otherwise', 'drop: 9 .. 14')
refuse('shape-header-other-unit', lines('t_s,soc [°C]', *['%s,%s' % (S[k], T[k]) for k in range(7)], 't_s,soc [°F]', *['%s,%.1f' % (S[k], float(T[k]) * 1.8 + 32) for k in range(7, N)]),
       'a second header with another unit', 'header-changed', 'names the columns otherwise', 'drop: 9 .. 14')
log('shape-delimiter-changes', lines('t_s;soc_c;power_w', *[';'.join(r) for r in PLAIN[:8]], *['\t'.join(r) for r in PLAIN[8:]]), 'the delimiter changes half way: no footer',
    axis('t_s', 'elapsed', 1, 7), {'soc_c': temp(T[:8]), 'power_w': power(P[:8])}, rows=8, aside={str(k): '1 field' for k in range(10, 14)},
    told=['field-count', 'field-count-changed'])
log('shape-unit-label', lines('t_s,soc,input', 'unit,°C,W', *[','.join(r) for r in PLAIN]), 'a line of units that says "unit" first', ELAPSED,
    {'soc': temp(), 'input': power()}, says=['units-line'])

# --- 4. Time ------------------------------------------------------------------------------------------------------------------------
log('time-civil', table(['time', 'soc_c'], zip(STAMP, T)), 'year-month-day and clock, no zone', CIVIL, SOC)
log('time-micro', table(['time', 'soc_c'], [(STAMP[k].replace(' ', 'T') + '.%06d' % (k * 250000 % 1000000), T[k]) for k in range(N)]),
    'with T and microseconds', axis('time', 'iso8601', 1.25, 11.75, first=0), SOC)
log('time-dotted-two', table(['Date', 'Time', 'soc_c'], [('4.3.2026', '9:0:%d.%03d' % (k, 125), T[k]) for k in range(N)], sep=';'),
    'dotted, day first, unpadded h:m:s.fff, in two columns', axis('Date + Time', 'iso8601'), SOC)
log('time-unpadded-ms', table(['Date', 'Time', 'ms', 'soc_c'], [('4.3.2026', '9:0:%d.%d' % (k, 5), str(k * 990), T[k]) for k in range(N)]),
    'a date and a clock beside a column that counts milliseconds', axis('Date + Time', 'iso8601'), SOC, says=['time-beside'])
refuse('time-date-alone', table(['Date', 'Time', 'soc_c'], [('2026-03-14', '9h0m%ds' % k, T[k]) for k in range(N)]),
       'a clock beside the date that cannot be read', 'time-clock-unreadable', 'Time', 'every: 1 s')
log('time-slashes', table(['time', 'soc_c'], [('2026/03/14 9:%02d:%02d' % (k // 60, k % 60), T[k]) for k in range(N)]), 'slashes, year first, unpadded hour', CIVIL, SOC)
LOCAL = [('14.03.2026 %s' % hms(k), '14.03.2026 %s' % hms(k, 8 * 3600), T[k]) for k in range(N)]
refuse('time-two-clocks', table(['local', 'UTC', 'soc_c'], LOCAL), 'local and UTC side by side', 'time-column-undecided', 'local', 'column: "local"')
log('time-two-clocks-named', table(['local', 'UTC', 'soc_c'], LOCAL), 'the same, one named', axis('UTC', 'iso8601', start=1773475200), SOC,
    typed={'time': {'column': 'UTC', 'zone': 'UTC'}}, left=['UTC'])
log('time-elapsed-ms', table(['time_ms', 'soc_c'], [('%06d' % (k * 500), T[k]) for k in range(N)]), 'zero-padded milliseconds', axis('time_ms', 'elapsed', 0.5), SOC)
log('time-trigger', table(['time [s]', 'soc_c'], [(str(k - 3), T[k]) for k in range(N)]), 'negative before a trigger', axis('time [s]', 'elapsed'), SOC)
log('time-date-only', table(['date', 'soc_c'], [('2026-03-%02d' % (k + 1), T[k]) for k in range(N)]), 'a date only, a row a day', axis('date', 'iso8601', 86400), SOC)
refuse('time-date-repeated', table(['date', 'soc_c'], [('2026-03-14', T[k]) for k in range(N)]), 'a date only, the same in every row', 'time-clock-unreadable',
       'date', 'every: 1 s')
log('time-epoch', table(['time', 'soc_c'], [(str(EPOCH + k), T[k]) for k in range(N)]), 'epoch seconds', axis('time', 'epoch', start=EPOCH), SOC)
log('time-epoch-ms', table(['time', 'soc_c'], [(str((EPOCH + k) * 1000), T[k]) for k in range(N)]), 'epoch milliseconds', axis('time', 'epoch', start=EPOCH), SOC)
TORN = ['%d773480' % EPOCH] + [str(EPOCH + k) for k in range(1, N)]
log('time-epoch-torn', table(['time', 'soc_c'], zip(TORN, T)), 'epoch seconds, and the digits of the first are torn', axis('time', 'epoch', span=10, start=EPOCH + 1),
    {'soc_c': temp(T[1:])}, rows=11, aside={'2': 'ahead'}, told=['time-ahead'])
log('time-epoch-glued', table(['time', 'soc_c'], zip(['%d%d' % (EPOCH, EPOCH)] + TORN[1:], T)), 'epoch seconds, and the first is there twice without a mark between',
    axis('time', 'epoch', span=10, start=EPOCH + 1), {'soc_c': temp(T[1:])}, rows=11, aside={'2': 'ahead'}, told=['time-ahead'])
log('time-epoch-ns', table(['time', 'soc_c'], [('%d.%09d' % (EPOCH + k, 0), T[k]) for k in range(N)]), 'epoch with nanoseconds', axis('time', 'epoch', start=EPOCH), SOC)
log('time-zone-after', table(['time', 'soc_c'], [(x + ' CET', T[k]) for k, x in enumerate(STAMP)]), 'a zone abbreviation at the end', CIVIL, SOC)
log('time-zone-before-year', table(['time', 'soc_c'], [('Sat Mar 14 %s CET 2026' % hms(k), T[k]) for k in range(N)]),
    'weekday, month, clock, zone abbreviation, year', CIVIL, SOC)
log('time-twelve', table(['time', 'soc_c'], [('03/14/2026 %s PM' % hms(k), T[k]) for k in range(N)]), 'a twelve-hour clock, month first', CIVIL, SOC)
log('time-offset', table(['time', 'soc_c'], [(STAMP[k].replace(' ', 'T') + '+01:00', T[k]) for k in range(N)]), 'a numeric offset', axis('time', 'iso8601', start=1773475200), SOC)
log('time-offset-z', table(['time', 'soc_c'], [(STAMP[k].replace(' ', 'T') + '+01:00Z', T[k]) for k in range(N)]), 'an offset and Z, which contradict each other',
    CIVIL, SOC, says=['zone-contradiction'])
back = [k if k < 6 else k - 4 for k in range(N)]
log('time-backward', table(['time', 'soc_c'], [(STAMP[back[k]], T[k]) for k in range(N)]), 'the clock runs backward', axis('time', 'iso8601', span=7),
    {'soc_c': temp([T[k] for k in range(N) if k < 6 or k >= 9])}, rows=9, aside={str(k + 2): 'backward' for k in (6, 7, 8)},
    told=['time-backward', 'time-repeated'])
same = [0, 1, 2, 3, 3, 3, 3, 7, 8, 9, 10, 11]
log('time-stall', table(['time', 'soc_c'], [(STAMP[same[k]], T[k]) for k in range(N)]), 'repeated instants', axis('time', 'iso8601'), SOC, told=['time-repeated'])
log('time-gap', table(['time', 'soc_c'], [(STAMP[k] if k < 6 else '2026-03-14 ' + hms(k + 600), T[k]) for k in range(N)]), 'a gap', axis('time', 'iso8601', span=611), SOC,
    told=['time-gap'])
change = [k if k < 24 else 24 + (k - 24) * 5 for k in range(48)]
log('time-step-changed', table(['t_s', 'soc_c'], [(str(x), '%d.5' % (40 + k % 9)) for k, x in enumerate(change)]), 'the interval changed', axis('t_s', 'elapsed', 1, 139),
    {'soc_c': temp(['%d.5' % (40 + k % 9) for k in range(48)])}, rows=48, told=['time-step-changed'])
log('time-counter', lines('Recording started: 2026-03-14 09:00:00', 'seconds,soc_c', *['%d,%s' % (k, T[k]) for k in range(N)], 'Recording ended: 2026-03-14 09:00:15'),
    'a seconds column that counts loops: start and end in the file say 15 s', axis('seconds', 'elapsed'), SOC, told=['time-span-differs'], says=['header-line', 'footer'])
log('time-counter-beside', table(['time', 'seconds', 'soc_c'], [('2026-03-14 ' + hms(k * 3), str(k * 2), T[k]) for k in range(N)]), 'a counter beside a clock, which disagree',
    axis('time', 'iso8601', 3), SOC, told=['time-span-differs'], says=['time-beside'])
log('time-stamp-elapsed', table(['timestamp', 'soc_c'], zip(['%d.25' % k for k in range(N)], T)), '"timestamp" over elapsed seconds', axis('timestamp', 'elapsed'), SOC,
    typed={'time': {'unit': 's'}})
log('time-impossible', table(['time', 'soc_c'], [('2026-03-14 09:99:00' if k == 5 else STAMP[k], T[k]) for k in range(N)]), 'minute 99', CIVIL,
    {'soc_c': temp([T[k] for k in range(N) if k != 5])}, rows=11, aside={'7': 'cannot be read'}, told=['time-unreadable'])
AMB = [('0%d/03/2026 09:00:00' % (k + 1), T[k]) for k in range(9)]
refuse('time-order-unknown', table(['time', 'soc_c'], AMB), 'day and month cannot be told apart', 'date-order-unknown', 'day first or month first', 'date_order: day first')
log('time-order-declared', table(['time', 'soc_c'], AMB), 'the same, decided', axis('time', 'iso8601', 86400, 8 * 86400), {'soc_c': temp(T[:9])}, rows=9,
    typed={'time': {'date_order': 'day first'}})
log('time-midnight', table(['time', 'soc_c'], [(hms(k, 24 * 3600 - 5), T[k]) for k in range(N)]), 'a clock without a date, across midnight', axis('time', 'clock'), SOC, says=['midnight'])
log('time-preamble-date', lines('Date: 2026-03-14', 'time,soc_c', *['%s,%s' % (hms(k), T[k]) for k in range(N)]), 'a clock in the rows, the date above the header',
    axis('time', 'clock', date='2026-03-14'), SOC, says=['header-line', 'date-above'])
log('time-latency', table(['t_s', 'frame time [ms]', 'latency_ms', 'lap time [s]', 'soc_c'], [(S[k], '16.%d' % k, '4.%d' % k, str(60 + k), T[k]) for k in range(N)]),
    'latency, frame time and lap time are no axis', ELAPSED,
    {**SOC, 'frame time [ms]': column('other', 's', ['16.%d' % k for k in range(N)], '1/1000'), 'lap time [s]': column('other', 's', [str(60 + k) for k in range(N)])})
log('time-zone-in-header', table(['time (UTC+01:00)', 'soc_c'], zip(STAMP, T)), 'a zone inside the header cell', axis('time (UTC+01:00)', 'iso8601'), SOC)
log('time-reboots', lines('t_s,soc_c', *['%d,%s' % (k, T[k]) for k in range(7)], 't_s,soc_c', *['%d,%s' % (k, T[7 + k]) for k in range(5)]),
    'the header again after a reboot, and the counter starts anew', axis('t_s', 'elapsed', span=6), {'soc_c': temp(T[:7])}, rows=7,
    aside={str(k): 'backward' for k in range(10, 15)}, told=['time-backward'], says=['repeated-header'])

refuse('time-order-dashed', table(['time', 'soc_c'], [('0%d-03-2026 09:00:00' % (k + 1), T[k]) for k in range(9)]), 'dashes, day or month first',
       'date-order-unknown', 'day first or month first', 'date_order: day first')
WANDER = [('14.03.2026 %s' % hms(k), '14.03.2026 %s' % hms(k + [0, 5, 2, 0, 4][k % 5], 8 * 3600), T[k]) for k in range(N)]
refuse('time-two-clocks-wander', table(['local', 'UTC', 'soc_c'], WANDER), 'local and UTC, and their difference wanders by 5 s', 'time-column-undecided', 'UTC', 'column: "local"')
log('time-gaps', table(['time', 'soc_c'], [('2026-03-14 ' + hms(k + 400 * (k // 4)), T[k]) for k in range(N)]), 'several gaps: a restart, sleep', axis('time', 'iso8601', span=811), SOC, told=['time-gap'])
HOURS = ['%02d:%02d:%02d' % (k // 3600, k // 60 % 60, k % 60) for k in range(86397, 86397 + N)]
log('time-beyond-a-day', table(['elapsed', 'soc_c'], zip(HOURS, T)), 'hours that count on beyond 24', axis('elapsed', 'clock'), SOC, says=['beyond-a-day'])
MINUTES = ['%02d:%02d.5' % (k * 7 // 60, k * 7 % 60) for k in range(N)]
log('time-minutes', table(['time', 'soc_c'], zip(MINUTES, T)), 'minutes and seconds: the fraction proves it', axis('time', 'clock', 7), SOC)
PAIRS = ['00:%02d' % k for k in range(N)]
refuse('time-pair', table(['time', 'soc_c'], zip(PAIRS, T)), 'hours and minutes, or minutes and seconds', 'time-clock-undecided', 'hours and minutes or minutes and seconds', 'unit: min')
log('time-pair-declared', table(['time', 'soc_c'], zip(PAIRS, T)), 'the same, decided', axis('time', 'clock'), SOC, typed={'time': {'column': 'time', 'unit': 'min'}}, left=['time'])
log('time-pair-named', table(['clock', 'soc_c'], zip(PAIRS, T)), 'hours and minutes of a clock', axis('clock', 'clock', 60), SOC)
MILLIS = [str((EPOCH + k) * 1000) for k in range(N)]
refuse('time-epoch-unit', table(['time_s', 'soc_c'], zip(MILLIS, T)), 'epoch milliseconds under a name that says seconds', 'time-unit-conflict', 'counts in ms', 'unit: ms')
log('time-epoch-unit-declared', table(['time_s', 'soc_c'], zip(MILLIS, T)), 'the same, decided', axis('time_s', 'epoch', start=EPOCH), SOC, typed={'time': {'unit': 'ms'}})
DAYS = ['%d.5' % (46095 + k) for k in range(N)]
refuse('time-spreadsheet-days', table(['time', 'soc_c'], zip(DAYS, T)), 'days since 1899, as spreadsheets write them', 'time-unit-missing', 'no unit', 'unit: d')
log('time-spreadsheet-days-declared', table(['time', 'soc_c'], zip(DAYS, T)), 'the same, decided', axis('time', 'elapsed', 86400), SOC, typed={'time': {'unit': 'd'}})
refuse('time-stands-still', table(['time', 'soc_c'], [('1.77348E+09', t) for t in T]), 'epoch seconds that a spreadsheet shortened', 'time-stands-still', '1.77348E+09', 'as the logger wrote it')
SHORT = [('14.03.26', hms(k), T[k]) for k in range(N)]
refuse('time-two-digit-years', table(['date', 'clock', 'soc_c'], SHORT), 'years of two digits', 'date-year-short', 'years of two digits', 'column: "clock"')
log('time-two-digit-years-declared', table(['date', 'clock', 'soc_c'], SHORT), 'the same, by the clock alone', axis('clock', 'clock'), SOC, typed={'time': {'column': 'clock'}},
    left=['date', 'clock'])
COARSE = [hms(k // 3 if k < 9 else k // 3 + 600) for k in range(N)]
log('time-coarse', table(['time', 'soc_c'], [('2026-03-14 ' + COARSE[k], T[k]) for k in range(N)]), 'three rows a second and stamps of whole seconds, with a gap',
    axis('time', 'iso8601', 1, 603), SOC, told=['time-repeated', 'time-gap'])

# --- 5. Values ----------------------------------------------------------------------------------------------------------------------
log('value-brackets', table(['time [s]', 'soc [°C]', 'power (mW)', 'clock [MHz]'], [(S[k], T[k], str(int(float(P[k]) * 1000)), F[k]) for k in range(N)]), 'units in brackets',
    axis('time [s]', 'elapsed'), {'soc [°C]': temp(), 'power (mW)': power(), 'clock [MHz]': clock()})
log('value-suffix', table(['t_s', 'soc_c', 'power_w', 'mem_used_mb'], [(S[k], T[k], P[k], str(500 + k)) for k in range(N)]), 'units as suffix of the name', ELAPSED,
    {**POW, 'mem_used_mb': column('other', 'B', [str(500 + k) for k in range(N)], 10**6)})
log('value-prose', lines('Temperatures in °C, power in W', 't_s,soc temp,power', *[','.join(r) for r in PLAIN]), 'units in prose', ELAPSED,
    {'soc temp': temp(), 'power': power()}, typed={'channels': {'soc temp': {'unit': '°C'}, 'power': {'unit': 'W'}}}, says=['header-line'])
log('value-cells', table(['t_s', 'soc', 'input', 'clock'], [(S[k], T[k] + "'C", '+' + P[k] + ' W', F[k] + 'MHz') for k in range(N)]), 'units in every cell', ELAPSED,
    {'soc': temp(), 'input': power(), 'clock': clock()})
log('value-nowhere', table(['t_s', 'soc temp', 'power'], PLAIN), 'units nowhere', ELAPSED, {'soc temp': temp(), 'power': power()},
    typed={'channels': {'soc temp': {'unit': '°C'}, 'power': {'unit': 'W'}}})
log('value-kelvin', table(['t_s', 'soc temp [K]'], [(S[k], '%.2f' % (float(T[k]) + 273.15)) for k in range(N)]), 'kelvin', ELAPSED, {'soc temp [K]': temp()})
log('value-watt-hours', table(['t_s', 'energy [Wh]'], [(S[k], '%.3f' % (k / 1000)) for k in range(N)]), 'cumulative Wh', ELAPSED,
    {'energy [Wh]': column('energy', 'J', ['%.3f' % (k / 1000) for k in range(N)], 3600)})
log('value-scientific', table(['t_s', 'supply [V]', 'input [A]'], [(S[k], '0.05%02dE+02' % k, '.%dE0' % (591 + k)) for k in range(N)]), 'scientific notation', ELAPSED,
    {'supply [V]': column('voltage', 'V', ['5.%02d' % k for k in range(N)]), 'input [A]': column('current', 'A', ['.%d' % (591 + k) for k in range(N)])})
gaps = [None if k in (3, 4, 7) else T[k] for k in range(N)]
log('value-missing', table(['t_s', 'soc_c'], [(S[k], {3: '', 4: 'NA', 7: 'NaN'}.get(k, T[k])) for k in range(N)]), 'empty, NA and NaN', ELAPSED, {'soc_c': temp(gaps)}, told=['many-missing'])
log('value-minus-one', table(['t_s', 'soc_c', 'ssd_c'], [(S[k], T[k], '-1' if k in (2, 3) else B[k]) for k in range(N)]), '-1 for no reading, declared', ELAPSED,
    {'soc_c': temp(), 'ssd_c': temp([None if k in (2, 3) else B[k] for k in range(N)])}, typed={'channels': {'ssd_c': {'missing': '-1'}}})
log('value-zero', table(['t_s', 'soc_c', 'fan_rpm'], [(S[k], T[k], '0') for k in range(N)]), 'constant 0 for an absent sensor: suggested, not taken', ELAPSED,
    {'soc_c': temp(), 'fan_rpm': column('fan', 'rpm', ['0'] * N)})
log('value-yes-no', table(['t_s', 'soc_c', 'Throttled', 'Charging [Yes/No]'], [(S[k], T[k], 'Yes' if k > 8 else 'No', 'No' if k > 3 else 'Yes') for k in range(N)]),
    'yes and no: a flag only where the name says so', ELAPSED, {'soc_c': temp(), 'Throttled': column('throttle_flag', '1', ['1' if k > 8 else '0' for k in range(N)])},
    left=['Charging [Yes/No]'])
log('value-true-false', table(['t_s', 'soc_c', 'thermal throttling', 'door open'], [(S[k], T[k], 'true' if k > 8 else 'false', 'false' if k > 3 else 'true') for k in range(N)]), 'true and false', ELAPSED,
    {'soc_c': temp(), 'thermal throttling': column('throttle_flag', '1', ['1' if k > 8 else '0' for k in range(N)])}, left=['door open'])
log('value-ja-nein', table(['t_s', 'soc_c', 'Drosselung', 'Tür offen'], [(S[k], T[k], 'Ja' if k > 8 else 'Nein', 'Nein' if k > 3 else 'Ja') for k in range(N)]), 'yes and no in other languages are left out', ELAPSED,
    {'soc_c': temp()}, left=['Drosselung', 'Tür offen'])
log('value-hex', table(['t_s', 'soc_c', 'throttled'], [(S[k], T[k], '0x50000' if k > 6 else '0x0') for k in range(N)]), 'a hex word', ELAPSED,
    {'soc_c': temp(), 'throttled': column('throttle_flag', '1', [str(0x50000) if k > 6 else '0' for k in range(N)])})
log('value-hex-key', table(['t_s', 'soc_c', 'state'], [(S[k], T[k], 'throttled=0x%x' % (0x50005 if k > 6 else 0)) for k in range(N)]), 'a hex word as key=value', ELAPSED,
    {'soc_c': temp(), 'state': column('throttle_flag', '1', [str(0x50005) if k > 6 else '0' for k in range(N)])})
log('value-digit-words', table(['t_s', 'soc_c', 'status'], [(S[k], T[k], '%08d' % (101 if k > 6 else 0)) for k in range(N)]), 'fixed-width words of digits stay as they are', ELAPSED, SOC)
log('value-tuple', table(['t_s', 'soc_c', 'cpu', 'power_w'], [(S[k], T[k], 'freq(current=%s.0, min=600.0, max=1800.0)' % F[k], P[k]) for k in range(N)]), 'a printed tuple as a cell', ELAPSED, POW,
    left=['cpu'], says=['brackets'])
log('value-mixed', table(['t_s', 'soc_c'], [(S[k], T[k] if k % 2 else str(int(float(T[k])))) for k in range(N)]), 'integers and decimals in one column', ELAPSED,
    {'soc_c': temp([T[k] if k % 2 else str(int(float(T[k]))) for k in range(N)])})
log('value-phase', table(['t_s', 'phase', 'soc_c'], [(S[k], 'warm-up' if k < 3 else 'load', T[k]) for k in range(N)]), 'a text that says what a row is', ELAPSED, SOC, left=['phase'])
log('value-step', table(['t_s', 'soc_c'], [(S[k], T[k] if k < 6 else '%.1f' % (float(T[k]) - 20)) for k in range(N)]), 'a sensor swapped in the middle', ELAPSED,
    {'soc_c': temp([T[k] if k < 6 else '%.1f' % (float(T[k]) - 20) for k in range(N)])})
log('value-half-first', table(['t_s', 'soc_c'], [(S[k], '22.' if k == 0 else T[k]) for k in range(N)]), 'half a first value from a serial line', ELAPSED,
    {'soc_c': temp([None] + T[1:])}, told=['cell-not-a-number'], aside={'2': 'not a number'})
log('value-bytes', table(['t_s', 'soc_c', 'Read Rate [MB/s]', 'disk MB/s', 'mem used [MiB]', 'frames [fps]', 'net KB/s', 'ratio [x]'],
    [(S[k], T[k], '1%d.5' % k, '2%d.5' % k, '3%d' % k, '4%d' % k, '5%d' % k, '1.%d' % k) for k in range(N)]), 'MB/s, MiB, fps, KB/s and x are units', ELAPSED,
    {'soc_c': temp(),
     'Read Rate [MB/s]': column('other', 'B/s', ['1%d.5' % k for k in range(N)], 10**6),
     'disk MB/s': column('other', 'B/s', ['2%d.5' % k for k in range(N)], 10**6),
     'mem used [MiB]': column('other', 'B', ['3%d' % k for k in range(N)], 2**20),
     'frames [fps]': column('other', 'frames/s', ['4%d' % k for k in range(N)]),
     'net KB/s': column('other', 'B/s', ['5%d' % k for k in range(N)], 10**3),
     'ratio [x]': column('other', '1', ['1.%d' % k for k in range(N)])})
log('value-distance', table(['t_s', 'soc_c', 'distance to the limit [°C]', 'samples'], [(S[k], T[k], '%.1f' % (95 - float(T[k])), '64') for k in range(N)]),
    'a distance is no temperature, samples are no current', ELAPSED, SOC)
log('value-short-names', table(['t_s', 'cpu_tmp', 'pwr', 'cpu_freq', 'thr'], [(S[k], T[k], P[k], F[k], '0') for k in range(N)]), 'short names that are known', ELAPSED,
    {'cpu_tmp': temp(), 'pwr': power(), 'cpu_freq': clock(), 'thr': column('throttle_flag', '1', ['0'] * N)},
    typed={'channels': {'cpu_tmp': {'unit': '°C'}, 'pwr': {'unit': 'W'}, 'cpu_freq': {'unit': 'MHz'}}})
EIGHT = ['Sensor %d' % k for k in range(1, 9)]
log('value-eight-sensors', table(['t_s'] + EIGHT, [[S[k]] + ['%d.%d' % (20 + k, j) for j in range(1, 9)] for k in range(N)]), 'eight sensors in one line', ELAPSED,
    {'Sensor %d' % j: temp(['%d.%d' % (20 + k, j) for k in range(N)]) for j in range(1, 9)}, typed={'channels': {'Sensor 1 .. Sensor 8': 'temperature, °C'}})
log('value-half-known', table(['t_s', 'soc_c', 'X7'], PLAIN), 'no name says what a column is: the rest is read', ELAPSED, SOC)

log('value-micro', table(['t_s', 'standby [µA]'], zip(S, F)).encode('cp1252'), 'micro sign as byte B5', ELAPSED, {'standby [µA]': column('current', 'A', F, '1/1000000')}, says=['encoding'])
log('value-minus-sign', table(['t_s', 'soc_c'], [(S[k], '\u2212' + T[k]) for k in range(N)]), 'the minus sign proper, U+2212', ELAPSED, {'soc_c': temp(['-' + t for t in T])})
RANGE = [str(800 + k * 20) if k < 6 else '%.2f' % (0.8 + k * 0.02) for k in range(N)]
TRUE = [t if k >= 6 else str(Q(t) / 1000) for k, t in enumerate(RANGE)]
log('value-range-changes', table(['t_s', 'current'], [(S[k], RANGE[k] + (' mA' if k < 6 else ' A')) for k in range(N)]), 'a meter that changes its range: mA, then A', ELAPSED,
    {'current': column('current', 'A', TRUE)}, says=['unit-in-cell'])
THOUSANDS = [(S[k], '1,8%02d' % (10 + k), '2,4%02d' % (10 + k), T[k]) for k in range(N)]
refuse('value-thousands', lines('t_s,"clock [MHz]","fan [rpm]",soc_c', *['%s,"%s","%s",%s' % r for r in THOUSANDS]), 'commas between thousands beside decimal points',
       'decimal-marks-differ', '1,810', 'without a mark between thousands')
log('value-thousands-told', lines('t_s,"clock [kHz]",soc_c', *['%s,"1,8%02d,000",%s' % (S[k], 10 + k, T[k]) for k in range(N)]), 'marks between thousands: the column is left out, and it is said why', ELAPSED,
    SOC, left=['clock [kHz]'])
log('value-phase-letters', table(['t_s', 'volt_a', 'volt_c', 'fan_c'], zip(S, P, P, B)), 'a letter behind a name is no unit of another kind', ELAPSED,
    {'volt_a': column('voltage', 'V', P), 'volt_c': column('voltage', 'V', P), 'fan_c': temp(B)}, typed={'channels': {'volt_a': {'unit': 'V'}, 'volt_c': {'unit': 'V'}}})
log('value-fan-off', table(['t_s', 'fan [rpm]', 'soc_c'], [(S[k], 'off' if k < 4 else str(1200 + k), T[k]) for k in range(N)]), 'a fan that is "off" is no flag', ELAPSED,
    {**SOC, 'fan [rpm]': column('fan', 'rpm', [None if k < 4 else str(1200 + k) for k in range(N)])}, typed={'channels': {'fan [rpm]': {'missing': 'off'}}}, told=['many-missing'])

# --- 6. Seen in logging scripts -----------------------------------------------------------------------------------------------------
log('script-millidegree', table(['t_s', 'soc_mc', 'cpu_khz', 'bus_hz'], [(S[k], T[k].replace('.', '') + '00', F[k] + '000', F[k] + '000000') for k in range(N)]), 'millidegrees, kHz and Hz', ELAPSED,
    {'soc_mc': temp(), 'cpu_khz': clock(), 'bus_hz': clock()})
log('script-throttle-words', table(['t_s', 'soc_c', 'throttled'], [(S[k], T[k], ['0', 'e0000', 'e0008', '50005'][k % 4]) for k in range(N)]), 'throttle words with bits set', ELAPSED,
    {'soc_c': temp(), 'throttled': column('throttle_flag', '1', [str([0, 0xe0000, 0xe0008, 0x50005][k % 4]) for k in range(N)])})
log('script-fahrenheit', table(['t_s', 'soc_c', 'soc_f'], [(S[k], T[k], '%.2f' % (float(T[k]) * 1.8 + 32)) for k in range(N)]), 'Fahrenheit beside Celsius', ELAPSED, {'soc_c': temp(), 'soc_f': temp()})
refuse('script-matrix-commas', lines(*[','.join('"%s"' % ('%.1f' % (24 + (r * 7 + c * 3) % 11 / 10)).replace('.', ',') for c in range(12)) for r in range(9)]),
       'a thermal picture with commas for both', 'not-a-log', 'matrix', 'surface')
refuse('script-matrix-preamble', lines(*['Parameter %d;%s' % (k, '0.95' if k == 3 else 'auto') for k in range(1, 17)], *[';'.join('%.1f' % (24 + (r * 7 + c * 3) % 11 / 10) for c in range(12)) for r in range(9)]),
       'a thermal picture below 16 lines of settings', 'not-a-log', 'matrix', 'surface')
log('script-localised', table(['Zeit', 'Kerntemperatur [°C]', 'Leistung [W]', 'Drehzahl [U/min]'], [(STAMP[k], T[k].replace('.', ','), P[k].replace('.', ','), '1500') for k in range(N)], sep=';'),
    'localised names', axis('Zeit', 'iso8601'), {'Kerntemperatur [°C]': temp(), 'Leistung [W]': power(), 'Drehzahl [U/min]': column('fan', 'rpm', ['1500'] * N)}, says=['decimal-mark'])
log('script-usb-meter', table(['#', 'Time(ms)', 'Voltage(V)', 'Current(A)', 'Power(W)', 'Energy(Wh)', 'Temp(C)'],
    [(str(k + 1), str(k * 500), '5.1%d' % (k % 10), '0.9%d' % (k % 10), P[k], '0.0%02d' % k, B[k]) for k in range(N)]), 'the export of a USB meter', axis('Time(ms)', 'elapsed', 0.5),
    {'Voltage(V)': column('voltage', 'V', ['5.1%d' % (k % 10) for k in range(N)]), 'Current(A)': column('current', 'A', ['0.9%d' % (k % 10) for k in range(N)]),
     'Power(W)': power(), 'Energy(Wh)': column('energy', 'J', ['0.0%02d' % k for k in range(N)], 3600), 'Temp(C)': temp(B)})

# --- 7. Several of these at once ----------------------------------------------------------------------------------------------------
COMMA = lambda texts: [t.replace('.', ',') for t in texts]
log('mixed-packed-utf16-decimal-comma', gzip.compress(('\ufeff' + table(['Zeit', 'Kern [°C]', 'Leistung [W]'], list(zip(STAMP, COMMA(T), COMMA(P))), sep=';', end='\r\n')).encode('utf-16-le'), mtime=0),
    'packed, UTF-16, CR LF and decimal commas', axis('Zeit', 'iso8601'), {'Kern [°C]': temp(), 'Leistung [W]': power()}, says=['gzip', 'encoding', 'decimal-mark'])
log('mixed-units-line-quoted-marker', lines('"Card of our own, no. 3"', 't_s,soc,input', 's,°C,mW', '# go', *['%s,"%s",%s' % (S[k], T[k], P[k].replace('.', '') + '00') for k in range(N)]),
    'prose, names, units, a marker, quoted numbers', ELAPSED, {'soc': temp(), 'input': power()}, says=['units-line', 'header-line', 'marker-lines'])
log('mixed-midnight-header-again', lines('time,soc_c', *['%s,%s' % (hms(k, 86395), T[k]) for k in range(6)], 'time,soc_c', *['%s,%s' % (hms(k, 86395), T[k]) for k in range(6, N)]),
    'midnight, and the header again after a restart', axis('time', 'clock'), {'soc_c': temp()}, says=['midnight', 'repeated-header'])
log('mixed-trailing-crlf-mark-missing', '\ufeff' + lines('t_s,soc [°C],power [W],', *['%s,%s,%s,' % (S[k], 'N/A' if k == 3 else T[k], '' if k == 5 else P[k]) for k in range(N)], end='\r\n'),
    'a mark, CR LF, a delimiter at every end, cells without a reading', ELAPSED,
    {'soc [°C]': temp([None if k == 3 else T[k] for k in range(N)]), 'power [W]': power([None if k == 5 else P[k] for k in range(N)])})
log('mixed-cells-with-units-semicolon', lines('time;core;input', *["%s;%s 'C;%s W" % (STAMP[k], T[k].replace('.', ','), P[k].replace('.', ',')) for k in range(N)]),
    'units in cells behind decimal commas', CIVIL, {'core': temp(), 'input': power()}, typed={'channels': {'core': {'quantity': 'temperature'}, 'input': {'quantity': 'power'}}}, says=['decimal-mark'])
log('mixed-torn-last-row-no-newline', lines('t_ms\tsoc_mc\tcpu_khz', *['%05d\t%s00\t%s000' % (k * 1000, T[k].replace('.', ''), F[k]) for k in range(N)], '12000\t59', last=False),
    'tabs, padded milliseconds, millidegrees, a torn last row', axis('t_ms', 'elapsed'), {'soc_mc': temp(), 'cpu_khz': clock()},
    aside={'14': 'cut off'}, told=['last-line-cut'])
log('mixed-two-devices-gap-repeat', table(['time', 'card', 'temp_c', 'power_w'], [[('2026-03-14 ' + hms(k if k < 6 else k + 60)), name, v, w] for k in range(N) for name, v, w in (('alder', T[k], P[k]), ('birch', B[k], '2.0'))], sep='|'),
    'two devices, bars, and a gap', axis('time', 'iso8601', 1, 71), {'temp_c': temp(), 'power_w': power()}, typed={'rows': {'card': 'alder'}}, told=['time-gap'], left=['card'], says=['rows-where'])
log('mixed-epoch-nul-preamble', lines('Serial no.: 17', 'boot', '', 'epoch,soc_c,fan_rpm').encode() + lines(*['%d,%s,1500' % (EPOCH + k, T[k]) for k in range(N)]).encode() + b'\0' * 64,
    'a preamble, epoch seconds and NUL bytes at the end', axis('epoch', 'epoch', start=EPOCH), {'soc_c': temp(), 'fan_rpm': column('fan', 'rpm', ['1500'] * N)}, told=['nul-tail'], says=['header-line'])
refuse('mixed-workbook', b'PK\x03\x04' + b'\x14\0\6\0' * 40, 'a workbook under the name of a log', 'not-a-log', 'packed (zip', 'write a CSV')
log('mixed-us-dates-twelve-quoted', lines('"When","Core, die [°C]"', *['"03/14/2026 %s PM","%s"' % ('0%d:%02d:%02d' % (1, 0, k), T[k]) for k in range(N)]),
    'month first, twelve hours, a comma in a name', axis('When', 'iso8601'), {'Core, die [°C]': temp()})

stale = {n for n in os.listdir(HERE) if n.endswith(('.csv', '.json')) and n.rsplit('.', 1)[0] not in made}
for n in stale:
    os.remove(os.path.join(HERE, n))
print(len(made), 'logs')
