/** Lines along which an image reads one temperature: marching squares, with straight pieces between the middles of pixels. */

/** In pixels of the image: 0.5 is the middle of the first. */
export type Spot = readonly [x: number, y: number];

/** A grid of readings within an image; columns and rows count from the image's corner. */
export interface Grid {
  readonly width: number;
  readonly height: number;
  readonly at: (column: number, row: number) => number;
}

/** Lines at a level, each from end to end. A saddle is cut by the mean of its corners. Source: W. E. Lorensen and H. E. Cline, SIGGRAPH 1987 (from memory). */
export function contours(grid: Grid, level: number): Spot[][] {
  const pieces: [Spot, Spot][] = [];
  for (let row = 0; row + 1 < grid.height; row += 1)
    for (let column = 0; column + 1 < grid.width; column += 1) pieces.push(...piecesOf(grid, level, column, row));
  return joined(pieces);
}

function piecesOf({ at }: Grid, level: number, column: number, row: number): [Spot, Spot][] {
  const corners = [at(column, row), at(column + 1, row), at(column + 1, row + 1), at(column, row + 1)] as const;
  const above = corners.map((value) => value >= level);
  const places: readonly Spot[] = [
    [column + 0.5, row + 0.5],
    [column + 1.5, row + 0.5],
    [column + 1.5, row + 1.5],
    [column + 0.5, row + 1.5],
  ];
  const crossed = [0, 1, 2, 3].filter((side) => above[side] !== above[(side + 1) % 4]);
  const cut = (side: number): Spot => {
    const [from, to] = [side, (side + 1) % 4];
    const share = (level - corners[from]!) / (corners[to]! - corners[from]!);
    const [a, b] = [places[from]!, places[to]!];
    return [a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])];
  };
  if (crossed.length === 2) return [[cut(crossed[0]!), cut(crossed[1]!)]];
  if (crossed.length < 4) return [];
  const middle = corners.reduce((sum, value) => sum + value, 0) / 4 >= level;
  const pairs =
    middle === above[0]
      ? [
          [0, 1],
          [2, 3],
        ]
      : [
          [3, 0],
          [1, 2],
        ];
  return pairs.map(([first, second]): [Spot, Spot] => [cut(first!), cut(second!)]);
}

/** Pieces put together where they meet. */
function joined(pieces: readonly [Spot, Spot][]): Spot[][] {
  const name = ([x, y]: Spot) => `${x.toFixed(6)} ${y.toFixed(6)}`;
  const ends = new Map<string, number[]>();
  pieces.forEach((piece, index) => {
    for (const end of piece) ends.set(name(end), [...(ends.get(name(end)) ?? []), index]);
  });
  const used = new Set<number>();
  const follow = (line: Spot[]): void => {
    for (;;) {
      const end = line.at(-1)!;
      const next = ends.get(name(end))?.find((index) => !used.has(index));
      if (next === undefined) return;
      used.add(next);
      const [a, b] = pieces[next]!;
      line.push(name(a) === name(end) ? b : a);
    }
  };
  return pieces.flatMap((piece, index) => {
    if (used.has(index)) return [];
    used.add(index);
    const line: Spot[] = [...piece];
    follow(line);
    line.reverse();
    follow(line);
    return [line];
  });
}
