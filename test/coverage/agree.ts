/** Two figures of one run that say the same in two ways. */
import { type Figure, isPresent } from '../../src/figures/figure.ts';
import { interval95 } from '../../src/quantities/uncertainty.ts';
import type { Saying } from './family.ts';

/**
 * Whether the energy of a phase and its mean power times its length lie in each other's reach: no further apart than the half widths of
 * both together. Nothing is asked where one of the two is absent.
 */
export function energiesAgree(figures: ReadonlyMap<string, Figure>, energy: string, power: string, seconds: number): Saying[] {
  const [byIntegral, byMean] = [figures.get(energy), figures.get(power)];
  if (!byIntegral || !byMean || !isPresent(byIntegral) || !isPresent(byMean)) return [];
  const reach = [byIntegral, byMean].map(({ quantity, interval }) => {
    const [low, high] = interval ?? interval95(quantity)!;
    return (high - low) / 2;
  });
  const apart = Math.abs(byIntegral.quantity.value - seconds * byMean.quantity.value);
  return [
    {
      asked: 'energy by integral and by mean power agree',
      said: apart <= reach[0]! + seconds * reach[1]! + 1e-9 * apart,
      atLeast: 1,
    },
  ];
}
