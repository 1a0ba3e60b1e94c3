/** The lid of the invented device as an invented thermal camera exports it: a table of temperatures, a cell a pixel. */
import { random } from './random.ts';

/** What the camera shows at places of the image, °C. */
export interface Shown {
  readonly room: number;
  readonly centre: number;
  readonly edge: number;
  readonly socket: number;
}

export const PIXELS = { width: 96, height: 72 } as const;
/** Where the lid and the socket lie, in shares of the image; and the spots of the table. */
export const LID = { x: [0.14, 0.86], y: [0.1, 0.84] } as const;
export const SPOTS_AT = { centre: [0.46, 0.44], edge: [0.5, 0.78], socket: [0.9, 0.9] } as const;

const NOISE = 0.06;
const FINS = 9;

/** The image in degrees without noise, at a place in shares of width and height: the truth of what the camera shows. */
export function shownAt({ room, centre, edge, socket }: Shown, x: number, y: number): number {
  const [cx, cy] = SPOTS_AT.centre;
  const onLid = x >= LID.x[0] && x <= LID.x[1] && y >= LID.y[0] && y <= LID.y[1];
  const onSocket = x > 0.84 && x < 0.96 && y > 0.84 && y < 0.97;
  if (onSocket) return socket;
  if (!onLid) return room + (edge - room) * 0.12 * Math.exp(-(((x - 0.5) / 0.45) ** 2) - ((y - 0.5) / 0.45) ** 2);
  // Falls from the middle so that it has the edge's reading at the edge; fins are a little cooler than what lies between them.
  const [ex, ey] = SPOTS_AT.edge;
  const far = (x - cx) ** 2 + (y - cy) ** 2;
  const fall = (centre - edge) / ((ex - cx) ** 2 + (ey - cy) ** 2);
  const fin = 0.25 * Math.cos((2 * Math.PI * FINS * (x - cx)) / (LID.x[1] - LID.x[0])) - 0.25;
  return centre - fall * far + fin;
}

/** The table as CSV, without a header. */
export function thermalImage(shown: Shown, seed: number): string {
  const noise = random(seed + 90_000);
  const rows = Array.from({ length: PIXELS.height }, (_, row) =>
    Array.from({ length: PIXELS.width }, (__, column) => {
      const reading = shownAt(shown, (column + 0.5) / PIXELS.width, (row + 0.5) / PIXELS.height) + NOISE * noise.normal();
      return reading.toFixed(1);
    }).join(','),
  );
  return `${rows.join('\n')}\n`;
}
