import { describe, expect, test } from 'vitest';
import { SPECIMENS } from './larch.ts';
import { diePower, diePowerSlope, type Operation } from './power.ts';
import { balance } from './steady.ts';

const SPECIMEN = SPECIMENS['no-1'];
const LOAD: Operation = { clock: 2.4e9, voltageOffset: 0.06, activity: 1 };

describe('simulator/steady', () => {
  test('at the balance the heat of the hot die leaves through both resistances', () => {
    const { die, board, power } = balance(SPECIMEN, LOAD, 1.75, 23);
    const { dieToBoard, boardToRoom } = SPECIMEN.network;
    expect((board - 23) / boardToRoom / power - 1).toBeCloseTo(0, 10);
    expect((die - board) / dieToBoard / diePower(SPECIMEN.power, LOAD, die) - 1).toBeCloseTo(0, 10);
  });

  test('a warmer room warms the die by more than itself, because leakage answers', () => {
    const warmer = balance(SPECIMEN, LOAD, 1.75, 24).die - balance(SPECIMEN, LOAD, 1.75, 23).die;
    expect(warmer).toBeGreaterThan(1.02);
    expect(warmer).toBeLessThan(1.5);
  });

  test('leakage that outruns the cooling is refused as runaway', () => {
    const leaky = { ...SPECIMEN, power: { ...SPECIMEN.power, leakage: 4 } };
    expect(() => balance(leaky, LOAD, 1.75, 23)).toThrow('runaway');
  });

  test('the slope of the power is its derivative', () => {
    const h = 1e-4;
    const numeric = (diePower(SPECIMEN.power, LOAD, 70 + h) - diePower(SPECIMEN.power, LOAD, 70 - h)) / (2 * h);
    expect(diePowerSlope(SPECIMEN.power, LOAD, 70) / numeric - 1).toBeCloseTo(0, 6);
  });

  // Voltage and clock both down by 15 % leave 0.85³ = 0.614 of the switching power (P = A·C·V²·f; arithmetic).
  test('switching power goes with voltage squared times clock', () => {
    const model = { ...SPECIMEN.power, leakage: 0, baseVoltage: 1, voltagePerClock: 0 };
    const full = diePower(model, { clock: 2e9, voltageOffset: 0, activity: 1 }, 25);
    const less = diePower(model, { clock: 1.7e9, voltageOffset: -0.15, activity: 1 }, 25);
    expect(less / full / 0.614125 - 1).toBeCloseTo(0, 10);
  });
});
