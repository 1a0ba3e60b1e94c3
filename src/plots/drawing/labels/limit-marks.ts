/** The throttle limit: a line of its own, named where no other line runs. */
import type { Label, Rule } from '../marks.ts';
import { cut, textWidth } from '../text-width.ts';
import { pixelOf, type Scale } from '../ticks.ts';
import { fixed } from '../wording.ts';
import { type Area, type Box, freest, overlap } from './obstacles.ts';

export interface Limit {
  readonly value: number;
  /** Labels of the lines that have it; empty when all have. */
  readonly owners: readonly string[];
}

/** The throttle limits of a panel's lines, each once, with whose it is where they differ. */
export function limitsOf(lines: readonly { readonly limit?: number; readonly label: string }[]): Limit[] {
  const limits = new Map<number, string[]>();
  for (const { limit, label } of lines) if (limit !== undefined) limits.set(limit, [...(limits.get(limit) ?? []), label]);
  return [...limits].map(([value, owners]) => ({ value, owners: owners.length === lines.length ? [] : owners }));
}

/** "80 °C" or "79.5 °C". */
export function limitText(value: number, unit: string): string {
  return `${fixed(value, Number.isInteger(value) ? 0 : 1)} ${unit}`;
}

const COLOUR = 'var(--plot-limit)';

/** Rules and labels of the limits, and what the labels cover; one that lies off the scale is only named, at the upper edge. */
export function limitMarks(
  limits: readonly Limit[],
  unit: string,
  y: Scale,
  area: Area,
): { rules: Rule[]; labels: Label[]; boxes: readonly Box[] } {
  const taken: Box[] = [];
  const drawn = limits.map(({ value, owners }) => {
    const inside = value >= y.from && value <= y.to;
    const whose = owners.length > 0 ? `, ${owners.join(', ')}` : '';
    const text = `throttle limit ${limitText(value, unit)}${whose}${inside ? '' : ' (off the scale)'}`;
    const at = inside ? pixelOf(value, y, area.height) : 0;
    const rule: Rule = { x: 0, x2: area.width, y: at, y2: at, stroke: COLOUR, width: 1.25, dash: [2, 3] };
    const { label, box } = labelAt(cut(text, area.size.small, area.width - 8), at, area, taken);
    taken.push(box);
    return { rules: inside ? [rule] : [], label };
  });
  return { rules: drawn.flatMap(({ rules }) => rules), labels: drawn.map(({ label }) => label), boxes: taken };
}

/** How many rows above and below a limit its name is tried in, where other names stand. */
const ROWS = 8;

/** The name of a limit on the nearest row to it where no other name stands, on the stretch of it that covers least of the lines. */
function labelAt(text: string, at: number, area: Area, taken: readonly Box[]): { label: Label; box: Box } {
  const { small } = area.size;
  const long = textWidth(text, small);
  const columns = [area.width - long - 4, 4, (area.width - long) / 2, (area.width - long) / 4, ((area.width - long) * 3) / 4];
  const rows = Array.from({ length: ROWS }, (_, k) => [at - small * (0.65 + k * 1.2), at + small * (0.75 + k * 1.2)])
    .map((pair) => pair.filter((y) => y > small / 4 && y < area.height - small / 4))
    .map((pair) => pair.flatMap((y) => columns.map((x) => ({ x, y, box: boxAt(x, y, long, small) }))))
    .map((places) => places.filter(({ box }) => !taken.some((other) => overlap(box, other))));
  const free = rows.find((places) => places.length > 0) ?? [{ x: columns[0]!, y: at, box: boxAt(columns[0]!, at, long, small) }];
  const { x, y, box } = freest(free, area.lines);
  return { label: { x, y, text, size: small, fill: COLOUR }, box };
}

function boxAt(x: number, y: number, long: number, high: number): Box {
  return { left: x - 3, right: x + long + 3, top: y - high / 2, bottom: y + high / 2 };
}
