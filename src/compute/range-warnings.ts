/** Warns of figures whose readings lie where their instrument is not accurate. */
import { accurateRange } from '../figures/accurate-range.ts';
import { definitionOf } from '../figures/catalogue.ts';
import { isPresent, type PresentFigure, type RunFigures } from '../figures/figure.ts';
import type { ChannelDeclaration } from '../intake/log.ts';
import { type Problem, warning } from '../problem.ts';
import { printQuantity } from '../quantities/print.ts';
import type { Quantity } from '../quantities/quantity.ts';
import type { RunTask } from './run-step.ts';

const REMEDY = 'measure it with an instrument that is accurate there, or say on the page how little the figure is worth';

const SIDES = [
  { mark: 'below_accurate_range', end: 'from', rule: 'below-accurate-range', side: 'below', words: 'from where' },
  { mark: 'above_accurate_range', end: 'to', rule: 'above-accurate-range', side: 'above', words: 'up to which' },
] as const;

/** One warning a figure, at its channel: of means and extremes of a channel's own readings, not of what is computed from them. */
export function rangeWarnings(
  { figures }: RunFigures,
  { context, declaration }: Pick<RunTask, 'context' | 'declaration'>,
): Problem[] {
  return [...figures].flatMap(([address, figure]) => {
    if (!isPresent(figure)) return [];
    const channel = declaration.channels.find(({ name }) => name === figure.of?.channel);
    return channel ? warningsOf(address, figure, channel, context) : [];
  });
}

function warningsOf(address: string, figure: PresentFigure, channel: ChannelDeclaration, context: RunTask['context']): Problem[] {
  const range = accurateRange(context, { ...channel, step: null });
  const { value, unit } = figure.quantity;
  return SIDES.flatMap(({ mark, end, rule, side, words }) => {
    const limit = range[end];
    if (figure.of?.[mark] !== true || limit === undefined || unit !== UNIT_OF[channel.quantity]) return [];
    if (side === 'below' ? value >= limit : value <= limit) return [];
    const instrument = context.instruments[channel.instrument ?? '']?.title;
    const [shown, bound] = [textOf(figure.quantity), textOf({ value: limit, unit, parts: [] })];
    const found = `${labelOf(address, figure)} ${shown} is ${side} ${bound}, ${words} ${instrument} is accurate`;
    return [warning(rule, channel.place, found, { remedy: REMEDY })];
  });
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
};
