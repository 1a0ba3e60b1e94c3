/** How the time of a load is shared out among the steps of the clock. */
import type { Channel } from '../../intake/log.ts';
import { seriesMean } from '../../statistics/series-mean.ts';
import { absent, noPhase, noReadings } from '../absent.ts';
import { fromOf, gapsOf, placeOf } from '../average.ts';
import { present } from '../present.ts';
import { type Readings, readingsOf } from '../readings.ts';
import { type Entry, phaseOf, rowsOf, type Soak } from '../soak.ts';
import { quantityOf, samplingPart } from '../sources.ts';

/** More different readings than this are no steps: they are put into classes. */
const MOST_STEPS = 12;

/** `clock_share.at_2600_MHz` …: a share of each step that was seen, or of classes of equal width where there are more than twelve. */
export function clockShares(soak: Soak, channel: Channel): Entry[] {
  const phase = phaseOf(soak, 'load');
  if (!phase) return [['clock_share', absent('clock_share', noPhase(soak, 'load'))]];
  const readings = readingsOf(soak.log, channel.values, rowsOf(phase));
  if (readings.y.length < 2) return [['clock_share', absent('clock_share', noReadings(channel.name, 'the load phase'))]];
  const width = classWidth(readings.y);
  const classes = [...new Set(Array.from(readings.y, (value) => classOf(value, width)))].sort((a, b) => a - b);
  return classes.map((centre) => [`clock_share.at_${named(centre)}_MHz`, shareOf(soak, channel, readings, centre, width)]);
}

function shareOf(soak: Soak, channel: Channel, readings: Readings, centre: number, width: number): Entry[1] {
  const inside = Float64Array.from(readings.y, (value) => (classOf(value, width) === centre ? 1 : 0));
  const { mean: share, effectiveCount } = seriesMean(inside, readings.observed > 0 ? readings.weights : undefined);
  const [low, high] = wilson(share, inside.every((each) => each === inside[0]) ? readings.y.length : effectiveCount);
  const address = `clock_share.at_${named(centre)}_MHz`;
  const u = (high - low) / (2 * Z95);
  const clock = width === 0 ? megahertz(centre) : `${megahertz(centre - width / 2)} to ${megahertz(centre + width / 2)}`;
  return present(
    'clock_share',
    soak,
    {
      quantity: quantityOf(share, '1', [samplingPart(soak.context, address, u, null)], { stated: true, step: 0 }),
      from: fromOf(soak, [channel], readings),
      of: { ...placeOf(channel), step: `${clock} MHz`, ...gapsOf(readings) },
    },
    { interval: [low, high] },
  );
}

/** Width of the classes, Hz: 0 where each step is one of its own, else the smallest of 1, 2, 5 × 10ⁿ that leaves twelve or fewer. */
function classWidth(y: Float64Array): number {
  const distinct = new Set(y);
  if (distinct.size <= MOST_STEPS) return 0;
  for (let power = 1; ; power *= 10) {
    for (const factor of [1, 2, 5]) {
      const width = factor * power;
      if (new Set(Array.from(distinct, (value) => classOf(value, width))).size <= MOST_STEPS) return width;
    }
  }
}

/** Centre of the class that a reading falls into; itself where the steps are no classes. */
function classOf(value: number, width: number): number {
  return width === 0 ? value : width * Math.round(value / width);
}

/** To a kilohertz. */
function megahertz(hertz: number): string {
  return String(Math.round(hertz / 1e3) / 1e3);
}

/** Letters, digits and `_` alone, so that an address needs no quotes. */
function named(hertz: number): string {
  return megahertz(hertz).replaceAll(/[^0-9]/g, '_');
}

const Z95 = 1.959964;

/**
 * 95 % interval of a share that was seen in n independent readings, which stays within 0 and 1 (E. B. Wilson, Journal of the American
 * Statistical Association 22, 1927, 209–212; from memory).
 */
export function wilson(share: number, n: number): readonly [number, number] {
  const square = Z95 ** 2 / n;
  const middle = (share + square / 2) / (1 + square);
  const half = (Z95 / (1 + square)) * Math.sqrt((share * (1 - share)) / n + square / (4 * n));
  return [Math.min(share, Math.max(0, middle - half)), Math.max(share, Math.min(1, middle + half))];
}
