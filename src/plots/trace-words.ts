/** What a trace shows, in words: title, text alternative, method. */

import { duration } from '../figures/in-words.ts';
import { limitText } from './limit-marks.ts';
import type { Line, Trace, TracePanel } from './trace.ts';
import { extent } from './value-scale.ts';
import { fixed, listed, reading } from './wording.ts';

/** "Temperature and clock over time: fast and rated". */
export function traceTitle(trace: Trace): string {
  const what = listed(
    [...new Set(trace.panels.map(({ heading }) => heading))].map((heading, i) => (i === 0 ? heading : lowered(heading))),
  );
  const runs = trace.subjects.map(({ alias }) => alias).filter((alias) => alias !== '');
  return `${what} over time${runs.length > 0 ? `: ${listed(runs)}` : ''}`;
}

function lowered(heading: string): string {
  return heading.slice(0, 1).toLowerCase() + heading.slice(1);
}

/** The text alternative: what is drawn, and of each line its highest reading, when, and where it ends. */
export function traceAlt(trace: Trace): string {
  const sentences = trace.panels.map(
    (panel) => `${panel.heading}: ${panel.lines.map((line) => lineAlt(line, panel, trace)).join('; ')}.`,
  );
  return [`Line chart over ${spanOf(trace)}.`, ...sentences, ...limitAlt(trace)].join(' ');
}

function spanOf({ alignment }: Trace): string {
  const { from, to, time, atLoad } = alignment;
  const rounded = (value: number) => fixed(value, time.unit === 'h' ? 1 : 0);
  if (!atLoad) return `${rounded(to - from)} ${time.unit} since the first row`;
  return `${rounded(to - from)} ${time.unit}, from ${rounded(from)} to ${rounded(to)} ${time.unit} since load start`;
}

function lineAlt(line: Line, panel: TracePanel, trace: Trace): string {
  const [low, high] = extent([line]);
  const at = line.x[line.y.indexOf(high)]!;
  const told = (value: number) => reading(value, line.decimals, panel.unit);
  const { unit } = trace.alignment.time;
  return `${line.label} from ${told(low)} to ${told(high)}, highest at ${fixed(at, unit === 'h' ? 1 : 0)} ${unit}, last ${told(line.y.at(-1)!)}`;
}

function limitAlt(trace: Trace): string[] {
  const all = trace.panels.flatMap((panel) =>
    panel.lines.map(({ limit }) => (limit === undefined ? '' : limitText(limit, panel.unit))),
  );
  const limits = [...new Set(all.filter((text) => text !== ''))];
  return limits.length === 0 ? [] : [`Throttle limit: ${listed(limits)}.`];
}

/** How it was drawn: alignment, thinning, gaps. */
export function traceMethod(trace: Trace): string {
  const lines = trace.panels.flatMap((panel) => panel.lines);
  const readings = lines.reduce((sum, { x }) => sum + x.length, 0);
  const gaps = lines.reduce((sum, { segments }) => sum + segments.length - 1, 0);
  const aligned = trace.alignment.atLoad
    ? 'Time counts from the start of the load.'
    : 'Time counts from the first row of each log: not every run has a load phase.';
  const means = lines.some(({ over }) => over !== null)
    ? ` Where they scatter they are drawn pale, their means over ${duration(trace.meanSpan)} heavy.`
    : '';
  const thinned = `Of ${readings} readings, the first, last, lowest and highest in each column of two pixels are drawn, so that no extreme is lost.${means}`;
  const broken = gaps === 0 ? '' : ` The line breaks where readings are missing (${gaps} ${gaps === 1 ? 'gap' : 'gaps'}).`;
  return `${aligned} ${thinned}${broken}`;
}
