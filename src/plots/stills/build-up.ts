/** A drawing shown step by step: first what belongs to no run, then one run after the other. Nothing moves, since nothing is laid out again. */

import type { StillDrawing } from '../drawing/drawn.ts';
import { ownerOf } from '../drawing/palette.ts';

/** One step: its name for the file, and the drawing as far as it has come. */
export interface Step {
  readonly name: string;
  readonly svg: string;
}

/** Elements that draw something; groups only place them. */
const DRAWN = /<(?:path|line|rect)\b[^>]*\/>|<text\b[^>]*>(?:[^<]|<\/?tspan\b[^>]*>)*<\/text>/g;

/** The steps in order; the last is the whole drawing. A drawing of fewer than two runs has one step alone. `ground` names the first. */
export function stepsOf(svg: string, shown: StillDrawing['shown'], ground: string): Step[] {
  if (shown.length < 2) return [{ name: '', svg }];
  const steps = shown.map(({ name }, index) => ({ name, svg: upTo(svg, shown.slice(index + 1)) }));
  return [{ name: ground, svg: upTo(svg, shown) }, ...steps];
}

/** The drawing without the marks of these runs. */
function upTo(svg: string, later: StillDrawing['shown']): string {
  const hidden = new Set(later.map(({ k }) => k));
  return svg.replace(DRAWN, (element) => {
    const owner = ownerOf(element);
    return owner !== null && hidden.has(owner) ? '' : element;
  });
}
