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
  { title, distribution, dof, u, unit, sensitivity, contribution, share }: BudgetRow,
  { quantity }: PresentFigure,
): Budget['rows'][number] {
  const freedom = dof === null ? '' : `, ${Math.floor(dof)} degrees of freedom`;
  const per = 100 * share;
  return {
    title,
    distribution: `${distribution}${freedom}`,
    standard: sizeText(u, unit),
    sensitivity: sensitivityText(sensitivity, quantity.unit === '°C' ? 'K' : quantity.unit, unit),
    contribution: sizeText(Math.abs(contribution), quantity.unit),
    share: per < 0.1 ? 'under 0.1\u00a0%' : `${per.toFixed(1)}\u00a0%`,
  };
}

/** Two digits say what an uncertainty can (JCGM 100:2008, 7.2.6); a difference of temperatures is in K. */
function sizeText(size: number, unit: string): string {
  const rounded = Number(size.toPrecision(2));
  return printQuantity({ value: rounded, unit: unit === '°C' ? 'K' : unit, parts: [] }).text;
}

/** Three digits, with the unit of the figure over that of the source: none where the two are one. */
function sensitivityText(sensitivity: number, figure: string, source: string): string {
  const value = Number(sensitivity.toPrecision(3));
  if (source === '1') return printQuantity({ value, unit: figure, parts: [] }).text;
  const number = printQuantity({ value, unit: '1', parts: [] }).text;
  return figure === source
    ? number
    : `${number}\u00a0${figure === '1' ? '' : figure}/${source.includes('/') ? `(${source})` : source}`;
}
