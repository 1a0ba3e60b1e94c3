/** What a trace shows, in words: title, text alternative, method. */

import type { FigureName } from '../../figures/catalogue.ts';
import { duration, listed } from '../../figures/in-words.ts';
import type { QuantityKind } from '../../intake/log.ts';
import { limitText } from '../drawing/labels/limit-marks.ts';
import { extent } from '../drawing/value-scale.ts';
import { fixed, reading, titleOfChannel } from '../drawing/wording.ts';
import type { Line, Trace, TracePanel } from './panels.ts';

/** "Temperature and clock over time: fast and rated"; of a single channel its name, too. */
export function traceTitle(trace: Trace): string {
  const headings = [...new Set(trace.panels.map(({ heading }) => heading.replace(/ \(.*\)$/, '')))];
  const what = listed(headings.map((heading, i) => (i === 0 ? heading : lowered(heading))));
  const channels = new Set(trace.panels.flatMap((panel) => panel.lines.map(({ channelLabel }) => channelLabel)));
  const [channel] = channels;
  const named = channels.size === 1 && trace.panels[0]!.kind !== 'other' ? channel : undefined;
  const runs = trace.runs.map(({ alias }) => alias).filter((alias) => alias !== '');
  return `${titleOfChannel(what, named)} over time${runs.length > 0 ? `: ${listed(runs)}` : ''}`;
}

function lowered(heading: string): string {
  return heading.slice(0, 1).toLowerCase() + heading.slice(1);
}

/** Of more runs than this a sentence would be a list. */
const MOST_FOUND = 4;

/**
 * What was found, as a sentence without its full stop: where each run's temperature settles, and which run throttles when. Undefined where
 * a run says neither, where a part of the time is drawn, or where temperatures are not what is drawn first.
 */
export function traceFinding(trace: Trace): string | undefined {
  const [panel] = trace.panels;
  if (trace.windowed || !panel || panel.kind !== 'temperature' || panel.rise) return undefined;
  const lines = trace.runs.map((_, run) => panel.lines.find((line) => line.run === run));
  const clauses = lines.map((line, run) => (line ? clauseOf(trace, run, line, panel.asked) : undefined));
  if (clauses.length > MOST_FOUND || clauses.some((clause) => clause === undefined)) return undefined;
  const told = clauses.map((clause, i) => {
    const before = clauses[i - 1];
    const verb = before?.verb === clause!.verb ? '' : ` ${clause!.verb}`;
    return `${clause!.run}${verb} ${clause!.rest}`.trim();
  });
  const sentence = told.length === 2 && clauses[0]!.verb !== clauses[1]!.verb ? told.join(', ') : listed(told);
  return sentence.slice(0, 1).toUpperCase() + sentence.slice(1);
}

function clauseOf({ runs }: Trace, run: number, line: Line, asked?: string) {
  const { alias, told } = runs[run]!;
  const throttles = told('time_to_throttle', line.channel);
  if (throttles !== undefined) return { run: alias, verb: 'throttles', rest: `after ${throttles}` };
  const steady = told('steady_temperature', line.channel, asked);
  return steady === undefined ? undefined : { run: alias, verb: 'settles', rest: `at ${steady}` };
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

/** Figures that say what matters of a line, with the words before them. */
const TOLD: Readonly<Partial<Record<QuantityKind, readonly (readonly [figure: FigureName, words: string])[]>>> = {
  temperature: [
    ['peak_temperature', 'peak under load'],
    ['steady_temperature', 'steady at'],
  ],
  power: [
    ['load_power', 'mean under load'],
    ['peak_power', 'peak'],
  ],
  current: [['load_current', 'mean under load']],
  clock: [
    ['mean_clock', 'mean under load'],
    ['lowest_clock', 'lowest'],
  ],
};
const TOLD_RISE = [['temperature_rise', 'at steady state']] as const;

/** The figures of a line where it has them, else its range; and when its highest reading was. */
function lineAlt(line: Line, panel: TracePanel, trace: Trace): string {
  if (panel.kind === 'throttle_flag') return flagAlt(line, trace);
  const { told: figure } = trace.runs[line.run]!;
  const names = trace.windowed ? [] : panel.rise ? TOLD_RISE : (TOLD[panel.kind] ?? []);
  const figures = names.flatMap(([name, words]) => {
    const text = figure(name, line.channel, panel.asked);
    return text === undefined ? [] : [`${words} ${text}`];
  });
  const [low, high] = extent([line]);
  const told = (value: number) => reading(value, line.decimals, panel.unit);
  const range = figures.length > 0 ? [] : [`between ${told(low)} and ${told(high)}`];
  const { unit } = trace.alignment.time;
  const at = fixed(line.x[line.y.indexOf(high)]!, unit === 'h' ? 1 : 0);
  return `${line.label} ${[...range, ...figures, `highest reading at ${at} ${unit}`].join(', ')}`;
}

function flagAlt(line: Line, { alignment }: Trace): string {
  const first = line.y.indexOf(1);
  return first < 0
    ? `${line.label} never up`
    : `${line.label} up for the first time at ${fixed(line.x[first]!, 0)} ${alignment.time.unit}`;
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
  const readings = lines.reduce((sum, { count }) => sum + count, 0);
  const gaps = lines.some(({ segments }) => segments.length > 1);
  const aligned = trace.alignment.atLoad
    ? 'Time counts from the start of the load.'
    : 'Time counts from the first row of each log: not every run has a load phase.';
  const spans = listed([...new Set(lines.filter(({ over }) => over !== null).map(({ meanSpan }) => duration(meanSpan)))]);
  const means = lines.some(({ over }) => over !== null)
    ? ` Where they scatter they are drawn pale, their means over ${spans} heavy.`
    : '';
  const thinned = `Of ${readings} readings, the first, last, lowest and highest in each column of two pixels are drawn, so that no extreme is lost.${means}`;
  const broken = gaps ? ' The line breaks where readings are missing.' : '';
  return `${aligned} ${thinned}${broken}`;
}
