/** Files of content/ made of the reference's own examples, in which another example can be tried by the real register. */
import { readRegister } from '../../src/register/read.ts';
import type { DataFiles } from '../../src/register/register.ts';
import { lineOf } from '../../src/register/values/key-line.ts';
import type { KeyFacts } from '../../src/register/values/shape.ts';
import { shapesOf } from './reference.ts';

export const DATA: DataFiles = { kind: () => 'file' };
export const SHAPES = shapesOf();

/** Files that examples name. */
export const IDS: Readonly<Record<string, readonly string[]>> = {
  devices: ['larch-2'],
  instruments: ['inline-meter', 'on-die', 'camera'],
  setups: ['open-bench', 'larch-2-bench'],
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

/** The keys of a mapping's own lines. */
function keysIn(text: string): ReadonlySet<string> {
  return new Set([...text.matchAll(/^(\w+):/gm)].map(([, key]) => key!));
}

/** A mapping of this shape: what must be there, and the line that is tried. */
export function mapping(title: string, tried = ''): string {
  const keys = keysIn(tried);
  const lines = required(title)
    .filter((fact) => !keys.has(fact.key))
    .map((fact) => withBelow(fact));
  const beside = Object.entries(BESIDE[title] ?? {}).filter(([, others]) => !others.some((key) => keys.has(key)));
  return [...lines, ...beside.map(([line]) => line), ...(tried === '' ? [] : [tried])].join('\n');
}

/** The example of a key, or where it holds keys of ours a mapping of them. */
function withBelow(fact: KeyFacts): string {
  const line = lineOf(fact);
  if (line !== undefined) return line;
  return `${fact.key}:\n${indented(mapping(fact.takes.keys!.title), 2)}`;
}

/** A file of this kind in which the lines that are tried stand beside all that it needs. */
export function fileOf(folder: string, id: string, tried = ''): { path: string; text: string } {
  const own = mapping(`content/${folder}`, tried);
  const keys = keysIn(own);
  const also = (ALSO[folder] ?? []).filter((line) => !keys.has(line.split(':')[0]!));
  const log =
    folder === 'runs' && !keys.has('log') && !keys.has('logs')
      ? [`logs:\n  device: larch-2/${id}.csv\n  meter: larch-2/${id}-meter.csv`]
      : [];
  // A comparison has two settings or more, and its example is a line of one.
  const whole =
    folder === 'comparisons' && !own.includes('fast:')
      ? own.replace('rated: larch-rated', 'rated: larch-rated\n  fast: larch-fast')
      : own;
  return { path: `content/${folder}/${id}.md`, text: `---\n${[whole, ...also, ...log].join('\n')}\n---\nWords.\n` };
}

export const BASE = Object.entries(IDS).flatMap(([folder, ids]) => ids.map((id) => fileOf(folder, id)));

/** What the register says of a project with this file in the place of its own. */
export function problemsWith(changed: { path: string; text: string }): string[] {
  const files = [...BASE.filter(({ path }) => path !== changed.path), changed];
  return readRegister(files, DATA).problems.map(({ rule, place, found }) => `${place.file}:${place.line} ${rule}: ${found}`);
}

/** Where each shape stands in a file: the folder, and the lines around it. */
export function framesOf(title: string): { folder: string; wrap: (text: string) => string }[] {
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
