/** Invented figures of two invented runs, for the tests of words. */
import type { Figure, NameOfFigure } from '../../src/figures/figure.ts';
import type { Problem } from '../../src/problem.ts';
import type { Quantity } from '../../src/quantities/quantity.ts';
import type { Note } from '../../src/register/register.ts';
import type { Subject } from '../../src/words/written.ts';

/** A quantity with one source of its own, or of a shared one. */
export function quantity(value: number, unit: string, u: number, source: string): Quantity {
  return { value, unit, parts: u === 0 ? [] : [{ source: { id: source, title: source, dof: null }, share: u }] };
}

function present(name: NameOfFigure, value: Quantity, of: Record<string, string> = {}): Figure {
  return { name, quantity: value, from: { columns: ['reading'], rows: [2, 3601] }, of };
}

/** A run whose die sensor's offset is shared with every other run here. */
function run(id: string, peak: number, power: number): Subject {
  const own = (name: string): string => `run:${id}/${name}/sampling`;
  const die: Quantity = {
    value: peak,
    unit: '°C',
    parts: [
      { source: { id: 'instrument:die/temperature/offset', title: 'offset', dof: null }, share: 1 },
      { source: { id: own('peak'), title: 'scatter', dof: null }, share: 0.2 },
    ],
  };
  const figures: [string, Figure][] = [
    ['peak_temperature', present('peak_temperature', die, { channel: 'soc', phase: 'load' })],
    ['peak_temperature.ssd', present('peak_temperature', quantity(peak - 20, '°C', 0.5, own('ssd')), { channel: 'ssd' })],
    ['load_power', present('load_power', quantity(power, 'W', 0.02, own('power')), { at: 'board input' })],
    ['load_power.wall', present('load_power', quantity(power + 1.1, 'W', 0.05, own('wall')), { at: 'wall' })],
    ['score.aes-1t', present('score', quantity(peak * 10, 'points', 3, own('score')), { test: 'aes-1t' })],
    ['steady_temperature', { name: 'steady_temperature', absent: 'not-steady', why: 'Not steady within 60 min.' }],
    [
      'unknown_drift',
      { name: 'temperature_rise', quantity: { value: 3, unit: 'K', parts: null }, from: { columns: [], rows: null } },
    ],
  ];
  return {
    kind: 'run',
    id,
    title: id,
    figures: new Map(figures),
    facts: new Map([
      ['setting.clock', quantity(2.4e9, 'Hz', 0, '')],
      ['ambient', quantity(22.4, '°C', 0.29, `run:${id}/ambient`)],
      ['device.throttle_at', quantity(85, '°C', 0, '')],
    ]),
    channels: [
      { name: 'soc', quantity: 'temperature' },
      { name: 'board', quantity: 'current' },
    ],
  };
}

export const RATED = run('larch-rated', 61.2, 3.9);
export const FAST = run('larch-fast', 71.3, 5.25);
export const TWO: ReadonlyMap<string, Subject> = new Map([
  ['rated', RATED],
  ['fast', FAST],
]);
export const ONE: ReadonlyMap<string, Subject> = new Map([['fast', FAST]]);

/** A run with a spot on its lid, in two photographs; `from` is how far from the left it lies in the second. */
function spotted(subject: Subject, reading: number, from: number): Subject {
  const spots = (id: string): Figure =>
    present('surface', quantity(reading, '°C', 0.8, `${subject.id}/${id}`), { spot: 'Lid centre' });
  const at = { x: 0.46, y: 0.44 };
  return {
    ...subject,
    figures: new Map([...subject.figures, ['surface.lid-centre', spots('lid-centre')]]),
    photographs: new Map([
      ['lid.jpg', [{ spot: 'lid-centre', at }]],
      ['two-sides.jpg', [{ spot: 'lid-centre', at: { ...at, x: from } }]],
    ]),
  };
}

/** The same two with their lids photographed. */
export const SPOTTED: ReadonlyMap<string, Subject> = new Map([
  ['rated', spotted(RATED, 46.3, 0.2)],
  ['fast', spotted(FAST, 59.8, 0.3)],
]);

/** A note with that text. */
export function noteOf(text: string, more: Partial<Note> = {}): Note {
  const file = 'content/notes/note.md';
  return {
    id: 'note',
    file,
    title: 'Note',
    body: text,
    bodyLine: 1,
    text,
    kind: 'note',
    date: '2026-03-14',
    status: 'draft',
    runs: new Map(),
    comparisons: new Map(),
    highlights: [],
    placeOf: () => ({ file, line: 1, column: 1 }),
    ...more,
  } as Note;
}

/** Problems as text: one block each, with everything an author is told. */
export function reportOf(problems: readonly Problem[]): string {
  return problems
    .map(({ place, severity, rule, found, expected, remedy }) => {
      const end = place.endColumn === undefined ? '' : `-${place.endColumn}`;
      const more = [expected && `  expected: ${expected}`, remedy && `  remedy: ${remedy}`].filter(Boolean);
      return [`${place.line}:${place.column}${end}: ${severity} [${rule}] ${found}`, ...more].join('\n');
    })
    .map((block) => `${block}\n`)
    .join('');
}
