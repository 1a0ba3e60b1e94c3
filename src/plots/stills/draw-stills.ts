/** A plan → the drawings that go into pictures: one, or one for each of its parts. */
import type { StillDrawing } from '../drawing/drawn.ts';
import type { Plan } from '../drawing/plan.ts';
import { stillSize } from '../drawing/size.ts';
import { bare } from '../drawing/svg.ts';
import { render } from '../drawing/vega.ts';
import { roomBelow } from './format.ts';

/** The drawings in their order, with what the chart library warned of. */
export async function drawStills(plan: Plan): Promise<{ readonly stills: StillDrawing[]; readonly warnings: readonly string[] }> {
  const stills: StillDrawing[] = [];
  const warnings: string[] = [];
  for (const part of plan.parts?.() ?? [plan]) {
    const { title, alt, shown } = part;
    const drawn = await render(part.layOut(stillSize(roomBelow(title))));
    warnings.push(...drawn.warnings);
    stills.push({ title, alt, shown, svg: bare(drawn.svg) });
  }
  return { stills, warnings };
}
