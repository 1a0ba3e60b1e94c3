/** What is told of a log whose neighbouring rows were taken as one. */
import { expect, test } from 'vitest';
import { CATALOGUE } from '../../src/figures/catalogue.ts';
import { derive } from '../../src/figures/derive.ts';
import { isPresent } from '../../src/figures/figure.ts';
import { contextOf, every, logOf, phase } from './build.ts';

const log = logOf(every(2, 3600), {
  soc: { quantity: 'temperature', values: (t) => 60 - 38 * Math.exp(-t / 300) + Math.sin(t) / 5, step: 0.1 },
  input: { quantity: 'power', values: (t) => 8 + Math.cos(t) / 10 },
});
const figuresOf = (condensed?: { rows: number; longest: number }) =>
  derive({ ...log, ...(condensed && { condensed }) }, contextOf({ phases: [phase('load', 0, 3600)] })).figures;

test('figures of single readings are absent with the reason; means and energies stand', () => {
  const single = new Set(CATALOGUE.filter(({ ofSingleReadings }) => ofSingleReadings).map(({ name }) => name as string));
  const [whole, condensed] = [figuresOf(), figuresOf({ rows: 3_000_000, longest: 16 })];
  expect([...whole.values()].filter((figure) => isPresent(figure) && single.has(figure.name)).length).toBeGreaterThan(3);
  for (const [address, figure] of condensed) {
    if (!single.has(figure.name)) expect(figure, address).toEqual(whole.get(address));
    else expect(figure, address).toMatchObject({ absent: 'not-observed', why: expect.stringContaining('3000000 rows') });
  }
  expect(condensed.get('load_power')).toEqual(whole.get('load_power'));
});
