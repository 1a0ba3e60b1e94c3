/** A trace as a plan: its words, its tables, its layout. */
import type { Plan } from './plan.ts';
import { layOutTrace } from './trace-layout.ts';
import type { Trace } from './trace-panels.ts';
import { traceCsv, traceTable } from './trace-tables.ts';
import { traceAlt, traceMethod, traceTitle } from './trace-words.ts';

/** `title` is the author's; else one is made of what is drawn. `remarks` follow the method. */
export function tracePlan(trace: Trace, title?: string, remarks: readonly string[] = []): Plan {
  return {
    title: title ?? traceTitle(trace),
    alt: traceAlt(trace),
    method: [traceMethod(trace), ...remarks].join(' '),
    csv: traceCsv(trace),
    table: traceTable(trace),
    layOut: (size) => layOutTrace(trace, size),
  };
}
