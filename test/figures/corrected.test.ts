import { describe, expect, test } from 'vitest';
import type { InstrumentFacts } from '../../src/figures/context.ts';
import { correctedLog } from '../../src/figures/corrected.ts';
import { derive } from '../../src/figures/derive.ts';
import { readSurface } from '../../src/figures/surface/read-surface.ts';
import { standardUncertainty } from '../../src/quantities/uncertainty.ts';
import { apart, contextOf, every, instrumentOf, logOf, noise, phase, presentAt } from './build.ts';

const u = 0.1 / Math.sqrt(3);
const CORRECTION = { temperature: { value: -0.3, unit: 'K', u, text: '−0.3 ± 0.1 K' } };
const couple = (more: Partial<InstrumentFacts> = {}) => instrumentOf('couple', 'temperature', { absolute: 0.5 }, more);

function figuresOf(instrument: InstrumentFacts) {
  const next = noise(3);
  const log = logOf(every(1, 600), {
    soc: { quantity: 'temperature', values: () => 60 + next(), instrument: 'couple' },
    air: { quantity: 'ambient', values: () => 22 + next(), instrument: 'couple' },
    board: { quantity: 'power', values: () => 5 },
  });
  const context = contextOf({ instruments: { couple: instrument }, phases: [phase('load', 0, 600)], steady: 'below-1-k-in-5-min' });
  const corrected = correctedLog(log, context);
  return { log, corrected, figures: derive(corrected, context).figures };
}

describe('figures/corrected', () => {
  // JCGM 100:2008, 3.2.4 and 5.1.2: corrected value = value + correction; the correction's variance is added.
  test('shifts readings by the correction, whose uncertainty adds as a square', () => {
    const plain = presentAt(figuresOf(couple()).figures, 'peak_temperature').quantity;
    const shifted = presentAt(figuresOf(couple({ correction: CORRECTION })).figures, 'peak_temperature').quantity;
    expect(apart(shifted.value, plain.value - 0.3)).toBeLessThan(1e-12);
    expect(apart(standardUncertainty(shifted)!, Math.hypot(standardUncertainty(plain)!, u))).toBeLessThan(1e-12);
    const part = shifted.parts!.find(({ source }) => source.id === 'instrument:couple/temperature/correction');
    expect(part).toEqual({
      source: {
        id: 'instrument:couple/temperature/correction',
        title: 'correction of couple (temperature)',
        dof: null,
        standard: { u, unit: 'K' },
      },
      share: u,
    });
  });

  test('reaches every channel that the instrument reads and no other, leaves the log as it was, and is said', () => {
    const { log, corrected } = figuresOf(couple({ correction: CORRECTION }));
    const [soc, air, board] = corrected.channels.map((channel, index) => channel.values[7]! - log.channels[index]!.values[7]!);
    expect([soc, air].every((shift) => Math.abs(shift! + 0.3) < 1e-12)).toBe(true);
    expect(board).toBe(0);
    expect(log.inferences).toEqual([]);
    expect(corrected.inferences.map(({ statement }) => statement)).toEqual([
      'The readings of soc by couple were corrected by −0.3 ± 0.1 K, in figures and plots alike.',
      'The readings of air by couple were corrected by −0.3 ± 0.1 K, in figures and plots alike.',
    ]);
  });

  test('keeps a missing reading missing, and the log itself where nothing is corrected', () => {
    const log = logOf([0, 1], { soc: { quantity: 'temperature', values: [60, Number.NaN], instrument: 'couple' } });
    expect([
      ...correctedLog(log, contextOf({ instruments: { couple: couple({ correction: CORRECTION }) } })).channels[0]!.values,
    ]).toEqual([59.7, Number.NaN]);
    expect(correctedLog(log, contextOf({ instruments: { couple: couple() } }))).toBe(log);
  });

  test('is no accuracy: a die sensor stays repeatability only, and its correction belongs to the specimen', () => {
    const die = couple({ accuracy: {}, partOfSpecimen: true, correction: CORRECTION });
    const { repeatabilityOnly, parts } = presentAt(figuresOf(die).figures, 'peak_temperature').quantity;
    expect(repeatabilityOnly).toBe(true);
    expect(parts!.map(({ source }) => source.id)).toContain('instrument:couple@larch/no-1/temperature/correction');
  });

  test('corrects what a camera read, before emissivity does', () => {
    const table = [
      'spot,part,material,contact,reading [°C],emissivity_set,emissivity,reflected [°C]',
      'Foot,base,rubber,held,40.0,0.95,0.95 ± 0.02,23.4 ± 1.0',
      '',
    ].join('\n');
    const { surface } = readSurface(new TextEncoder().encode(table), 'data/larch-2/surface.csv', 'couple');
    const foot = (instrument: InstrumentFacts) =>
      presentAt(
        derive(logOf(every(1, 60), {}), contextOf({ instruments: { couple: instrument } }), { surface }).figures,
        'surface.foot',
      );
    const corrected = foot(couple({ correction: CORRECTION, accurate: { temperature: { from: 50 } } }));
    expect(apart(corrected.quantity.value, foot(couple()).quantity.value - 0.3)).toBeLessThan(1e-9);
    expect(corrected.quantity.parts!.find(({ source }) => source.id.endsWith('/correction'))!.share).toBeCloseTo(u, 9);
    expect(corrected.inferred).toContain('The reading by couple was corrected by −0.3 ± 0.1 K.');
    expect(corrected.of).toMatchObject({ below_accurate_range: true });
  });
});
