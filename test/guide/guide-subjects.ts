/** Invented runs, attempts and a comparison, for the directives that the guide shows. */
import type { Figure, NameOfFigure } from '../../src/figures/figure.ts';
import type { Subject } from '../../src/words/written.ts';
import { FAST, quantity, RATED } from '../words/subjects.ts';

function present(name: NameOfFigure, value: number, unit: string, u = 0): Figure {
  return { name, quantity: quantity(value, unit, u, `guide:${name}`), from: { columns: ['reading'], rows: [2, 3601] }, of: {} };
}

function run(base: Subject, clock: number): Subject {
  const figures = new Map([
    ...base.figures,
    ['mean_clock', present('mean_clock', clock, 'Hz', 1e5)],
    ['throttle_events', present('throttle_events', 0, '1')],
  ] as [string, Figure][]);
  const facts = new Map([
    ...base.facts,
    ['setting.clock', quantity(clock, 'Hz', 0, '')],
    ['repeats.aes-1t', quantity(5, '1', 0, '')],
    ['repeats."my-test"', quantity(5, '1', 0, '')],
  ] as const);
  return { ...base, figures, facts };
}

const bare = (kind: Subject['kind'], id: string, more: Partial<Subject>): Subject => ({
  kind,
  id,
  title: id,
  figures: new Map(),
  facts: new Map(),
  channels: [],
  ...more,
});

/** By the names that the guide uses. */
export const SUBJECTS: ReadonlyMap<string, Subject> = new Map([
  ['rated', run(RATED, 1.7e9)],
  ['fast', run(FAST, 2.6e9)],
  [
    'ladder',
    bare('attempts', 'larch-ladder', {
      facts: new Map([
        ['tried', quantity(8, '1', 0, '')],
        ['outcome.restarted', quantity(1, '1', 0, '')],
      ]),
    }),
  ],
  ['steps', bare('comparison', 'larch-steps', { figures: new Map([['speedup.fast', present('speedup', 1.08, '1', 0.002)]]) })],
  ['older', bare('quoted', 'hot-boxes', { figures: new Map([['steady_temperature', present('steady_temperature', 71, '°C')]]) })],
]);
