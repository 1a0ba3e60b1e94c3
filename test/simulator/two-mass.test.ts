import { describe, expect, test } from 'vitest';
import { advanceBy, steadyState, type Temperatures, type TwoMass, timeConstants } from './two-mass.ts';

const NETWORK: TwoMass = { dieCapacity: 9, boardCapacity: 122, dieToBoard: 2.35, boardToRoom: 4.1 };
const ROOM = 22;

function relative(found: number, expected: number): number {
  return Math.abs(found / expected - 1);
}

function advanceTimes(
  network: TwoMass,
  start: Temperatures,
  heat: { die: number; board: number },
  step: number,
  times: number,
): Temperatures {
  const advance = advanceBy(network, step);
  let now = start;
  for (let k = 0; k < times; k++) now = advance(now, heat, ROOM);
  return now;
}

describe('simulator/two-mass', () => {
  test('the steady state is ambient + R·P, resistances in series (Incropera, chapter 3: thermal circuits)', () => {
    const { die, board } = steadyState(NETWORK, { die: 5, board: 1.5 }, ROOM);
    expect(relative(board, 22 + 4.1 * 6.5)).toBeLessThan(1e-12);
    expect(relative(die, 22 + 4.1 * 6.5 + 2.35 * 5)).toBeLessThan(1e-12);
  });

  test('after many long steps the steady state is reached', () => {
    const end = advanceTimes(NETWORK, { die: ROOM, board: ROOM }, { die: 5, board: 1.5 }, 60, 300);
    const analytic = steadyState(NETWORK, { die: 5, board: 1.5 }, ROOM);
    expect(relative(end.die, analytic.die)).toBeLessThan(1e-9);
    expect(relative(end.board, analytic.board)).toBeLessThan(1e-9);
  });

  test('time constants are the roots of the characteristic polynomial: product 1/det, sum −trace/det (Vieta)', () => {
    const [short, long] = timeConstants(NETWORK);
    const { dieCapacity: c1, boardCapacity: c2, dieToBoard: r1, boardToRoom: r2 } = NETWORK;
    expect(relative(short * long, r1 * c1 * r2 * c2)).toBeLessThan(1e-12);
    expect(relative(short + long, r1 * c1 + r2 * c2 + r2 * c1)).toBeLessThan(1e-12);
  });

  test('a die that is glued to its board has one time constant, R·C of both together (lumped capacitance, Incropera 5.1)', () => {
    const [, long] = timeConstants({ ...NETWORK, dieToBoard: 1e-6 });
    expect(relative(long, 4.1 * (9 + 122))).toBeLessThan(1e-6);
  });

  // First-order fractions 1 − e^(−t/τ), the table of any text on first-order systems; 0.632 at one time constant.
  test.each([
    [1, 0.63212056],
    [2, 0.86466472],
    [3, 0.95021293],
    [5, 0.99326205],
  ])('with a tiny die the board is first order: after %d τ it has come a share of %f', (n, share) => {
    const network = { ...NETWORK, dieCapacity: 1e-6 };
    const tau = 4.1 * 122;
    const { board } = advanceTimes(network, { die: ROOM, board: ROOM }, { die: 0, board: 6 }, tau / 64, 64 * n);
    expect(relative((board - ROOM) / (4.1 * 6), share)).toBeLessThan(1e-6);
  });

  // Lienhard, "A Heat Transfer Textbook", Example 1.4: solder bead, 1 mm, τ 1.116 s, 20 °C in gas of 200 °C; properties from memory.
  test('the solder bead of a textbook: 95 % of the way after three time constants, 197.96 °C after 5 s', () => {
    const radius = 0.5e-3;
    const capacity = 9300 * 180 * ((4 / 3) * Math.PI * radius ** 3);
    const resistance = 1 / (250 * 4 * Math.PI * radius ** 2);
    const bead: TwoMass = { dieCapacity: 1e-9, boardCapacity: capacity, dieToBoard: 1, boardToRoom: resistance };
    expect(relative(timeConstants(bead)[1], 1.116)).toBeLessThan(1e-5);
    const { board } = advanceBy(bead, 5)({ die: 20, board: 20 }, { die: 0, board: 0 }, 200);
    expect(relative(board, 197.96057)).toBeLessThan(1e-6);
  });

  test('one exact step equals a thousand Runge-Kutta steps of the differential equations themselves', () => {
    const heat = { die: 6, board: 1.2 };
    const exact = advanceBy(NETWORK, 50)({ die: 30, board: 26 }, heat, ROOM);
    const numeric = rungeKutta(NETWORK, { die: 30, board: 26 }, heat, 50, 1000);
    expect(relative(exact.die, numeric.die)).toBeLessThan(1e-10);
    expect(relative(exact.board, numeric.board)).toBeLessThan(1e-10);
  });

  test('energy is conserved: heat set free = heat stored + heat given to the room', () => {
    const heat = { die: 6, board: 1.2 };
    const advance = advanceBy(NETWORK, 0.5);
    let now: Temperatures = { die: ROOM, board: ROOM };
    let given = 0;
    for (let k = 0; k < 4000; k++) {
      const next = advance(now, heat, ROOM);
      given += (0.5 * ((now.board + next.board) / 2 - ROOM)) / NETWORK.boardToRoom;
      now = next;
    }
    const stored = NETWORK.dieCapacity * (now.die - ROOM) + NETWORK.boardCapacity * (now.board - ROOM);
    expect(relative(stored + given, 7.2 * 2000)).toBeLessThan(1e-5);
  });

  test('feedback lengthens the time constants, and too much of it is refused as runaway', () => {
    expect(timeConstants(NETWORK, 0.03)[1]).toBeGreaterThan(timeConstants(NETWORK)[1]);
    expect(() => timeConstants(NETWORK, 1 / (NETWORK.dieToBoard + NETWORK.boardToRoom))).toThrow('runaway');
  });
});

/** The classical fourth-order method on the two equations of the module's first comment, written out independently. */
function rungeKutta(
  n: TwoMass,
  start: Temperatures,
  heat: { die: number; board: number },
  time: number,
  steps: number,
): Temperatures {
  const slope = (x: number, y: number): [number, number] => [
    (heat.die - (x - y) / n.dieToBoard) / n.dieCapacity,
    (heat.board + (x - y) / n.dieToBoard - (y - ROOM) / n.boardToRoom) / n.boardCapacity,
  ];
  const h = time / steps;
  let { die: x, board: y } = start;
  for (let k = 0; k < steps; k++) {
    const [a, b] = slope(x, y);
    const [c, d] = slope(x + (h * a) / 2, y + (h * b) / 2);
    const [e, f] = slope(x + (h * c) / 2, y + (h * d) / 2);
    const [g, i] = slope(x + h * e, y + h * f);
    x += (h * (a + 2 * c + 2 * e + g)) / 6;
    y += (h * (b + 2 * d + 2 * f + i)) / 6;
  }
  return { die: x, board: y };
}
