/**
 * The bench of the demonstration as a picture: an invented device in front of an invented meter, rendered from solids. Nothing here is or was.
 * Source of the method: sphere tracing of signed distances, J. C. Hart, The Visual Computer 12, 1996 (from memory).
 */
import { random } from './random.ts';

type Vec = readonly [x: number, y: number, z: number];

const sub = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const add = (a: Vec, b: Vec, times = 1): Vec => [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]];
const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const unit = (a: Vec): Vec => {
  const length = Math.sqrt(dot(a, a));
  return [a[0] / length, a[1] / length, a[2] / length];
};
const cross = (a: Vec, b: Vec): Vec => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];

/** A solid: how far away it is, and how it looks there. */
interface Solid {
  readonly distance: (at: Vec) => number;
  readonly colour: (at: Vec) => Vec;
  /** How much of the light it mirrors. */
  readonly shine: number;
}

/** A box with rounded edges. */
const box =
  (centre: Vec, half: Vec, round: number) =>
  (at: Vec): number => {
    const [x, y, z] = sub(at, centre);
    const out: Vec = [Math.abs(x) - half[0] + round, Math.abs(y) - half[1] + round, Math.abs(z) - half[2] + round];
    const outside: Vec = [Math.max(out[0], 0), Math.max(out[1], 0), Math.max(out[2], 0)];
    return Math.sqrt(dot(outside, outside)) + Math.min(Math.max(out[0], out[1], out[2]), 0) - round;
  };

/** A cable between two points that hangs through, of straight pieces. */
const cable = (from: Vec, to: Vec, sag: number, thick: number) => {
  const points = Array.from({ length: 17 }, (_, step): Vec => {
    const t = step / 16;
    return [
      from[0] + t * (to[0] - from[0]),
      Math.max(thick, from[1] + t * (to[1] - from[1]) - 4 * sag * t * (1 - t)),
      from[2] + t * (to[2] - from[2]) + 0.35 * Math.sin(5 * t),
    ];
  });
  return (at: Vec): number => {
    let near = Number.POSITIVE_INFINITY;
    for (let piece = 1; piece < points.length; piece += 1) {
      const [start, along] = [points[piece - 1]!, sub(points[piece]!, points[piece - 1]!)];
      const off = sub(at, start);
      const gone = Math.min(1, Math.max(0, dot(off, along) / dot(along, along)));
      const rest = add(off, along, -gone);
      near = Math.min(near, dot(rest, rest));
    }
    return Math.sqrt(near) - thick;
  };
};

const plain = (r: number, g: number, b: number) => (): Vec => [r, g, b];

/** Boards of the bench: stripes along x with grain. */
function wood([x, , z]: Vec): Vec {
  const plank = Math.floor((z + 40) / 2.2);
  const grain = 0.05 * Math.sin(9 * z + 1.4 * Math.sin(0.7 * x + plank * 2.1)) + 0.03 * Math.sin(31 * z + 3 * Math.sin(1.3 * x));
  const seam = Math.abs((z + 40) / 2.2 - plank - 0.5) > 0.485 ? 0.72 : 1;
  const tone = (0.95 + 0.07 * Math.sin(plank * 12.9) + grain) * seam;
  return [0.55 * tone, 0.4 * tone, 0.26 * tone];
}

/** The lid of the device: fins. */
const FINS = Array.from({ length: 9 }, (_, fin) => box([-1.76 + fin * 0.44, 2.1, 0.34], [0.07, 1.3, 0.28], 0.03));

const SOLIDS: readonly Solid[] = [
  { distance: ([, y]) => y, colour: wood, shine: 0.08 },
  { distance: ([, , z]) => 9 - z, colour: plain(0.62, 0.64, 0.63), shine: 0 },
  // The device: a board upright on a stand, its finned lid to the front.
  { distance: box([0, 2.05, 0.75], [2.5, 1.75, 0.09], 0.05), colour: plain(0.07, 0.3, 0.2), shine: 0.2 },
  { distance: box([0, 2.1, 0.58], [2, 1.42, 0.1], 0.05), colour: plain(0.34, 0.36, 0.4), shine: 0.35 },
  { distance: (at) => Math.min(...FINS.map((fin) => fin(at))), colour: plain(0.4, 0.42, 0.46), shine: 0.4 },
  { distance: box([-1.5, 0.17, 0.75], [0.5, 0.17, 0.8], 0.06), colour: plain(0.16, 0.16, 0.17), shine: 0.1 },
  { distance: box([1.5, 0.17, 0.75], [0.5, 0.17, 0.8], 0.06), colour: plain(0.16, 0.16, 0.17), shine: 0.1 },
  { distance: box([2.2, 0.75, 0.5], [0.32, 0.26, 0.2], 0.04), colour: plain(0.72, 0.73, 0.75), shine: 0.5 },
  // The meter, its display dark.
  { distance: box([5.1, 0.75, -0.2], [1.15, 0.72, 0.65], 0.14), colour: plain(0.8, 0.55, 0.12), shine: 0.15 },
  { distance: box([5.1, 0.95, -0.83], [0.82, 0.33, 0.05], 0.03), colour: plain(0.1, 0.13, 0.11), shine: 0.5 },
  { distance: box([4.75, 0.36, -0.85], [0.13, 0.1, 0.06], 0.04), colour: plain(0.18, 0.18, 0.19), shine: 0.2 },
  { distance: box([5.45, 0.36, -0.85], [0.13, 0.1, 0.06], 0.04), colour: plain(0.18, 0.18, 0.19), shine: 0.2 },
  // The adapter.
  { distance: box([-5.2, 0.5, 1.6], [0.95, 0.5, 0.6], 0.16), colour: plain(0.13, 0.13, 0.14), shine: 0.25 },
  { distance: cable([2.5, 0.75, 0.4], [3.98, 0.6, -0.1], 0.25, 0.075), colour: plain(0.06, 0.06, 0.07), shine: 0.2 },
  { distance: cable([-4.3, 0.45, 1.6], [4.1, 0.35, 0.4], 0.4, 0.075), colour: plain(0.06, 0.06, 0.07), shine: 0.2 },
  // The probe that reads the room, on its stand.
  { distance: box([-3.4, 1.5, -0.6], [0.06, 1.5, 0.06], 0.05), colour: plain(0.55, 0.56, 0.58), shine: 0.4 },
  { distance: box([-3.4, 0.06, -0.6], [0.6, 0.06, 0.6], 0.05), colour: plain(0.3, 0.31, 0.33), shine: 0.3 },
  { distance: box([-3.4, 3.05, -0.6], [0.14, 0.28, 0.14], 0.13), colour: plain(0.85, 0.85, 0.83), shine: 0.2 },
];

