/**
 * The lumped-capacitance model of a small computer: a die on a board or case, the board in a room.
 *
 *   C₁ dT₁/dt = P₁ − (T₁ − T₂)/R₁        C₂ dT₂/dt = P₂ + (T₁ − T₂)/R₁ − (T₂ − Tₐ)/R₂
 *
 * Source: Incropera, DeWitt, Bergman, Lavine, "Fundamentals of Heat and Mass Transfer", chapter 5 (lumped capacitance);
 * Lienhard, "A Heat Transfer Textbook", chapters 1 and 5; the solution of two coupled linear equations is that of any
 * textbook on ordinary differential equations.
 */

export interface TwoMass {
  /** C₁, J/K. */
  readonly dieCapacity: number;
  /** C₂, J/K. */
  readonly boardCapacity: number;
  /** R₁, K/W. */
  readonly dieToBoard: number;
  /** R₂, K/W. */
  readonly boardToRoom: number;
}

/** °C, both. */
export interface Temperatures {
  readonly die: number;
  readonly board: number;
}

/** Heat set free in each mass, W. */
export interface Heat {
  readonly die: number;
  readonly board: number;
}

/** Temperatures at which as much heat leaves as is set free, °C. */
export function steadyState(network: TwoMass, heat: Heat, room: number): Temperatures {
  const board = room + network.boardToRoom * (heat.die + heat.board);
  return { board, die: board + network.dieToBoard * heat.die };
}

/**
 * Both time constants, s, the short one first: minus the reciprocals of the eigenvalues of the two equations.
 * `feedback` is dP₁/dT₁ in W/K (leakage), 0 where the power does not depend on the temperature.
 * Throws where the feedback outruns the cooling, because then there is no steady state.
 */
export function timeConstants(network: TwoMass, feedback = 0): readonly [number, number] {
  const [fast, slow] = eigenvalues(matrix(network, feedback));
  if (!(slow < 0)) throw new RangeError(`thermal runaway: leakage of ${feedback} W/K outruns the cooling`);
  return [-1 / fast, -1 / slow];
}

/** Advances the temperatures by a fixed step, exactly, for heat and room held over that step. */
export type Advance = (now: Temperatures, heat: Heat, room: number) => Temperatures;

/** The exact step of `step` seconds: the deviation from the steady state times the matrix exponential. */
export function advanceBy(network: TwoMass, step: number): Advance {
  const [[a, b], [c, d]] = exponential(matrix(network, 0), step);
  return (now, heat, room) => {
    const end = steadyState(network, heat, room);
    const die = now.die - end.die;
    const board = now.board - end.board;
    return { die: end.die + a * die + b * board, board: end.board + c * die + d * board };
  };
}

type Matrix = readonly [readonly [number, number], readonly [number, number]];

function matrix(network: TwoMass, feedback: number): Matrix {
  const inner = 1 / network.dieToBoard;
  const outer = 1 / network.boardToRoom;
  return [
    [(feedback - inner) / network.dieCapacity, inner / network.dieCapacity],
    [inner / network.boardCapacity, -(inner + outer) / network.boardCapacity],
  ];
}

/** Both eigenvalues, 1/s, the fast one first; real, since the off-diagonal product is positive. */
function eigenvalues([[a, b], [c, d]]: Matrix): readonly [number, number] {
  const root = Math.hypot(a - d, 2 * Math.sqrt(b * c));
  return [(a + d - root) / 2, (a + d + root) / 2];
}

/** e^(At) of a two-by-two matrix with distinct eigenvalues (Sylvester's formula). */
function exponential(m: Matrix, t: number): Matrix {
  const [fast, slow] = eigenvalues(m);
  const f = Math.exp(fast * t);
  const s = Math.exp(slow * t);
  const ofMatrix = (f - s) / (fast - slow);
  const ofUnit = (fast * s - slow * f) / (fast - slow);
  const [[a, b], [c, d]] = m;
  return [
    [ofMatrix * a + ofUnit, ofMatrix * b],
    [ofMatrix * c, ofMatrix * d + ofUnit],
  ];
}
