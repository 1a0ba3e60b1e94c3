/** A trace as a plan: its words, its tables, its layout. */
import type { Plan } from '../drawing/plan.ts';
import { alongOf, layOutTrace } from './layout.ts';
import type { Trace, TracePanel } from './panels.ts';
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
    shown: shownIn(trace),
    ...(trace.panels.length > 1 ? { parts: () => panelsApart(trace).map((panels) => tracePlan({ ...trace, panels }, title)) } : {}),
  };
}

/** Lines by their styles, each once. */
function shownIn({ panels }: Trace): Plan['shown'] {
  const lines = panels.flatMap((panel) => panel.lines.map(({ k, label }) => [k, { name: label, k }] as const));
  return [...new Map(lines).values()];
}

/** Each panel by itself; a flag stays with the panel above it. */
function panelsApart({ panels }: Trace): TracePanel[][] {
  const apart: TracePanel[][] = [];
  for (const panel of panels) {
    if (panel.kind === 'throttle_flag' && apart.length > 0) apart.at(-1)!.push(panel);
    else apart.push([panel]);
  }
  return apart;
}
