/** Figures in the words of plots: from the one printer, so that a plot and a page never round differently. */
import type { FigureName } from '../../figures/catalogue.ts';
import { type Figure, type FigureMap, isPresent } from '../../figures/figure.ts';
import { printQuantity } from '../../quantities/print.ts';
import type { PlotSubject } from '../drawing/drawn.ts';

/** The figure of a channel: under its own name, else under the bare one where that is this channel's. */
export function figureOf({ derived }: PlotSubject, name: FigureName, channel: string): Figure | undefined {
  return figureIn(derived.figures, name, channel);
}

/** The same among a run's figures by address. */
export function figureIn(figures: FigureMap, name: FigureName, channel: string): Figure | undefined {
  const own = figures.get(`${name}.${channel}`);
  if (own) return own;
  const bare = figures.get(name);
  return bare && (bare.of?.channel ?? channel) === channel ? bare : undefined;
}

/** A run in words: its alias, or its title where it has none, as on its own page. */
export function runName({ alias, title }: Pick<PlotSubject, 'alias' | 'title'>): string {
  return alias || title;
}

/** "71.3 °C", or undefined where the figure is absent; in `unit`, where one is given. */
export function figureText(figure: Figure | undefined, unit?: string): string | undefined {
  if (!figure || !isPresent(figure)) return undefined;
  return printQuantity(figure.quantity, unit === undefined ? {} : { unit }).text;
}

/** A channel's name for readers, where its author gives none: `input_current` with a blank. */
export function plainName(name: string): string {
  return name.replaceAll('_', ' ');
}
