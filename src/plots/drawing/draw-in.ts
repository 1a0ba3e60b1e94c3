/** A plan in one size → SVG to stand in a page. Free of Node: stage 1 and the reader's browser draw by it. */
import type { Plan } from './plan.ts';
import type { Size } from './size.ts';
import { inline } from './svg.ts';
import { type Rendered, render } from './vega.ts';

/** `prefix` makes the ids of the SVG unique in its page. */
export async function drawIn(size: Size, planned: Plan, prefix: string): Promise<Rendered> {
  const { svg, warnings } = await render(planned.layOut(size));
  return { svg: inline(svg, `${prefix}-${size.name}`, planned.title), warnings };
}
