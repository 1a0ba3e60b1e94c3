/** What the uncertainty of a figure is made of: a budget, as JCGM 100:2008, clause 8 and Table H.1 have it. */
import type { Quantity, Source } from '../quantities/quantity.ts';

/** One source of uncertainty. */
export interface BudgetRow {
  readonly source: string;
  /** In words. */
  readonly title: string;
  readonly distribution: 'rectangular' | 'normal' | "Student's t";
  /** Degrees of freedom; null where they are infinitely many. */
  readonly dof: number | null;
  /** Its own standard uncertainty, in `unit`. */
  readonly u: number;
  readonly unit: string;
  /** How much the figure moves with the source: unit of the figure ÷ unit of the source. Its sign tells which way it acts. */
  readonly sensitivity: number;
  /** Sensitivity × standard uncertainty of the source, in the unit of the figure (K where that is °C). */
  readonly contribution: number;
  /** Share of the variance, 0 to 1; those of all rows add to 1. */
  readonly share: number;
}

/** Rows with the largest share first, equal ones by their source; none where the figure is exact, or its uncertainty is unknown. */
export function budgetOf({ parts, unit }: Quantity): BudgetRow[] {
  const variance = (parts ?? []).reduce((sum, { share }) => sum + share * share, 0);
  if (!(variance > 0)) return [];
  const rows = (parts ?? []).map(
    ({ source, share }): BudgetRow => ({
      source: source.id,
      title: source.title,
      distribution: source.distribution ?? (source.dof === null ? 'normal' : "Student's t"),
      dof: source.dof,
      ...ownOf(source, share, unit),
      contribution: share,
      share: (share * share) / variance,
    }),
  );
  return rows.sort((a, b) => b.share - a.share || (a.source < b.source ? -1 : 1));
}

/** A source that does not say its own standard uncertainty is known by what it adds to the figure. */
function ownOf({ standard }: Source, share: number, unit: string): Pick<BudgetRow, 'u' | 'unit' | 'sensitivity'> {
  const own = standard ?? { u: Math.abs(share), unit: unit === '°C' ? 'K' : unit };
  return { ...own, sensitivity: share / own.u };
}
