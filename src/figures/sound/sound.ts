/** Fans and how loud they are: what is logged of them under load. */
import type { Channel } from '../../intake/log.ts';
import { absent, isReason, noPhase, noReadings, type Reason } from '../absent.ts';
import { fromOf, gapsOf, type Measured, meanOf, placeOf, scatterMean } from '../average.ts';
import type { SOUND } from '../catalogue/sound.ts';
import type { FigureName } from '../catalogue.ts';
import { extremeOf } from '../extreme.ts';
import { figureOf, ofChannel } from '../present.ts';
import { readingsOf } from '../readings.ts';
import { addressOf, channelsOf, type Entry, phaseOf, type Rows, rowsOf, type Soak } from '../soak.ts';
import { errorsOf, quantityOf, scaled, stepOf } from '../sources.ts';

type Make = (
  soak: Soak,
  channel: Channel,
  rows: Rows,
  address: string,
) => (Measured & { readonly interval?: readonly [number, number] }) | Reason;

interface Maker {
  readonly of: 'fan' | 'sound_level';
  readonly make: Make;
}

const highest: Make = (soak, channel, _rows, address) => extremeOf(soak, channel, 'highest', address);

/** What makes each figure of fans and sound: one of the catalogue that is left out here does not compile. */
const FIGURES: Readonly<Record<keyof typeof SOUND, Maker>> = {
  fan_speed: {
    of: 'fan',
    make: (soak, channel, rows, address) => meanOf(soak, channel, rows, address) ?? noReadings(channel.name, 'the load phase'),
  },
  peak_fan_speed: { of: 'fan', make: highest },
  sound_level: { of: 'sound_level', make: energyMean },
  highest_sound_level: { of: 'sound_level', make: highest },
};

/** Nothing of quantities that the log does not have: most devices have no fan, and few testers a sound level meter. */
export function soundFigures(soak: Soak): Entry[] {
  const phase = phaseOf(soak, 'load');
  return (Object.keys(FIGURES) as FigureName[] as (keyof typeof SOUND)[]).flatMap((name) => {
    const { of, make } = FIGURES[name];
    return channelsOf(soak.log, of).flatMap((channel, index) => {
      const address = addressOf(name, channel, index);
      if (!phase) return ofChannel(channel, [[address, absent(name, noPhase(soak, 'load'))]]);
      const outcome = make(soak, channel, rowsOf(phase), address);
      const interval = !isReason(outcome) && outcome.interval ? { interval: outcome.interval } : {};
      return ofChannel(channel, [
        [address, figureOf(name, soak, outcome, { of: { phase: 'load', ...weighting(channel) }, ...interval })],
      ]);
    });
  });
}

/** dB per neper of energy: 10 / ln 10. */
const PER_NEPER = 10 / Math.LN10;

/** Energies of levels, as shares of that of the loudest. */
export function energiesOf(levels: Float64Array): { readonly loudest: number; readonly energies: Float64Array } {
  const loudest = levels.reduce((most, level) => Math.max(most, level));
  return { loudest, energies: levels.map((level) => Math.exp((level - loudest) / PER_NEPER)) };
}

/** The level of an energy that is a share of that of the loudest, dB. */
export function levelOf(loudest: number, share: number): number {
  return loudest + PER_NEPER * Math.log(share);
}

/**
 * dB: the level of the mean energy, 10 lg of the time's mean of 10^(L/10). An average of the levels themselves would be too low,
 * by more the more they swing. A step or an error of the meter acts on all levels alike, so it is that of the mean.
 */
function energyMean(soak: Soak, channel: Channel, rows: Rows, address: string): Measured | Reason {
  const readings = readingsOf(soak.log, channel.values, rows);
  if (readings.y.length < 2) return noReadings(channel.name, 'the load phase');
  const { loudest, energies } = energiesOf(readings.y);
  const step = stepOf(soak.context, channel);
  const { mean, sampling } = scatterMean(soak, { ...readings, y: energies }, 0, address, 'course');
  const value = levelOf(loudest, mean);
  const floor = step / Math.sqrt(12);
  const [scatter] = scaled([sampling], PER_NEPER / mean);
  const errors = errorsOf(soak.context, channel, value);
  const own = scatter!.share > floor ? scatter! : { ...scatter!, share: floor };
  return {
    quantity: quantityOf(value, 'dB', [...errors.parts, own], { stated: errors.stated, step }),
    from: fromOf(soak, [channel], readings),
    of: { ...placeOf(channel), ...gapsOf(readings) },
  };
}

/** The frequency weighting that the unit states: dB(A). */
function weighting({ quantity, originalUnit }: Channel): { readonly weighting?: string } {
  if (quantity !== 'sound_level') return {};
  return { weighting: /dB\s*\(?([ACZ])\)?/.exec(originalUnit)?.[1] ?? 'not stated' };
}
