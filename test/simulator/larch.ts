/** The invented device "Larch 2" in two specimens, and the bench that it stands on. No such thing exists. */
import { drawInstruments, type Instruments, type Limits } from './instruments.ts';
import type { Specimen, Supply } from './options.ts';
import { random } from './random.ts';

const GHZ = 1e9;

const NO_1: Specimen = {
  network: { dieCapacity: 9, boardCapacity: 108, dieToBoard: 2.35, boardToRoom: 4.1 },
  power: {
    switching: 2.65 / GHZ,
    baseVoltage: 0.56,
    voltagePerClock: 0.16 / GHZ,
    leakage: 0.75,
    leakageAt: 60,
    leakageScale: 38,
    boardIdle: 1.15,
    boardLoad: 1.75,
    idleActivity: 0.12,
    idleClock: 0.6 * GHZ,
  },
  governor: { limit: 84, hysteresis: 1, step: 0.05 * GHZ, lowest: 0.6 * GHZ, patience: 6 },
};

/** A little more leakage, and a joint between die and spreader that is a little worse. */
const NO_2: Specimen = {
  ...NO_1,
  network: { ...NO_1.network, dieToBoard: 2.75 },
  power: { ...NO_1.power, leakage: 0.95 },
};

export const SPECIMENS = { 'no-1': NO_1, 'no-2': NO_2 } as const;
export type SpecimenAlias = keyof typeof SPECIMENS;

export const SUPPLY: Supply = { voltage: 12.08, resistance: 0.11, ripple: 0.012, ripplePeriod: 23.7 };

/** What the instruments' invented data sheets allow; the die sensor has none, and gets what such sensors commonly show. */
export const LIMITS: Limits = { die: 1.5, probe: 1.5, thermometer: 0.5, meterGain: 0.005, meterDigits: 2, dieStep: 0.5 };

/** The one set of instruments on the bench: all runs share their errors, but for the die sensor, which belongs to the specimen. */
export function benchInstruments(specimen: SpecimenAlias): Instruments {
  const bench = drawInstruments(random(1871), LIMITS);
  if (specimen === 'no-1') return bench;
  return { ...bench, die: drawInstruments(random(1872), LIMITS).die };
}
