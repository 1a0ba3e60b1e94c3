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

/** A level is told from the room's from here on, dB; below it the room's may be as loud. */
const TOLD = 6;
/** The correction there, dB: the most that is ever taken off. */
const MOST = 1.3;

/**
 * The level less the energy of the room: L − K with K = −10 lg(1 − 10^(−ΔL/10)), for levels 6 dB or more above the room; nearer ones are a bound, L − 1.3 dB.
 * Source: ISO 3744, background noise correction (from memory: nothing of the standard was read first-hand).
 */
function withoutRoom(soak: Soak, channel: Channel, rows: Rows, address: string): Measured | Reason {
  const { background, microphone } = soak.context;
  const level = energyMean(soak, channel, rows, address);
  if (isReason(level)) return level;
  const missing = [
    ...(background ? [] : ['the level of the room with the device off (`background_sound`)']),
    ...(microphone === undefined ? ['where the microphone stood (`microphone_distance`)'] : []),
  ];
  if (!background || microphone === undefined) {
    return { absent: 'no-condition', why: `The run does not state ${missing.join(' and ')} among its conditions.` };
  }
  const { value } = level.quantity;
  const above = value - background.value;
  if (above < TOLD) {
    const why = `The level is ${above < 0 ? 'no higher than' : `only ${above.toFixed(1)} dB above`} that of the room: what the device makes of it is less.`;
    return { absent: 'out-of-range', why, bound: { relation: '<', value: value - MOST, unit: 'dB' } };
  }
  const room = Math.exp(-above / PER_NEPER);
  const corrected = value + PER_NEPER * Math.log1p(-room);
  const known = level.quantity.parts !== null && background.parts !== null;
  const parts = [...scaled(level.quantity.parts ?? [], 1 / (1 - room)), ...scaled(background.parts ?? [], -room / (1 - room))];
  return {
    ...level,
    quantity: quantityOf(corrected, 'dB', parts, { stated: known, step: stepOf(soak.context, channel) }),
    of: { ...level.of, background_db: background.value, microphone },
  };
}

/** What makes each figure of fans and sound: one of the catalogue that is left out here does not compile. */
const FIGURES: Readonly<Record<keyof typeof SOUND, Maker>> = {
  fan_speed: {
    of: 'fan',
    make: (soak, channel, rows, address) => meanOf(soak, channel, rows, address) ?? noReadings(channel.name, 'the load phase'),
  },
  peak_fan_speed: { of: 'fan', make: highest },
  sound_level: { of: 'sound_level', make: energyMean },
  device_sound_level: { of: 'sound_level', make: withoutRoom },
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
  const { mean, sampling } = scatterMean(soak, { ...readings, y: energies }, 0, address, 'load');
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