const EYE: Vec = [2.6, 4.6, -12.4];
const TARGET: Vec = [0.45, 1.5, 0.6];
const SUN: Vec = unit([-0.55, 0.9, -0.5]);

interface Hit {
  readonly solid: Solid;
  readonly at: Vec;
}

/** The nearest solid to a point, and how near. */
function nearest(at: Vec): { readonly solid: Solid; readonly distance: number } {
  let found = { solid: SOLIDS[0]!, distance: Number.POSITIVE_INFINITY };
  for (const solid of SOLIDS) {
    const distance = solid.distance(at);
    if (distance < found.distance) found = { solid, distance };
  }
  return found;
}

function hit(from: Vec, along: Vec, reach = 40): Hit | null {
  let gone = 0.02;
  for (let step = 0; step < 110 && gone < reach; step += 1) {
    const at = add(from, along, gone);
    const { solid, distance } = nearest(at);
    if (distance < 0.0015) return { solid, at };
    gone += Math.max(distance * 0.95, 0.0015);
  }
  return null;
}

function normalAt({ solid, at }: Hit): Vec {
  const e = 0.004;
  const slope = (axis: Vec) => solid.distance(add(at, axis, e)) - solid.distance(add(at, axis, -e));
  return unit([slope([1, 0, 0]), slope([0, 1, 0]), slope([0, 0, 1])]);
}

/** How much of the sun arrives: 0 in the shade, less than 1 near its edge. */
function lit(at: Vec, normal: Vec): number {
  let light = 1;
  let gone = 0.05;
  const from = add(at, normal, 0.02);
  for (let step = 0; step < 40 && gone < 9; step += 1) {
    const { distance } = nearest(add(from, SUN, gone));
    if (distance < 0.002) return 0;
    light = Math.min(light, (9 * distance) / gone);
    gone += Math.max(0.04, distance);
  }
  return light;
}

/** How open a place is: corners are darker. */
function openness(at: Vec, normal: Vec): number {
  let closed = 0;
  for (const far of [0.08, 0.25, 0.6]) closed += Math.max(0, far - nearest(add(at, normal, far)).distance) / (far * 3);
  return Math.max(0.15, 1 - 0.85 * closed);
}

function shade(found: Hit, along: Vec, depth: number): Vec {
  const normal = normalAt(found);
  const [r, g, b] = found.solid.colour(found.at);
  const sun = 1.25 * Math.max(0, dot(normal, SUN)) * lit(found.at, normal);
  const sky = (0.34 + 0.16 * normal[1]) * openness(found.at, normal);
  const light: Vec = [sun * 1 + sky * 0.95, sun * 0.95 + sky * 1, sun * 0.86 + sky * 1.08];
  const mirrored = add(along, normal, -2 * dot(along, normal));
  const glint = Math.max(0, dot(mirrored, SUN)) ** 24 * found.solid.shine * (sun > 0 ? 1 : 0);
  const around =
    found.solid.shine > 0.15 && depth < 1 ? colourOf(add(found.at, normal, 0.02), mirrored, depth + 1) : ([0.5, 0.5, 0.5] as Vec);
  const share = found.solid.shine * (0.15 + 0.5 * (1 - Math.abs(dot(along, normal))) ** 3);
  return [
    r * light[0] * (1 - share) + around[0] * share + glint,
    g * light[1] * (1 - share) + around[1] * share + glint,
    b * light[2] * (1 - share) + around[2] * share + glint,
  ];
}

function colourOf(from: Vec, along: Vec, depth = 0): Vec {
  const found = hit(from, along);
  return found ? shade(found, along, depth) : [0.62, 0.64, 0.63];
}

/** Pixels of the bench as 8-bit sRGB, row by row; the same each time. */
export function benchPicture(width: number, height: number): Uint8Array {
  const pixels = new Uint8Array(width * height * 3);
  const forward = unit(sub(TARGET, EYE));
  const right = unit(cross([0, 1, 0], forward));
  const up = cross(forward, right);
  const chance = random(2026);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const [u, v] = [(x + 0.5 - width / 2) / width, (height / 2 - y - 0.5) / width];
      const along = unit(add(add(forward, right, u * 1.02), up, v * 1.02));
      const colour = colourOf(EYE, along);
      const edge = 1 - 0.55 * (u * u + v * v);
      // The grain of a sensor, so that it looks like what it stands for.
      const grain = 0.012 * (chance.uniform() - 0.5);
      for (const [channel, value] of colour.entries())
        pixels[3 * (y * width + x) + channel] = Math.round(255 * gamma(Math.min(1, Math.max(0, value * edge + grain))));
    }
  }
  return pixels;
}

/** From light to the numbers of sRGB. Source: IEC 61966-2-1 (from memory). */
function gamma(linear: number): number {
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
}
