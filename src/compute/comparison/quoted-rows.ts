/** Figures that others published beside a comparison's own: what lies between, and whether anything can be said of it. */
import { definitionOf } from '../../figures/catalogue.ts';
import { isPresent } from '../../figures/figure.ts';
import { besideQuoted } from '../../figures/quoted/beside.ts';
import { printQuantity } from '../../quantities/print.ts';
import { uncertaintyText } from '../contents/figure-text.ts';
import type { Gathered } from '../models/gathered.ts';
import { figuresOf } from '../models/gathered-figures.ts';
import type { ComparisonModel } from '../results.ts';
import type { ReadComparison } from './compared-tables.ts';

/** A row for each quoted figure that one of the settings has too. */
export function quotedRows({ quoted = [] }: Gathered, { runs }: ReadComparison): ComparisonModel['quoted'] {
  return quoted.flatMap(({ title, author, address, accessed, conditions, ...own }) =>
    [...figuresOf(own)].flatMap(([key, figure]) => {
      if (!isPresent(figure)) return [];
      const cells = runs.flatMap(({ alias, figures }) => {
        const beside = figures.get(key);
        if (!beside || !isPresent(beside)) return [];
        const { verdict, difference } = besideQuoted(beside.quantity, figure.quantity);
        const shown = `${printQuantity(beside.quantity).text} (${uncertaintyText(beside)})`;
        return [{ alias, shown, difference: difference ? printQuantity(difference).text : '', verdict }];
      });
      const uncertainty = figure.quantity.parts === null ? '' : ` (${uncertaintyText(figure)})`;
      const label = definitionOf(figure.name)?.label ?? figure.name.replaceAll('_', ' ');
      return [
        { label, shown: printQuantity(figure.quantity).text + uncertainty, title, author, address, accessed, conditions, cells },
      ];
    }),
  );
}
