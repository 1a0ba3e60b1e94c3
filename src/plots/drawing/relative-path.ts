/** Paths in fewer bytes. */

const POLYLINE = /^(?:[ML]-?\d[\d.]*,-?\d[\d.]*)+$/;
const POINT = /([ML])(-?\d[\d.]*),(-?\d[\d.]*)/g;

/**
 * A path of straight lines written from point to point: `M10,20L11,19.5L12,19` becomes `M10,20l1-.5 1-.5`. Coordinates are multiples of
 * 0.1, and steps are taken between them in whole tenths, so that no error adds up. Any other path is returned as it is.
 */
export function relativePath(d: string): string {
  if (!POLYLINE.test(d)) return d;
  const parts: string[] = [];
  let [x, y, lines] = [0, 0, false];
  for (const [, command, left, top] of d.matchAll(POINT)) {
    const [nextX, nextY] = [tenths(left!), tenths(top!)];
    if (command === 'M') parts.push(`M${short(nextX)},${short(nextY)}`);
    else parts.push(`${lines ? joined(nextX - x) : `l${short(nextX - x)}`}${joined(nextY - y, ',')}`);
    [x, y, lines] = [nextX, nextY, command === 'L'];
  }
  return parts.join('');
}

function tenths(text: string): number {
  return Math.round(Number(text) * 10);
}

/** Tenths as a number without the zero before its point. */
function short(value: number): string {
  return String(value / 10).replace(/^(-?)0\./, '$1.');
}

/** A minus sign parts two numbers by itself. */
function joined(value: number, apart = ' '): string {
  const text = short(value);
  return text.startsWith('-') ? text : `${apart}${text}`;
}
