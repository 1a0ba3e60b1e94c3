/** The example of each key in the reference is read by the real register without a problem: in a file of its kind, with all that must be there. */
import { describe, expect, it } from 'vitest';
import { readRegister } from '../../src/register/read.ts';
import type { DataFiles } from '../../src/register/register.ts';
import type { KeyFacts } from '../../src/register/values/shape.ts';
import { lineOf, shapesOf } from './reference.ts';

const DATA: DataFiles = { kind: () => 'file' };
const SHAPES = shapesOf();

/** Files that examples name. */
const IDS: Readonly<Record<string, readonly string[]>> = {
  devices: ['larch-2'],
  instruments: ['inline-meter', 'on-die', 'camera'],
  setups: ['open-bench'],
  runs: ['larch-rated', 'larch-fast', 'larch-slow', 'larch-slow-again'],
  attempts: ['larch-ladder'],
  comparisons: ['larch-steps'],
  quoted: ['hot-boxes'],
  notes: ['larch-soak'],
  scripts: ['larch-soak'],
};

/** What a file of each kind says in the place of an example that would not do for a second file, or besides. */
const ALSO: Readonly<Record<string, readonly string[]>> = {
  runs: [
    'device: larch-2',
    'specimen: no-1',
    'phases:\n  idle: 0 .. 5 min\n  load: 5 .. 65 min',
    'instruments: [inline-meter, on-die, camera]',
    'channels:\n  soc:\n    quantity: temperature\n    column: Temp\n  amps:\n    quantity: current\n    column: Amps\n    unit: A\n    at: board input',
  ],
};

/** Keys that need another beside them, or one of several: what stands there where neither is tried. */
const BESIDE: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  'a quantity below `measures`': { 'resolution: 0.01 A': ['resolution'] },
  'an item of `known`': { 'lines: 323': ['lines', 'channel', 'channels', 'phase'] },
  'an item of `repairs`': {
    'drop: 323': ['drop', 'shift_time', 'by'],
    'by: 3600 s': ['drop', 'by', 'log', 'reason'],
    'shift_time: 12 .. 15': ['drop', 'shift_time', 'log', 'reason'],
  },
  'an item of `readings`': { 'phase: load': ['phase', 'at_time'] },
  'an item of `corrections`': { 'number: fast.peak_temperature': ['number', 'numbers'], 'now: 72.1 °C': ['now', 'numbers'] },
  '`table` of attempts': { 'file: larch-2/attempts.csv': ['file'] },
};

const indented = (text: string, by: number) => text.replaceAll(/^/gm, ' '.repeat(by));

function required(title: string): KeyFacts[] {
  return SHAPES.get(title)!.facts.filter((fact) => fact.required);
}

/** A mapping of this shape: what must be there, and the line that is tried. */
function mapping(title: string, tried = ''): string {
  const key = tried.split(':')[0];
  const lines = required(title)
    .filter((fact) => fact.key !== key)
    .map((fact) => withBelow(fact));
  const beside = Object.entries(BESIDE[title] ?? {}).filter(([, keys]) => !keys.includes(key ?? ''));
  return [...lines, ...beside.map(([line]) => line), ...(tried === '' ? [] : [tried])].join('\n');
}

/** The example of a key, or where it holds keys of ours a mapping of them. */
function withBelow(fact: KeyFacts): string {
  const line = lineOf(fact);
  if (line !== undefined) return line;
  return `${fact.key}:\n${indented(mapping(fact.takes.keys!.title), 2)}`;
}

function fileOf(folder: string, id: string, tried = ''): { path: string; text: string } {
  const key = tried.split(':')[0]!;
  const own = mapping(`content/${folder}`, tried);
  const unlike = new Set(own.split('\n').map((line) => line.split(':')[0]));
  const also = (ALSO[folder] ?? []).filter((line) => !unlike.has(line.split(':')[0]!));
  const log =
    folder === 'runs' && key !== 'log' && key !== 'logs'
      ? [`logs:\n  device: larch-2/${id}.csv\n  meter: larch-2/${id}-meter.csv`]
      : [];
  // A comparison has two settings or more, and its example is a line of one.
  const whole = folder === 'comparisons' ? own.replace('rated: larch-rated', 'rated: larch-rated\n  fast: larch-fast') : own;
  return { path: `content/${folder}/${id}.md`, text: `---\n${[whole, ...also, ...log].join('\n')}\n---\nWords.\n` };
}

const BASE = Object.entries(IDS).flatMap(([folder, ids]) => ids.map((id) => fileOf(folder, id)));

function problemsWith(changed: { path: string; text: string }): string[] {
  const files = [...BASE.filter(({ path }) => path !== changed.path), changed];
  return readRegister(files, DATA).problems.map(({ rule, place, found }) => `${place.file}:${place.line} ${rule}: ${found}`);
}

/** Where each shape stands in a file: the folder, and the lines around it. */
function framesOf(title: string): { folder: string; wrap: (text: string) => string }[] {
  if (title.startsWith('content/')) return [{ folder: title.slice('content/'.length), wrap: (text) => text }];
  return [...SHAPES].flatMap(([outer, { facts }]) =>
    facts.flatMap(({ key, kinds, takes }) => {
      const below = takes.keys ?? takes.each;
      if (below?.title !== title) return [];
      const inner = (text: string): string => {
        if (takes.keys) return `${key}:\n${indented(text, 2)}`;
        if (kinds.includes('list')) return `${key}:\n${indented(text, 4).replace(/^ {4}/, '  - ')}`;
        const first = key === 'logs' && outer === 'content/runs' ? '  device: larch-2/device.csv\n' : '';
        return `${key}:\n${first}  ${NAMES[key]}:\n${indented(text, 4)}`;
      };
      return framesOf(outer).map(({ folder, wrap }) => ({ folder, wrap: (text: string) => wrap(inside(outer, inner(text))) }));
    }),
  );
}

/** A name of an author's own below these keys. */
const NAMES: Readonly<Record<string, string>> = { measures: 'current', channels: 'board', logs: 'meter' };

const inside = (outer: string, text: string) => (outer.startsWith('content/') ? text : mapping(outer, text));

const CASES = [...SHAPES].flatMap(([title, { facts }]) =>
  facts.flatMap((fact) => {
    const line = lineOf(fact);
    if (line === undefined) return [];
    const text = title.startsWith('content/') ? line : mapping(title, line);
    const files = framesOf(title).map(({ folder, wrap }) => fileOf(folder, IDS[folder]![0]!, wrap(text)));
    return [{ name: `${title}: ${fact.key}`, files }];
  }),
);

describe('the examples of the reference', () => {
  it('stand in files that are right without them', () => {
    expect(readRegister(BASE, DATA).problems).toEqual([]);
  });

  // A key of runs and setups is read in one of them at least: of lines and tables only a run can speak, of a channel's parts a setup may.
  it.each(CASES)('$name', ({ files }) => {
    const tries = files.map((file) => problemsWith(file));
    expect(tries.some((problems) => problems.length === 0) ? [] : tries, files[0]?.text).toEqual([]);
  });
});
