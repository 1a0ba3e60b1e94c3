/** Rows and cells of the tables of a comparison: each figure with its uncertainty in one text, what a whole row has in common said once. */
import { type Figure, isPresent, type PresentFigure } from '../../figures/figure.ts';
import { printQuantity } from '../../quantities/print.ts';
import { printWithUncertainty } from '../../quantities/print-with-uncertainty.ts';
import { fragmentOf } from '../../words/page/fragment.ts';
import type { ComparedCell, ComparedFigure, ComparedTable } from '../results.ts';

type Row = ComparedTable['rows'][number];

/** What a cell prints. */
export interface CellFigures {
  /** Address of the figure of the comparison that stands in it; '' where it is a run's own. */
  readonly address: string;
  readonly figure: Figure | undefined;
  /** Between the figure and the reference's: in its unit, and signed. */
  readonly difference?: Figure | undefined;
  /** How many times the reference's: a speedup. */
  readonly ratio?: Figure | undefined;
  /** The smallest difference that would have been told. */
  readonly least?: Figure | undefined;
  /** How many runs of each setting would tell the one that was seen. */
  readonly runs?: Figure | undefined;
}

/** A row of cells. Repeatability only is said once where all of them are no more. */
export function comparedRow(head: Omit<Row, 'cells'>, cells: readonly CellFigures[]): Row {
  const all = cells.flatMap(({ figure, difference, ratio }) => [figure, difference, ratio]);
  const present = all.filter((figure) => figure !== undefined && isPresent(figure));
  const repeatability = present.length > 0 && present.every(isRepeatability);
  const detail = [head.detail, repeatability ? 'repeatability only' : ''].filter((part) => part !== '').join(', ');
  return { ...head, detail, cells: cells.map((cell) => comparedCell(cell, repeatability)) };
}

function comparedCell({ address, figure, difference, ratio, least, runs }: CellFigures, saidOfRow: boolean): ComparedCell {
  const bare = (each: Figure) => (saidOfRow ? withoutFlag(each) : each);
  const unit = figure && isPresent(figure) ? unitOfDifference(figure) : '';
  const against = difference ?? ratio;
  return {
    anchor: fragmentOf(address),
    figure: figure === undefined ? null : comparedFigure(bare(figure), { could: against ? '' : couldText(least, runs) }),
    against:
      against === undefined
        ? null
        : comparedFigure(bare(against), {
            ...(difference ? { signed: true, unit } : { times: true }),
            could: couldText(least, runs),
          }),
  };
}

/** The unit that the value is printed in, as one of differences. */
function unitOfDifference({ quantity }: PresentFigure): string {
  const { unit } = printQuantity(quantity);
  return unit === '°C' ? 'K' : unit;
}

interface Manner {
  readonly signed?: boolean;
  readonly unit?: string;
  readonly times?: boolean;
  readonly could?: string;
}

function comparedFigure(figure: Figure, { signed = false, unit, times = false, could = '' }: Manner): ComparedFigure {
  if (!isPresent(figure)) return { shown: '', verdict: '', detail: '', absent: figure.why, inferred: [] };
  const { quantity, interval, of, inferred } = figure;
  const shown = printWithUncertainty(quantity, { interval, signed, unit: unit === '' ? undefined : unit });
  return {
    shown: times ? `×\u00a0${shown}` : shown,
    verdict: String(of?.verdict ?? ''),
    detail: [spreadOf(figure), standsIn(figure), could].filter((part) => part !== '').join(', '),
    inferred: inferred ?? [],
  };
}

/** What stands in for what was not measured, where the verdict does not say it already. */
function standsIn({ of }: PresentFigure): string {
  const said = String(of?.stands_in ?? '');
  return String(of?.verdict ?? '').includes(said) ? '' : said;
}

/** "differences from 0.012 on would be told", and the runs that it takes where this one was not told. */
function couldText(least: Figure | undefined, runs: Figure | undefined): string {
  const from = least && isPresent(least) ? `differences from ${printQuantity(least.quantity).text} on would be told` : '';
  const needed = runs && isPresent(runs) ? `one like this with about ${printQuantity(runs.quantity).text} runs of each` : '';
  return [from, from === '' ? '' : needed].filter((part) => part !== '').join('; ');
}

/** How far the tests lie apart whose mean a speedup is: they are no part of its uncertainty. */
function spreadOf({ of }: PresentFigure): string {
  const { smallest, largest, tests } = of ?? {};
  if (typeof smallest !== 'number' || typeof largest !== 'number' || tests === 1) return '';
  const text = (value: number) => printQuantity({ value, unit: '1', parts: null }).text;
  return `${tests} tests, ${text(smallest)} to ${text(largest)}`;
}

function isRepeatability({ quantity }: PresentFigure): boolean {
  return quantity.repeatabilityOnly === true && quantity.parts?.length !== 0;
}

function withoutFlag(figure: Figure): Figure {
  if (!isPresent(figure)) return figure;
  const { repeatabilityOnly: _said, ...quantity } = figure.quantity;
  return { ...figure, quantity };
}
