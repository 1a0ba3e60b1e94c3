/** A trace as a plan: its words, its tables, its layout. */
import type { Plan } from '../drawing/plan.ts';
import { alongOf, layOutTrace } from './layout.ts';
import type { Trace } from './panels.ts';
import { traceCsv, traceTable } from './tables.ts';
import { traceAlt, traceFinding, traceMethod, traceTitle } from './words.ts';

/** `title` is the author's; else one is made of what is drawn. `remarks` follow the method. */
export function tracePlan(trace: Trace, title?: string, remarks: readonly string[] = []): Plan {
  const about = traceTitle(trace);
  const found = title ?? traceFinding(trace);
  return {
    title: found ?? about,
    ...(found === undefined ? {} : { about }),
    along: alongOf(trace),
    alt: traceAlt(trace),
    method: [traceMethod(trace), ...remarks].join(' '),
    csv: traceCsv(trace),
    table: traceTable(trace),
    layOut: (size) => layOutTrace(trace, size),
  };
}
