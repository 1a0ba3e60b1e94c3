import { describe, expect, test } from 'vitest';
import { NOTE, reading, report, STEPS } from '../base.ts';

const FILE = 'content/quoted/older.md';
const QUOTED = `---
title: Hot little boxes
source:
  author: R. Fern
  address: https://articles.example/boxes
  date: 2024-05-02
  accessed: 2026-03-01
device: Larch 2, another specimen
conditions:
  ambient: about 24 °C
figures:
  steady_temperature: 71 °C
  load_power: 9.5 ± 0.3 W
---
`;

describe('register/files/quoted', () => {
  test('figures of somebody else, with source; a note and a comparison name it', () => {
    const { register, problems } = reading(
      [FILE, '', QUOTED],
      [NOTE, 'attempts:', 'quoted:\n  older: older\nattempts:'],
      [STEPS, 'reference:', 'quoted: older\nreference:'],
    );
    expect(problems).toEqual([]);
    const { source, conditions, figures } = register.quoted.get('older')!;
    expect(source).toEqual({
      author: 'R. Fern',
      address: 'https://articles.example/boxes',
      date: '2024-05-02',
      accessed: '2026-03-01',
    });
    expect(conditions).toEqual([{ name: 'ambient', text: 'about 24 °C' }]);
    expect(figures.get('steady_temperature')).toMatchObject({
      quantity: { value: 71, parts: null },
      of: { quoted: 'R. Fern, 2024' },
    });
    expect(figures.get('load_power')!.quantity.parts).toMatchObject([
      { source: { id: 'quoted:older/load_power', distribution: 'rectangular' } },
    ]);
    expect([...register.notes.get('notes/overclocking-larch')!.quoted!]).toEqual([['older', 'older']]);
    expect(register.comparisons.get('larch-steps')!.quoted).toEqual(['older']);
  });

  test.each([
    ['steady_temperature: 71 °C', 'steady_temperature: 71', 'a number without a unit'],
    ['steady_temperature: 71 °C', 'steady_temperature: 71 W', '`steady_temperature` is `71 W`'],
    ['steady_temperature: 71 °C', 'steady_temprature: 71 °C', 'did you mean `steady_temperature`?'],
    ['  accessed: 2026-03-01\n', '', '`accessed`'],
    ['https://articles', 'http://articles', 'no whole https address'],
  ])('located: %s as %s', (from, to, found) => {
    const told = report([FILE, '', QUOTED.replace(from, to)]).filter((each) => each.includes(found));
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/^content\/quoted\/older\.md:\d+:\d+: error: /);
  });
});
