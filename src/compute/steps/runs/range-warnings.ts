/** Warns of figures whose readings lie where their instrument is not accurate. */
import { accurateRange } from '../../../figures/accurate-range.ts';
import { definitionOf } from '../../../figures/catalogue.ts';
import { isPresent, type PresentFigure, type RunFigures } from '../../../figures/figure.ts';
import { HAND_UNITS, type HandReading } from '../../../figures/hand/hand-reading.ts';
import type { Sensor } from '../../../figures/sources.ts';
import type { ChannelDeclaration } from '../../../intake/log.ts';
import { type Place, type Problem, warning } from '../../../problem.ts';
import { printQuantity } from '../../../quantities/print.ts';
import type { Quantity } from '../../../quantities/quantity.ts';
import type { RunTask } from './run-step.ts';

const REMEDY = 'measure it with an instrument that is accurate there, or say on the page how little the figure is worth';

const SIDES = [
  {
    mark: 'below_accurate_range',
    by: 'below_accurate_range_of',
    end: 'from',
    rule: 'below-accurate-range',
    side: 'below',
    words: 'from where',
  },
  {
    mark: 'above_accurate_range',
    by: 'above_accurate_range_of',
    end: 'to',
    rule: 'above-accurate-range',
    side: 'above',
    words: 'up to which',
  },
] as const;

type Side = (typeof SIDES)[number];
type Task = Pick<RunTask, 'context' | 'channels'> & Partial<Pick<RunTask, 'tables'>>;
type Addressed = readonly [address: string, figure: PresentFigure];

/**
 * One warning for each mean and extreme of a channel's own readings and for each spot of a surface, at the channel or table; and one for
 * each channel that figures are computed from, naming them all.
 */
export function rangeWarnings({ figures }: RunFigures, task: Task): Problem[] {
  const present = [...figures].filter((entry): entry is [string, PresentFigure] => isPresent(entry[1]));
  return [
    ...present.flatMap((entry) => SIDES.flatMap((side) => ofReading(entry, side, task))),
    ...(task.context.readings ?? []).flatMap((reading) => SIDES.flatMap((side) => ofDisplay(reading, side, task))),
    ...task.channels.flatMap((channel) => SIDES.flatMap((side) => throughChannel(present, channel, side, task))),
  ];
}

/** A figure that is a reading itself, or a mean of readings. */
function ofReading([address, figure]: Addressed, side: Side, task: Task): Problem[] {
  const source = figure.name === 'surface' || figure.name === 'camera_reading' ? surfaceSource(task) : channelSource(figure, task);
  if (!source || figure.of?.[side.mark] !== true) return [];
  const { value, unit } = figure.quantity;
  const corrected = figure.name === 'surface';
  const reading = corrected ? value - Number(figure.of.correction_k) : value;
  const bound = boundOf(source.sensor, side, task);
  if (bound === undefined || unit !== UNIT_OF[source.sensor.quantity]) return [];
  if (side.side === 'below' ? reading >= bound.value : reading <= bound.value) return [];
  const shown = textOf({ ...figure.quantity, value: reading });
  const label = `${corrected ? 'reading of ' : ''}${labelOf(address, figure)}`;
  return [warning(side.rule, source.place, `${label} ${shown} is ${bound.words}`, { remedy: REMEDY })];
}

/** What a display showed where its instrument is not accurate, at the reading. */
function ofDisplay(reading: HandReading, side: Side, task: Task): Problem[] {
  const { quantity, values, instrument, name, phase, place } = reading;
  const unit = HAND_UNITS[quantity];
  const bound = boundOf({ quantity, step: null, ...(instrument === undefined ? {} : { instrument }) }, side, task, unit);
  const value = side.side === 'below' ? Math.min(...values) : Math.max(...values);
  if (bound === undefined || (side.side === 'below' ? value >= bound.value : value <= bound.value)) return [];
  const what = `${quantity.replaceAll('_', ' ')}${name === undefined ? '' : ` \`${name}\``}`;
  const label = `${what} read by hand${phase === null ? '' : ` in \`${phase}\``}`;
  return [warning(side.rule, place, `${label}, ${textOf({ value, unit, parts: [] })}, is ${bound.words}`, { remedy: REMEDY })];
}

/** All figures that one channel's readings went into, in one warning. */
function throughChannel(figures: readonly Addressed[], channel: ChannelDeclaration, side: Side, task: Task): Problem[] {
  const through = figures.filter(([, { of }]) =>
    String(of?.[side.by] ?? '')
      .split(', ')
      .includes(channel.name),
  );
  const bound = boundOf({ ...channel, step: null }, side, task);
  if (through.length === 0 || bound === undefined) return [];
  const labels = through.map(([address, figure]) => labelOf(address, figure)).join(', ');
  const found = `the mean of \`${channel.name}\` is ${bound.words}; computed from it: ${labels}`;
  return [warning(side.rule, channel.place, found, { remedy: REMEDY })];
}

interface Source {
  readonly sensor: Sensor;
  readonly place: Place;
}

function channelSource({ of }: PresentFigure, { channels }: Task): Source | undefined {
  const channel = channels.find(({ name }) => name === of?.channel);
  return channel && { sensor: { ...channel, step: null }, place: channel.place };
}

function surfaceSource({ tables }: Task): Source | undefined {
  const table = tables?.surface;
  const instrument = table?.instrument;
  return (
    table && {
      sensor: { quantity: 'temperature', step: null, ...(instrument !== undefined && { instrument }) },
      place: table.place,
    }
  );
}

/** The end of the accurate range of what read it, with words such as "below 500 mW, from where the wall meter is accurate". */
function boundOf(sensor: Sensor, { end, side, words }: Side, { context }: Task, unit = UNIT_OF[sensor.quantity]) {
  const value = accurateRange(context, sensor)[end];
  if (value === undefined || unit === undefined) return undefined;
  const title = context.instruments[sensor.instrument ?? '']?.title;
  return { value, words: `${side} ${textOf({ value, unit, parts: [] })}, ${words} ${title} is accurate` };
}

/** As pages print it, with the plain blanks of a terminal. */
function textOf(quantity: Quantity): string {
  return printQuantity(quantity).text.replaceAll('\u00a0', ' ');
}

function labelOf(address: string, { name }: PresentFigure): string {
  const label = definitionOf(name)?.label ?? name.replaceAll('_', ' ');
  return address === name ? label : `${label} (\`${address}\`)`;
}

/** What a reading of each quantity is in: a figure in another unit is not one of the channel's readings. */
const UNIT_OF: Readonly<Partial<Record<ChannelDeclaration['quantity'], string>>> = {
  temperature: '°C',
  ambient: '°C',
  clock: 'Hz',
  current: 'A',
  voltage: 'V',
  power: 'W',
  utilisation: '1',
  charge_level: '1',
};
