import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareProblems } from '../../src/problem.ts';
import { readRegister } from '../../src/register/read.ts';
import type { Register } from '../../src/register/register.ts';
import {
  ATTEMPTS,
  BASE,
  DATA,
  DEVICE,
  edited,
  FAST,
  line,
  METER,
  NOTE,
  RATED,
  reading,
  report,
  SCRIPT,
  SETUP,
  STEPS,
} from './base.ts';

const RUNS = [FAST, RATED];

function filesOf({ devices, instruments, runs, attempts, comparisons, notes }: Register): string[] {
  return [devices, instruments, runs, attempts, comparisons, notes].flatMap((items) => [...items.values()].map(({ file }) => file));
}

describe('register/read', () => {
  it('keeps scalars as they are written', () => {
    const { register, problems } = reading(
      [
        SETUP,
        '  workload: all cores, integer mix 3.1',
        '  workload: 0x10\n  firmware: 1.10\n  system: "2026-03-01"\n  cooling: no',
      ],
      [FAST, 'Fast setting', '010'],
    );
    expect(problems).toEqual([]);
    const run = register.runs.get('larch-fast')!;
    expect(run.title).toBe('010');
    expect(run.conditions.slice(1).map(({ text }) => text)).toEqual(['0x10', '1.10', '2026-03-01', 'no']);
  });

  it('reads a note with its aliases, highlights at their first letter, and body', () => {
    const { register } = reading([NOTE, '  - fast.peak_temperature', `  - fast.peak_temperature\n  - 'rated.score."aes-1t"'`]);
    const note = register.notes.get('notes/overclocking-larch')!;
    expect([...note.runs]).toEqual([
      ['rated', 'larch-rated'],
      ['fast', 'larch-fast'],
    ]);
    expect([...note.comparisons]).toEqual([['steps', 'larch-steps']]);
    expect([...note.attempts!]).toEqual([['larch-settings', 'larch-settings']]);
    expect(note.highlights.map(({ expression, place }) => [expression, place.line, place.column])).toEqual([
      ['fast.peak_temperature', 12, 5],
      ['rated.score."aes-1t"', 13, 6],
    ]);
    expect(note.body).toBe('It runs hotter.\n');
    expect(note.text.split('\n')[note.bodyLine - 1]).toBe('It runs hotter.');
    expect([...register.notes.get('scripts/overclocking-larch')!.runs]).toEqual([['larch-fast', 'larch-fast']]);
  });

  it('takes a byte order mark and CR LF without a change of places', () => {
    const { register, problems } = reading([FAST, '', `\uFEFF${BASE[FAST]!.replaceAll('\n', '\r\n')}`]);
    expect(problems).toEqual([]);
    const run = register.runs.get('larch-fast')!;
    expect(run.placeOf('setting.clock')).toEqual(reading().register.runs.get('larch-fast')!.placeOf('setting.clock'));
    expect(run.logs[0]!.declaration.file).toBe('larch-2/fast-soak.csv');
  });

  it("hands the author's word that a log's last line is whole on to who reads the log", () => {
    const log = 'log:\n  file: larch-2/fast-soak.csv\n  last_line: whole';
    const { register, problems } = reading([FAST, 'log: larch-2/fast-soak.csv', log]);
    expect(problems).toEqual([]);
    expect(register.runs.get('larch-fast')!.logs[0]!.declaration.lastLine).toBe('whole');
  });

  it.each([
    ['a device', DEVICE, 'maker: Larch Works (invented)\n', [DEVICE, ...RUNS, ATTEMPTS, STEPS, NOTE, SCRIPT]],
    ['an instrument', METER, 'title: Inline meter\n', [METER, ...RUNS, STEPS, NOTE, SCRIPT]],
    ['a setup', SETUP, 'title: Open bench, still air\n', [...RUNS, STEPS, NOTE, SCRIPT]],
    ['a run', FAST, 'date: 2026-03-14\n', [FAST, STEPS, NOTE, SCRIPT]],
    ['attempts', ATTEMPTS, 'specimen: no-1\n', [ATTEMPTS, NOTE]],
    ['a comparison', STEPS, 'reference: rated\n', [STEPS, NOTE]],
  ])('tells the errors of %s once, and leaves out what rests on it', (_, file, removed, gone) => {
    const { register, problems } = reading([file, removed, '']);
    expect(problems.map(({ rule, place }) => `${place.file} ${rule}`)).toEqual([`${file} missing-key`]);
    const left = filesOf(register);
    expect(filesOf(reading().register).filter((each) => !left.includes(each))).toEqual(gone);
  });

  it('tells the problems of all files at once, in one order, whatever the order of the files', () => {
    const edits = [
      [FAST, '2.6 GHz', '2.6'],
      [DEVICE, 'adapter', 'adaptor'],
      [SETUP, 'idle: 0 .. 5 min', 'idle: 0 .. 6 min'],
      [SCRIPT, 'larch-fast', 'larch-quick'],
      [RATED, 'rated-soak', 'rated-soack'],
    ] as const;
    const files = edited(...edits);
    const { problems } = readRegister(files, DATA);
    expect(problems.map(({ rule }) => rule)).toEqual([
      'unknown-word',
      'number-without-unit',
      'data-missing',
      'unknown-run',
      'phases-overlap',
    ]);
    expect(problems).toEqual([...problems].sort(compareProblems));
    expect(readRegister([...files].reverse(), DATA).problems).toEqual(problems);
  });

  it('tells several problems of one file together', () => {
    expect(
      report(
        [FAST, '2026-03-14', 'today'],
        [FAST, 'Fast setting', '[a]'],
        [FAST, '2.6 GHz', '2.6 V'],
        [FAST, 'log:', 'lag: x\nlog:'],
      ),
    ).toHaveLength(4);
  });

  it('tells a problem of a shared channel once for all runs', () => {
    expect(report([SETUP, '    column: amps\n', ''])).toEqual([
      `${SETUP}:14:3: error: channel-incomplete: channel \`board\` has no \`column\` | expected \`quantity\` and \`column\`, in the run or in its setup | write for instance \`column: Temp\``,
    ]);
  });

  it('reads nothing from no files', () => {
    const { register, problems } = readRegister([], DATA);
    expect(problems).toEqual([]);
    expect(register.runs.size + register.notes.size).toBe(0);
  });

  it('never throws, and every problem stands in its file', () => {
    const word = fc.constantFrom(
      ...'title date status runs conditions ambient channels soc quantity temperature column phases load 5 .. 65 min °C ± 22 ~ null'.split(
        ' ',
      ),
      ...[
        '---',
        '\n',
        ' ',
        '  ',
        ': ',
        '- ',
        ':',
        '\n  ',
        '\n- ',
        '"',
        "'",
        '{',
        '}',
        '[',
        ']',
        '&a',
        '*a',
        '!t',
        '#',
        '|',
        '>',
        '\t',
        '\r\n',
        '%',
        '@',
        ',',
      ],
      ...['__proto__', 'constructor', '<<', '?', '...', '\uFEFF', '\uFFFD', '\u0000', '\uD800', '🙂'],
    );
    const body = fc.oneof(
      fc.array(word, { maxLength: 40 }).map((words) => words.join('')),
      fc.string({ unit: 'binary', maxLength: 60 }),
    );
    const framed = fc.oneof(
      body,
      body.map((text) => `---\n${text}\n---\n`),
    );
    const path = fc.oneof(
      fc.constantFrom(...Object.keys(BASE)),
      fc.string().map((name) => `content/${name}`),
    );
    fc.assert(
      fc.property(path, framed, (file, text) => {
        const lines = text.split('\n');
        for (const problem of readRegister([{ path: file, text }], DATA).problems) {
          expect(problem.place.file).toBe(file);
          expect(problem.place.line).toBeGreaterThanOrEqual(1);
          expect(problem.place.line).toBeLessThanOrEqual(lines.length);
          expect(problem.place.column).toBeGreaterThanOrEqual(1);
          expect(problem.place.column).toBeLessThanOrEqual(lines[problem.place.line - 1]!.length + 2);
          expect(line(problem)).not.toContain('undefined');
        }
      }),
      { numRuns: 400 },
    );
  });

  it('never throws where a piece of a good file is lost or doubled', () => {
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(BASE)), fc.nat(600), fc.nat(30), fc.boolean(), (path, start, length, double) => {
        const text = BASE[path]!;
        const from = start % text.length;
        const piece = text.slice(from, from + length);
        const broken = text.slice(0, from) + (double ? piece + piece : '') + text.slice(from + length);
        const { problems } = readRegister(edited([path, '', broken]), DATA);
        expect(problems.every(({ found }) => found.length > 0 && !found.endsWith('.'))).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  it('reads deep nesting without falling over', () => {
    const deep = `---\ntitle: ${'['.repeat(20_000)}\n---\n`;
    const nested = `---\n${Array.from({ length: 3_000 }, (_, depth) => `${' '.repeat(depth)}a:`).join('\n')} 1\n---\n`;
    for (const text of [deep, nested]) {
      const { problems } = readRegister([{ path: FAST, text }], DATA);
      expect(problems.length).toBeGreaterThan(0);
    }
  });
});
