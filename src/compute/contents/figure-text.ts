/** Figures as pages print them: one printer for all of them. */
import { CLOCK_UNSTATED } from '../../figures/average.ts';
import { definitionOf } from '../../figures/catalogue.ts';
import { type Figure, type From, isPresent, type NameOfFigure, type PresentFigure } from '../../figures/figure.ts';
import { CRITERIA, criterionInBrief } from '../../figures/thermal/criteria.ts';
import { decimalPads } from '../../quantities/decimal-pads.ts';
import { printQuantity, printUncertainty } from '../../quantities/print.ts';
import type { Quantity } from '../../quantities/quantity.ts';
import type { Condition, Run } from '../../register/register.ts';
import { conditionLabel } from '../../register/values/condition-kinds.ts';
import { nameInWords } from '../../words/expression/name-in-words.ts';
import { fragmentOf } from '../../words/page/fragment.ts';
import type { ConditionRow, Link, ShownFigure } from '../results.ts';

/** Parts of `of` that read as a figure's detail, in this order. */
const DETAILS = [
  'title',
  'spot_title',
  'contact',
  'voltage_offset',
  'outcome',
  'basis',
  'step',
  'channel',
  'phase',
  'over',
  'at',
  'read',
  'averaging',
  'edges',
  'sampling',
  'gaps',
  'independent_readings',
  'scatter_about',
  'method',
  'integral_of_power_j',
  'criterion',
  'read_off',
  'fit',
  'skipped',
  'extrapolated',
  'still',
  'held',
  'load',
  'reason',
  'clock',
  'missed',
  'sticky',
  'lag',
  'n',
  'repeats_worth',
  'median',
  'least',
  'greatest',
  'outlier',
  'verdict',
];

const CRITERIA_IN_BRIEF = new Map(CRITERIA.map((criterion) => [criterion.name, criterionInBrief(criterion)]));

/** Fewer independent readings than this are more luck than an interval tells. */
const FEW = 6;

/** How a detail reads that is no phrase by itself. */
const PHRASES: Readonly<Record<string, (value: string) => string>> = {
  step: (value) => `at ${value}`,
  n: (value) => (value === '1' ? 'one repeat' : `${value} repeats`),
  lag: (value) => `edges of the power ${value}`,
  repeats_worth: (value) => `each like the one before: worth about ${value} independent repeats`,
  median: (value) => `median ${significant(value)}`,
  least: (value) => `least ${significant(value)}`,
  greatest: (value) => `greatest ${significant(value)}`,
  clock: (value) => (value === CLOCK_UNSTATED ? 'requested or delivered clock: not stated' : `${value} clock`),
  channel: nameInWords,
  load: (value) => `the load was ${value}`,
  read_off: (value) => `read off ${value}`,
  extrapolated: (value) => `extrapolated by ${value}`,
  criterion: (value) => `steady: ${CRITERIA_IN_BRIEF.get(value) ?? value}`,
  independent_readings: (value) =>
    Number(value) < FEW
      ? `worth about ${value} independent readings, too few for a tested interval`
      : `worth about ${value} independent readings`,
  scatter_about: (value) => `scatter about the ${value}`,
  integral_of_power_j: (value) =>
    `by the integral of power ${printQuantity({ value: Number(value), unit: 'J', parts: null }).text}`,
  missed: (value) => `${value} more, or more than that, came and went between two readings`,
};

/** A reading of a table as people would write it, without the binary noise of a median between two. */
function significant(value: string): string {
  return String(Number(Number(value).toPrecision(12)));
}

const OUTSIDE = [
  ['below_accurate_range', 'below the accurate range of its instrument'],
  ['above_accurate_range', 'above the accurate range of its instrument'],
] as const;

/** One figure, printed: value, uncertainty, or the reason why there is none. */
export function shownFigure(address: string, figure: Figure): ShownFigure {
  const label = definitionOf(figure.name)?.label ?? figure.name.replaceAll('_', ' ');
  const detail = [...reachOf(address, figure), detailOf(figure)].filter((text) => text !== '').join(', ');
  const common = { address, anchor: fragmentOf(address), name: figure.name, label, detail };
  if (!isPresent(figure)) return { ...common, shown: '', uncertainty: '', absent: figure.why, inferred: [], from: '' };
  return {
    ...common,
    shown: printQuantity(figure.quantity).text,
    uncertainty: uncertaintyText(figure),
    inferred: figure.inferred ?? [],
    from: fromText(figure.from),
  };
}

