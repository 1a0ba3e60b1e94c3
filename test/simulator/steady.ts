/** The steady state of a device whose leakage rises with its temperature. */
import type { Specimen } from './options.ts';
import { diePower, diePowerSlope, type Operation } from './power.ts';
import { steadyState, timeConstants } from './two-mass.ts';

export interface Balance {
  readonly die: number;
  readonly board: number;
  /** Of die and board together, W. */
  readonly power: number;
  /** s, short and long, linearised at the balance. */
  readonly timeConstants: readonly [number, number];
}

/**
 * Solves T₁ = Tₐ + R₁P₁(T₁) + R₂(P₁(T₁) + P₂) by Newton's method from the room upwards; the excess is concave in T₁, so the
 * steps do not overshoot the lower (stable) solution. `boardPower` in W, `room` in °C. Throws at thermal runaway.
 */
export function balance(specimen: Specimen, operation: Operation, boardPower: number, room: number): Balance {
  const { network, power } = specimen;
  const both = network.dieToBoard + network.boardToRoom;
  let die = room;
  for (let round = 0; round < 100; round++) {
    const excess = steadyState(network, { die: diePower(power, operation, die), board: boardPower }, room).die - die;
    const slope = both * diePowerSlope(power, operation, die) - 1;
    if (slope >= 0) throw new RangeError('thermal runaway: no steady state at this setting');
    die -= excess / slope;
    if (Math.abs(excess) < 1e-12 * Math.abs(die)) break;
  }
  const heat = { die: diePower(power, operation, die), board: boardPower };
  return {
    ...steadyState(network, heat, room),
    power: heat.die + heat.board,
    timeConstants: timeConstants(network, diePowerSlope(power, operation, die)),
  };
}
