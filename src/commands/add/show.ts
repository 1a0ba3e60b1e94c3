/** What was found in a file, as text for the terminal. */
import type { InspectedColumn, Inspection } from '../../intake/inspect.ts';
import { BLANKS } from '../../intake/sheet/split.ts';
import { blockPlot } from './block-plot.ts';
import type { Matched } from './match.ts';
import { isComplete } from './run-file.ts';

const PLOT_WIDTH = 60;

/** Everything about the file but its problems. */
export function showInspection(inspection: Inspection, channels: readonly Matched[], load: string | null): string {
  const { time } = inspection;
  const lines = [
    inspection.file,
    `  ${inspection.rows} rows of ${inspection.lines} lines${inspection.setAside > 0 ? ` (${inspection.setAside} set aside, see the warnings)` : ''}, ${inspection.encoding}, ${delimiterWords(inspection.delimiter)}${inspection.decimal === ',' ? ', decimal comma' : ''}`,
    ...timeLines(inspection),
    ...inspection.inferences.map(({ statement }) => `  ${statement}`),
    ...quotedLines('above the header', inspection.preamble),
    ...quotedLines('after the rows', inspection.footer),
    ...inspection.columns.flatMap((column) => columnLines(column, channels, time?.axis.seconds)),
    ...leftOutLines(inspection),
    goesOut(inspection, channels),
    ...(load === null ? [] : [`  ${load}`]),
  ];
  return `${lines.filter((line) => line !== '').join('\n')}\n`;
}

/** Columns that are left out, those of one reason together. */
function leftOutLines({ leftOut }: Inspection): string[] {
  const reasons = [...new Set(leftOut.map(({ why }) => why))];
  return reasons.map((why) => {
    const columns = leftOut.filter((one) => one.why === why).map(({ column }) => column);
    return `  left out: ${columns.join(', ')} (${why})`;
  });
}

/** How the log goes out unless its author says otherwise: as it came only where nothing in it is unread. */
function goesOut({ leftOut, preamble, footer, time }: Inspection, channels: readonly Matched[]): string {
  if (!time) return '';
  const columns = leftOut.length + channels.filter((channel) => !isComplete(channel)).length;
  const unread = [
    ...(columns > 0 ? [`${columns} ${columns === 1 ? 'column' : 'columns'} without a channel`] : []),
    ...(preamble.length > 0 ? [`${preamble.length} ${preamble.length === 1 ? 'line' : 'lines'} above the header`] : []),
    ...(footer.length > 0 ? [`${footer.length} ${footer.length === 1 ? 'line' : 'lines'} below the rows`] : []),
  ];
  if (unread.length === 0) return '  goes out as it came: all of it is read';
  return `  goes out as cleaned readings, since it also holds ${unread.join(', ')}; \`share: as it came\` below \`log:\` sends all of it`;
}

function delimiterWords(delimiter: string): string {
  const words: Readonly<Record<string, string>> = {
    ',': 'commas',
    ';': 'semicolons',
    '\t': 'tabs',
    '|': 'bars',
    [BLANKS]: 'runs of blanks',
  };
  return `fields between ${words[delimiter] ?? delimiter}`;
}

function timeLines({ time, timeCandidates }: Inspection): string[] {
  if (!time) return [];
  const { seconds, step, gaps, start } = time.axis;
  const span = seconds[seconds.length - 1] ?? 0;
  const others = timeCandidates.filter((name) => name !== time.column);
  const from = start === null ? '' : `, from ${new Date(start * 1000).toISOString()}`;
  return [
    `  time: ${time.column} (${time.format}), ${durationWords(span)} long${step === null ? '' : `, a row every ${number(step)} s`}${gaps.length > 0 ? `, ${gaps.length} ${gaps.length === 1 ? 'gap' : 'gaps'}` : ''}${from}`,
    ...(others.length > 0 ? [`  also looks like a time: ${others.join(', ')}`] : []),
  ];
}

/** Seconds in the units that people say: `70 min 0 s`. */
export function durationWords(seconds: number): string {
  if (seconds < 120) return `${number(seconds)} s`;
  if (seconds < 7200) return `${Math.floor(seconds / 60)} min ${number(Math.round(seconds % 60))} s`;
  return `${number(seconds / 3600)} h`;
}

function quotedLines(where: string, texts: readonly string[]): string[] {
  const shown = texts.slice(0, 5).map((text) => `    ${text.slice(0, 100)}`);
  const more = texts.length > 5 ? [`    … ${texts.length - 5} more`] : [];
  return texts.length > 0 ? [`  ${where}:`, ...shown, ...more] : [];
}

function columnLines(column: InspectedColumn, channels: readonly Matched[], seconds: Float64Array | undefined): string[] {
  const { numbers, unit } = column;
  const name = channels.find((channel) => channel.column === column)?.name;
  const unitWords =
    column.quantity === 'throttle_flag'
      ? ''
      : `, unit ${unit ?? 'unknown'} (${column.unitWhy}${column.suggestion ? `; the values would suit ${column.suggestion}` : ''})`;
  const counts = numbers.missing > 0 ? `, ${numbers.missing} without a reading` : '';
  const number = (value: number) => String(Number(value.toFixed(decimalsIn(column.values))));
  const stats =
    numbers.count === 0
      ? '    no plain numbers'
      : `    ${numbers.count} readings${counts}: first ${number(numbers.first)}, last ${number(numbers.last)}, least ${number(numbers.min)}, greatest ${number(numbers.max)}, mean ${number(numbers.mean)}`;
  const plot =
    seconds && seconds.length === column.values.length && numbers.count > 1
      ? [`    ${blockPlot(seconds, column.values, PLOT_WIDTH)}`]
      : [];
  return [
    `  ${column.column}${name === undefined ? '' : ` -> ${name}`}: ${column.quantity} (${column.quantityWhy})${unitWords}`,
    stats,
    ...plot,
    ...column.oddities.map((oddity) => `    look: ${oddity}`),
  ];
}

/** A double holds no more decimals than these of any reading. */
const MOST_DECIMALS = 15;

/** Decimals of the readings as logged: a mean is printed with no more. */
function decimalsIn(values: Float64Array): number {
  let most = 0;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    const [mantissa = '', power = '0'] = String(value).split('e');
    most = Math.max(most, (mantissa.split('.')[1]?.length ?? 0) - Number(power));
  }
  return Math.min(most, MOST_DECIMALS);
}

function number(value: number): string {
  return String(Number(value.toPrecision(6)));
}