/** Of figures that stand for all places or settings under their bare name, and for one of them besides: which of the two. */
function reachOf(address: string, { name, of = {} }: Figure): string[] {
  if (address === name) return WHOLE[name] === undefined ? [] : [WHOLE[name]];
  return name === 'hottest_surface' && of.part !== undefined ? [`of its ${of.part}`] : [];
}

const WHOLE: { readonly [K in NameOfFigure]?: string } = {
  hottest_surface: 'of all places',
  highest_passed_clock: 'of all voltage offsets',
};

/** Figures of one table, with what makes their decimal signs stand in line. */
export function inLine(figures: readonly ShownFigure[]): ShownFigure[] {
  const pads = decimalPads(figures.map(({ shown }) => shown));
  return figures.map((figure, index) => ({ ...figure, pad: pads[index] ?? '' }));
}

/** A figure's own interval where it has one, else the one that follows from its sources. */
export function uncertaintyText({ quantity, interval }: PresentFigure): string {
  return printUncertainty(quantity, interval === undefined ? {} : { interval });
}

function detailOf(figure: Figure): string {
  const of = figure.of ?? {};
  const outside = OUTSIDE.flatMap(([key, words]) => (of[key] === true ? [words] : []));
  const phrase = (key: string) => PHRASES[key] ?? ((value: string) => value);
  return [...DETAILS.flatMap((key) => (of[key] === undefined ? [] : [phrase(key)(String(of[key]))])), ...outside].join(', ');
}

/** "columns a, b; lines 2–3601"; where it is made of figures of runs, these by name: by id where there is none. */
export function fromText(from: From, names: ReadonlyMap<string, string> = new Map()): string {
  const columns = `${from.columns.length === 1 ? 'column' : 'columns'} ${from.columns.join(', ')}`;
  const rows = from.rows === null ? '' : linesText(from.rows);
  const runs = new Set((from.figures ?? []).map((figure) => figure.slice(0, figure.indexOf('/'))));
  const named = [
    ...new Set([
      ...[...names].flatMap(([run, name]) => (runs.has(run) ? [name] : [])),
      ...[...runs].filter((run) => !names.has(run)),
    ]),
  ];
  if (runs.size > 0) return `figures of ${named.join(', ')}`;
  const others = (from.others ?? []).map(({ file, ...other }) => `of ${file} ${fromText(other)}`);
  return [from.columns.length > 0 ? columns : '', rows, ...others].filter((part) => part !== '').join('; ');
}

function linesText([first, last]: readonly [number, number]): string {
  return first === last ? `line ${first}` : `lines ${first}–${last}`;
}

/** Conditions or settings as rows of a page's head. */
export function conditionRows(conditions: readonly Condition[]): ConditionRow[] {
  return conditions.map(({ name, text }) => ({ label: conditionLabel(name), text: keepUnits(text) }));
}

/** The author's text with numbers kept on the line of their unit. */
function keepUnits(text: string): string {
  return text.replaceAll(/(\d|±) (?=[\d°µμΩ%±A-Za-z])/g, '$1\u00a0');
}

/** A rating as a row: value and stated uncertainty. */
export function ratingRow(label: string, quantity: Quantity): ConditionRow {
  const uncertainty = printUncertainty(quantity);
  return { label, text: [printQuantity(quantity).text, uncertainty].filter((part) => part !== '').join(' ') };
}

/** "clock 2.6 GHz, voltage offset 40 mV". */
export function settingText(run: Run): string {
  return conditionRows(run.setting)
    .map(({ label, text }) => `${label} ${text}`)
    .join(', ');
}

export function runLink(run: Run): Link {
  return { title: run.title, path: `runs/${run.id}/` };
}

/** Seconds as minutes with one decimal, or seconds where short: for phases and spans, which are exact. */
export function durationText(seconds: number): string {
  return printQuantity({ value: seconds, unit: 's', parts: null, step: 1 }).text;
}

/** Seconds between two rows: "10 ms". A difference of two times, so that what stands behind the sixth digit is their rounding. */
export function stepText(seconds: number): string {
  return printQuantity({ value: Number(seconds.toPrecision(6)), unit: 's', parts: [] }).text;
}
