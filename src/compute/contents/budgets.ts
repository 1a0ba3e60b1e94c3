/** Uncertainty budgets as pages print them. */
import { type BudgetRow, budgetOf } from '../../figures/budget.ts';
import { type Figure, isPresent, type PresentFigure } from '../../figures/figure.ts';
import { printQuantity } from '../../quantities/print.ts';
import { degreesOfFreedom, standardUncertainty } from '../../quantities/uncertainty.ts';
import type { Budget } from '../models/run.ts';
import { shownFigure } from './figure-text.ts';

/** Of each present figure that is uncertain, in the order given. */
export function budgetsOf(figures: readonly (readonly [string, Figure])[]): Budget[] {
  return figures.flatMap(([address, figure]) => {
    if (!isPresent(figure)) return [];
    const rows = budgetOf(figure.quantity);
    if (rows.length === 0) return [];
    const { label, detail } = shownFigure(address, figure);
    return [{ label, detail, combined: combinedText(figure), rows: rows.map((row) => rowText(row, figure)) }];
  });
}

function combinedText({ quantity }: PresentFigure): string {
  const dof = degreesOfFreedom(quantity);
  const freedom = dof === null ? '' : `, ${Math.floor(dof)} degrees of freedom`;
  return `${sizeText(standardUncertainty(quantity) ?? 0, quantity.unit)}${freedom}`;
}

function rowText(
  { title, distribution, dof, contribution, share }: BudgetRow,
  { quantity }: PresentFigure,
): Budget['rows'][number] {
  const freedom = dof === null ? '' : `, ${Math.floor(dof)} degrees of freedom`;
  const per = 100 * share;
  return {
    title,
    distribution: `${distribution}${freedom}`,
    contribution: sizeText(Math.abs(contribution), quantity.unit),
    share: per < 0.1 ? 'under 0.1\u00a0%' : `${per.toFixed(1)}\u00a0%`,
  };
}

/** Two digits say what an uncertainty can (JCGM 100:2008, 7.2.6); a difference of temperatures is in K. */
function sizeText(size: number, unit: string): string {
  const rounded = Number(size.toPrecision(2));
  return printQuantity({ value: rounded, unit: unit === '°C' ? 'K' : unit, parts: [] }).text;
}
